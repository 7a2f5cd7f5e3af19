'use client'

import { useEffect, useState } from 'react'
import { type PictureState, pictureState } from '@/lib/records/view/photos'
import { useDevice, useDeviceState } from '../../device/deviceContext'

/** The picture itself, where it is on this device: taken here, or kept since it was sent. */
export function usePictureBlob(sha256: string | undefined): Blob | undefined {
  const device = useDevice()
  const here = useDeviceState().pictures.some((picture) => picture.sha256 === sha256)
  const [found, setFound] = useState<{ sha256: string; blob: Blob }>()
  useEffect(() => {
    if (sha256 === undefined || !here) return
    let gone = false
    void device.readPicture(sha256).then((blob) => {
      if (!gone && blob !== undefined) setFound({ sha256, blob })
    })
    return () => {
      gone = true
    }
  }, [device, sha256, here])
  return here && found?.sha256 === sha256 ? found?.blob : undefined
}

/** An address for an image of what is on this device; it lasts as long as the component. */
function useBlobAddress(blob: Blob | undefined): string | undefined {
  const [address, setAddress] = useState<string>()
  useEffect(() => {
    if (blob === undefined) return setAddress(undefined)
    const made = URL.createObjectURL(blob)
    setAddress(made)
    return () => URL.revokeObjectURL(made)
  }, [blob])
  return address
}

/**
 * Where a picture can be looked at, and what is known of it. What is on the device is shown without a signal; else it
 * is fetched from the server, which shows it to people of the team only.
 */
export function usePicture(
  sha256: string,
  size: 'small' | 'large',
): { state: PictureState; address: string | undefined } {
  const { file, pictures } = useDeviceState()
  const state = pictureState(file, sha256)
  const here = pictures.some((picture) => picture.sha256 === sha256)
  const own = useBlobAddress(usePictureBlob(state === 'withheld' ? undefined : sha256))
  if (state === 'withheld') return { state, address: undefined }
  return {
    state,
    address:
      own ??
      (state === 'held' && !here
        ? `/api/photos/${sha256}${size === 'small' ? '?size=small' : ''}`
        : undefined),
  }
}
