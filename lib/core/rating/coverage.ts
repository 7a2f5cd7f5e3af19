import { compareCodes, isInCodeRange } from './codeRange'
import { whyNotCounted } from './explain'
import { plainPartNumber } from './partNumbers'
import type { Ask, FurnaceForRating, RatingReport, RatingSettings } from './types'

/**
 * What a report is worth for one furnace: it covers it; it is for another; it would cover it if something that is
 * not recorded were (`pending`); or nobody can tell, and it is a lead. `asks`: what is not known of the furnace and
 * might say that it is for another.
 */
type Coverage =
  | { covers: 'yes' }
  | { covers: 'no'; why: string }
  | { covers: 'lead'; asks: Ask[]; why: string }
  | { covers: 'pending'; asks: Ask[]; why: string }

type Reach = 'in' | 'out' | 'made elsewhere' | 'not known here' | 'cannot compare'

const isOpen = (ends: readonly unknown[]): boolean => ends.every((end) => end === undefined)

/** One range of a report against one value of the furnace. */
function reach<Value>(
  ends: readonly unknown[] | undefined,
  value: Value | undefined,
  madeHere: boolean,
  isIn: (value: Value) => boolean | undefined,
): Reach {
  if (ends === undefined) return madeHere ? 'in' : 'made elsewhere'
  if (isOpen(ends)) return 'in'
  if (value === undefined) return 'not known here'
  const inside = isIn(value)
  return inside === undefined ? 'cannot compare' : inside ? 'in' : 'out'
}

/**
 * Whether a report covers a furnace, by revision, serial, elevation and part number. A range that the report leaves
 * unstated covers only the furnace it was made on; elsewhere the report is a lead. A stated range holds for every
 * furnace, also the one it was made on: a label from an altitude kit does not fit a valley. A range of a single serial
 * names one furnace, so what it leaves unstated beside that is no obstacle there.
 *
 * A report that names a part number is for that part only, where the furnace's part is recorded.
 *
 * @example coverageOf(pageForUpTo1200Metres, { id: 'f1', elevationMetres: 1800 }, settings) // { covers: 'no', … }
 */
export function coverageOf(
  report: RatingReport,
  furnace: FurnaceForRating,
  settings: RatingSettings,
): Coverage {
  const { revisionRange, serialRange, elevationBand, partNumber } = report
  const namesOne = serialRange?.from !== undefined && serialRange.from === serialRange.to
  const madeHere = namesOne || (report.furnaceId !== undefined && report.furnaceId === furnace.id)
  const compare = settings.compareCodes ?? compareCodes
  const reaches: [Ask, Reach][] = [
    [
      'revision',
      reach(revisionRange && [revisionRange.from, revisionRange.to], furnace.revision, madeHere, (code) =>
        isInCodeRange(code, revisionRange!, compare),
      ),
    ],
    [
      'serial',
      reach(serialRange && [serialRange.from, serialRange.to], furnace.serial, madeHere, (code) =>
        isInCodeRange(code, serialRange!, compare),
      ),
    ],
    [
      'elevation',
      reach(
        elevationBand && [elevationBand.fromMetres, elevationBand.toMetres],
        furnace.elevationMetres,
        madeHere,
        (metres) =>
          metres >= (elevationBand?.fromMetres ?? Number.NEGATIVE_INFINITY) &&
          metres <= (elevationBand?.toMetres ?? Number.POSITIVE_INFINITY),
      ),
    ],
  ]
  if (partNumber !== undefined && furnace.partNumber !== undefined)
    reaches.push([
      'part number',
      plainPartNumber(partNumber) === plainPartNumber(furnace.partNumber) ? 'in' : 'out',
    ])
  const found = (wanted: Reach): Ask[] => reaches.flatMap(([what, is]) => (is === wanted ? [what] : []))

  const [out] = found('out')
  if (out !== undefined) return { covers: 'no', why: whyNotCounted.doesNotCover(report, out) }
  const asks = found('not known here')
  const [elsewhere] = found('made elsewhere')
  if (elsewhere !== undefined) return { covers: 'lead', asks, why: whyNotCounted.madeElsewhere(elsewhere) }
  const [incomparable] = found('cannot compare')
  if (incomparable !== undefined)
    return { covers: 'lead', asks, why: whyNotCounted.cannotCompare(incomparable) }
  if (asks.length > 0) return { covers: 'pending', asks, why: whyNotCounted.notKnownHere(asks.join(' and ')) }
  return { covers: 'yes' }
}
