import type { LabelReading, ValueCandidate } from '@/lib/core/label'
import { type LabelReader, openLabelReader } from '@/lib/device/labels/labelReader'
import { readPicture } from '@/lib/device/labels/readPicture'
import type { LabelPicture } from './labelPictures'

/** The same recognition as in a browser, with its files from this machine's folder. */
export const openReaderHere = (): Promise<LabelReader> =>
  openLabelReader({ langPath: 'node_modules/@tesseract.js-data/eng/4.0.0_best_int' })

export const readMade = (
  reader: LabelReader,
  picture: LabelPicture,
  onFile: readonly string[],
): Promise<LabelReading> => {
  const { width, height, data } = picture
  return readPicture(
    reader,
    { width, height, data: new Uint8ClampedArray(data), colorSpace: 'srgb' } as ImageData,
    onFile,
  )
}

/** Whether a candidate says what the label states: every pressure of it, no other, each with its action. */
export function saysWhatIsStated({ pressures }: ValueCandidate, { stated }: LabelPicture): boolean {
  return (
    pressures.length === stated.length &&
    stated.every(({ printed, inPascals, action }, at) => {
      const read = pressures[at]!
      return read.value === Number(printed) && (read.unit === 'Pa') === inPascals && read.action === action
    })
  )
}

/** Whether every pressure of a candidate is one that stands on the label: a part of the whole is not wrong. */
export function saysNothingElse({ pressures }: ValueCandidate, { stated }: LabelPicture): boolean {
  return pressures.every(({ value, unit, action }) =>
    stated.some(
      (each) =>
        value === Number(each.printed) &&
        (unit === 'Pa') === each.inPascals &&
        (action === undefined || action === each.action),
    ),
  )
}
