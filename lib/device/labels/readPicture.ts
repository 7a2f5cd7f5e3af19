import { agreeing, type LabelReading, readLabel } from '@/lib/core/label'
import { greysOf, turned } from './greys'
import type { LabelReader } from './labelReader'
import { preparations } from './preparations'

/** Ways up that a picture is tried in when nothing was found: as it is, upside down, and on either side. */
const waysUp = [0, 180, 90, 270] as const

/**
 * What the label in a picture seems to say. It is read twice, prepared in two ways, and turned round where nothing was
 * found.
 */
export async function readPicture(
  reader: LabelReader,
  picture: ImageData,
  partNumbersOnFile: readonly string[],
): Promise<LabelReading> {
  const greys = greysOf(picture)
  let best: LabelReading = { values: [], parts: [] }
  for (const degrees of waysUp) {
    const prepared = preparations(turned(greys, degrees))
    if (prepared === undefined) return best
    const [smooth, sharp] = prepared
    const first = readLabel(await reader.words(smooth), partNumbersOnFile)
    // Nothing at all on the first look: the label stands another way, or there is none.
    if (first.values.length + first.parts.length === 0) continue
    const reading = agreeing(first, readLabel(await reader.words(sharp), partNumbersOnFile))
    if (offeredIn(reading) > 0) return reading
    if (best.values.length + best.parts.length === 0) best = reading
  }
  return best
}

const offeredIn = ({ values, parts }: LabelReading): number =>
  [...values, ...parts].filter(({ offered }) => offered).length
