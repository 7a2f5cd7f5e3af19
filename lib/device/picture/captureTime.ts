import ExifReader from 'exifreader'

/**
 * When the camera says that a picture was taken: EXIF's DateTimeOriginal, with OffsetTimeOriginal where the file has
 * one (CIPA DC-008, Exif 2.32, 4.6.5). It is the camera's own clock, which may be wrong.
 *
 * @returns ISO 8601; undefined where the file says nothing that is a moment
 * @example readCaptureTime(bytes) // '2026-01-12T09:41:07+01:00'
 */
export function readCaptureTime(bytes: ArrayBuffer): string | undefined {
  const exif = exifOf(bytes)
  const [, year, month, day, time] =
    /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/.exec(textOf(exif.DateTimeOriginal)) ?? []
  if (year === undefined) return undefined
  const local = `${year}-${month}-${day}T${time}`
  // A camera that was never set says 0000:00:00; the 30th of February is no day either.
  const moment = new Date(`${local}Z`)
  if (Number.isNaN(moment.getTime()) || !moment.toISOString().startsWith(local)) return undefined
  const offset = textOf(exif.OffsetTimeOriginal)
  return /^[+-](0\d|1[0-4]):[0-5]\d$/.test(offset) ? `${local}${offset}` : local
}

type Tags = { [name: string]: { description?: unknown } | undefined }

function exifOf(bytes: ArrayBuffer): Tags {
  try {
    return (ExifReader.load(bytes, { expanded: true, includeUnknown: false }).exif ?? {}) as Tags
  } catch {
    // The reader throws for files without metadata, and for damaged ones: a picture is a picture without its time too.
    return {}
  }
}

const textOf = (tag: { description?: unknown } | undefined): string =>
  typeof tag?.description === 'string' ? tag.description.trim() : ''
