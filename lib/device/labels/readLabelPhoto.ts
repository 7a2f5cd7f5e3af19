import type { LabelReading } from '@/lib/core/label'
import { failure, type Result, success } from '@/lib/core/result'
import { pixelsOfFile } from '../readers/pixels'
import { openLabelReader } from './labelReader'
import { readPicture } from './readPicture'

/**
 * Reads the label in a photo, on this device and nowhere else. The recognition is let go of afterwards: it holds much
 * of a phone's memory.
 *
 * Problem codes: 'no-picture', 'no-reader' (its files are not here and cannot be fetched), 'no-letters'.
 */
export async function readLabelPhoto(
  photo: Blob,
  partNumbersOnFile: readonly string[],
): Promise<Result<LabelReading>> {
  const pixels = await pixelsOfFile(photo)
  if (pixels === undefined)
    return failure('no-picture', 'The browser cannot open this picture. Take it again.')
  const opened = await openLabelReader().catch((cause: unknown) => failure('no-reader', noReader(cause)))
  if ('ok' in opened) return opened
  try {
    const reading = await readPicture(opened, pixels, partNumbersOnFile)
    return reading.values.length + reading.parts.length > 0 ? success(reading) : nothing
  } finally {
    await opened.close()
  }
}

const noReader = (cause: unknown): string =>
  `The label reader did not start (${cause instanceof Error ? cause.message : cause}). Without a signal it works once it has been fetched with one. Type what the label says.`

const nothing = failure(
  'no-letters',
  'No rating and no part number was found in this picture. Go nearer, hold still and light it from the side, or type what the label says.',
)
