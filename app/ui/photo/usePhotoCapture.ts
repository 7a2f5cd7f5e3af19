'use client'

import { useState } from 'react'
import { preparePicture } from '@/lib/device/picture/prepare'
import { useDevice } from '../../device/deviceContext'
import { type TakenPhoto, takenPhotoOf } from './takenPhoto'

/**
 * Takes in a photo: shrinks it, turns it upright, takes everything but its pixels off it, and keeps it on the device at
 * once, so that a crash loses nothing. It is sent when a `photo` record that names its hash is in the log: the form that
 * saves adds that record, `{ kind: 'photo', body: { ...taken, shows, furnaceId, … } }`.
 *
 * What reads the picture (text, codes) takes the shrunk one, which is what others will see as well: `take` answers it
 * as a Blob, and later `usePictureBlob(taken.sha256)` does. An ImageBitmap is made of it where one is needed, and
 * closed after use: `const bitmap = await createImageBitmap(blob)`. It is upright already, and at most 2048 pixels long.
 *
 * @example const { take, busy, problem } = usePhotoCapture()
 */
export function usePhotoCapture() {
  const device = useDevice()
  const [busy, setBusy] = useState(false)
  const [problem, setProblem] = useState<string>()

  /** @returns the photo and its picture; undefined where `problem` says why there is none */
  async function take(file: Blob): Promise<{ taken: TakenPhoto; blob: Blob } | undefined> {
    setBusy(true)
    setProblem(undefined)
    try {
      const prepared = await preparePicture(file)
      const kept = prepared.ok ? await device.keepPicture(prepared.value) : prepared
      if (prepared.ok && kept.ok) return { taken: takenPhotoOf(prepared.value), blob: prepared.value.blob }
      if (!kept.ok) setProblem(kept.problem.message)
      return undefined
    } catch (cause) {
      setProblem(`The photo could not be kept on this device (${cause}). Take it again.`)
      return undefined
    } finally {
      setBusy(false)
    }
  }

  return { take, busy, problem }
}
