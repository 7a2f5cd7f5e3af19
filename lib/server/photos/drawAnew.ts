import sharp, { type Sharp } from 'sharp'
import { failure, type Result, success } from '@/lib/core/result'
import { longestPictureEdge, type PictureType } from '@/lib/records/kinds/photo'
import { formatOf, type PictureFormat, whereItEnds } from './whereItEnds'

/** A picture as the server keeps it: drawn anew from its pixels, upright, with nothing else of the file in it. */
export type DrawnPicture = { bytes: Buffer; mediaType: PictureType; width: number; height: number }

/**
 * The most pixels that are decoded. One that was shrunk on a device has at most 2048 by 2048, a sixth of them. At four
 * bytes each it is 96 MB of memory, and one picture is worked on at a time.
 */
export const mostPixels = 24_000_000

/** How long one picture may take, in seconds: a file can be made to take for ever. */
const patienceSeconds = 20

const typeOf: Readonly<Record<PictureFormat, PictureType>> = {
  jpeg: 'image/jpeg',
  png: 'image/png',
  webp: 'image/webp',
}

/**
 * Judges what was sent, decodes it and draws it anew. Whatever else a file carries (place and camera, comments, a second
 * file behind its end) is left behind; where there is a second file, nothing of it is taken.
 *
 * @returns the picture, or why it is none that can be kept, with codes 'no-picture', 'more-than-a-picture',
 *   'too-many-pixels', 'damaged-picture'; 'try-again' where it was the server that had too little time, memory or room
 */
export async function drawAnew(sent: Buffer): Promise<Result<DrawnPicture>> {
  const format = formatOf(sent)
  if (format === undefined) {
    return failure(
      'no-picture',
      'This is no JPEG, PNG or WebP picture. Take a photo, or choose one of these.',
    )
  }
  const end = whereItEnds(sent, format)
  if (end === undefined) return damaged
  if (end < sent.length) {
    return failure(
      'more-than-a-picture',
      'There is more in this file than a picture, and such a file is not kept. Choose the picture on a page of Inchwater, which keeps the picture alone.',
    )
  }
  try {
    const input = { limitInputPixels: mostPixels, failOn: 'warning', sequentialRead: true } as const
    const told = await sharp(sent, input).metadata()
    if (told.format !== format) return damaged
    if ((told.pages ?? 1) > 1) {
      return failure(
        'no-picture',
        'This picture moves. Only a still picture can be kept: take a photo of it.',
      )
    }
    if (Math.max(told.width, told.height) > longestPictureEdge || told.width * told.height > mostPixels) {
      return tooManyPixels
    }
    const upright = sharp(sent, input).timeout({ seconds: patienceSeconds }).autoOrient()
    const drawn = await encode(upright, format).toBuffer({ resolveWithObject: true })
    const { width, height } = drawn.info
    return success({ bytes: drawn.data, mediaType: typeOf[format], width, height })
  } catch (cause) {
    // The library has no kinds of errors: whatever it says of this file, the file can't be kept.
    if (!(cause instanceof Error)) throw cause
    if (/pixel limit/i.test(cause.message)) return tooManyPixels
    return isOfTheServer.test(cause.message) ? tryAgain : damaged
  }
}

/** What the library says where nothing is wrong with the file: it ran out of its time, of memory, or of files and disk. */
const isOfTheServer =
  /timeout: \d+% complete|out of memory|allocate (\w+ )?memory|too many open files|no space left/i

/** The same format again, at a quality that loses nothing that can be read (common practice, no published source). */
const encode = (picture: Sharp, format: PictureFormat): Sharp => {
  if (format === 'png') return picture.png()
  return format === 'webp'
    ? picture.webp({ quality: 90 })
    : picture.jpeg({ quality: 90, chromaSubsampling: '4:4:4' })
}

/** The longest edge of a small picture, in pixels: twice what a list shows, for fine screens. */
const smallEdge = 320

/** A small copy of a picture that is kept, for lists: few bytes over a weak signal. */
export const drawSmall = (kept: Buffer): Promise<Buffer> =>
  sharp(kept, { limitInputPixels: mostPixels })
    .resize({ width: smallEdge, height: smallEdge, fit: 'inside', withoutEnlargement: true })
    .flatten({ background: '#fff' })
    .jpeg({ quality: 75 })
    .toBuffer()

const damaged = failure(
  'damaged-picture',
  'The picture is damaged or not built as its format says, so it can’t be shown. Take the photo again.',
)

const tryAgain = failure(
  'try-again',
  'The server had no time or no room for this picture just now. Nothing is wrong with it: it is sent again.',
)

const tooManyPixels = failure(
  'too-many-pixels',
  `The picture has more than ${mostPixels / 1e6} million pixels, or an edge above ${longestPictureEdge}. Choose it on a page of Inchwater, which makes it smaller.`,
)
