import { failure, type Result, success } from '@/lib/core/result'
import type { PictureType } from '@/lib/records/kinds/photo'
import { hashOf } from './hashOf'

/**
 * A picture as it is kept and sent: shrunk, upright, and drawn anew, so that nothing of the file it came from is in it
 * but its pixels: no place, no camera, no thumbnail.
 */
export type PreparedPicture = {
  /** The JPEG itself: what is hashed, kept, sent and proves something. */
  blob: Blob
  /** SHA-256 of the bytes of `blob`, lower-case hexadecimal. */
  sha256: string
  mediaType: PictureType
  width: number
  height: number
  /** The length of `blob`. */
  bytes: number
  /** When the camera says it was taken, ISO 8601, with an offset only where the file states one. */
  capturedAt?: string
}

/**
 * How a picture is shrunk: a line of small print that fills a tenth of the frame keeps 200 pixels, which is enough to
 * read it, and the file is small enough for a weak signal. Common practice, no published source.
 */
export const shrunk = { longestEdge: 2048, type: 'image/jpeg', quality: 0.85 } as const

/** A file above this is no photo of a phone, and would only fill its memory. */
const mostFileBytes = 60 * 1024 * 1024

/**
 * Makes of a file, as a camera or a list of files gives it, the picture that is kept.
 *
 * @returns the picture, or a sentence for whoever chose the file
 * @example const prepared = await preparePicture(input.files[0]); if (prepared.ok) await device.keepPicture(prepared.value)
 */
export async function preparePicture(file: Blob): Promise<Result<PreparedPicture>> {
  if (globalThis.crypto?.subtle === undefined) {
    return failure(
      'not-secure',
      'Pictures can’t be kept at this address, because it is not https. Ask whoever runs the server for https.',
    )
  }
  if (file.size === 0) return failure('empty-file', 'The file is empty. Take the photo again.')
  if (file.size > mostFileBytes) {
    return failure('file-too-large', 'The file is larger than 60 MB. Choose a photo, or take it again.')
  }
  const bitmap = await decode(file)
  if (bitmap === undefined) {
    return failure(
      'no-picture',
      'This file can’t be read as a picture here. Take a photo, or choose a JPEG, PNG or WebP file.',
    )
  }
  try {
    const { width, height } = shrunkSize(bitmap.width, bitmap.height)
    const blob = await encode(bitmap, width, height)
    if (blob === undefined) {
      return failure(
        'no-room',
        'This device has no memory left for the picture. Close other pages, then try again.',
      )
    }
    const sha256 = await hashOf(await blob.arrayBuffer())
    const capturedAt = await captureTimeOf(file)
    const picture = { blob, sha256, mediaType: shrunk.type, width, height, bytes: blob.size }
    return success(capturedAt === undefined ? picture : { ...picture, capturedAt })
  } finally {
    bitmap.close()
  }
}

/** Upright: what the file says about its orientation is done to the pixels. Undefined for what is no picture. */
async function decode(file: Blob): Promise<ImageBitmap | undefined> {
  try {
    return await createImageBitmap(file, { imageOrientation: 'from-image' })
  } catch (cause) {
    if (cause instanceof DOMException) return undefined
    throw cause
  }
}

/**
 * The size at which a picture is kept, in pixels: as it is, or with its longest edge at the limit.
 *
 * @example shrunkSize(4032, 3024) // { width: 2048, height: 1536 }
 */
export function shrunkSize(width: number, height: number): { width: number; height: number } {
  const scale = Math.min(1, shrunk.longestEdge / Math.max(width, height))
  return { width: Math.max(1, Math.round(width * scale)), height: Math.max(1, Math.round(height * scale)) }
}

async function encode(bitmap: ImageBitmap, width: number, height: number): Promise<Blob | undefined> {
  const canvas = document.createElement('canvas')
  Object.assign(canvas, { width, height })
  const context = canvas.getContext('2d')
  if (context === null) return undefined
  // What is see-through would turn black in a JPEG.
  context.fillStyle = '#fff'
  context.fillRect(0, 0, width, height)
  context.imageSmoothingQuality = 'high'
  context.drawImage(bitmap, 0, 0, width, height)
  const blob = await new Promise<Blob | null>((resolve) =>
    canvas.toBlob(resolve, shrunk.type, shrunk.quality),
  )
  return blob?.type === shrunk.type ? blob : undefined
}

/** The reader of metadata is loaded with the first photo only. What can't be read is left out: a screenshot has none. */
async function captureTimeOf(file: Blob): Promise<string | undefined> {
  const { readCaptureTime } = await import('./captureTime')
  return readCaptureTime(await file.arrayBuffer())
}
