import type { Position } from './catalogue'
import { makers } from './makers'
import type { SwitchPoints } from './writing'

/** What each elevation band, from the lowest on, leaves of the make point: thinner air gives less suction. */
const bandShares = [1, 0.88, 0.79] as const

/** Numbers that stand as examples in print are kept out of the demo: all on the 0.05 grid, and these. */
const keptOut: readonly number[] = [81, 94]

/** Whether a number of hundredths may stand in the demo as a rating. */
export const isOwnNumber = (hundredths: number): boolean =>
  hundredths % 5 !== 0 && !keptOut.includes(hundredths)

/** The nearest hundredth above that is the demo's own. */
const ownNumber = (hundredths: number): number =>
  isOwnNumber(hundredths) ? hundredths : ownNumber(hundredths + 1)

/**
 * What a switch of the demo's makers is really set to, in one elevation band and revision range. Reports are drawn
 * from it, with the mistakes that people make. The numbers are invented, of a size plausible for the trade.
 *
 * @param band place among the maker's elevation bands, lowest first
 * @param revision place among the family's revision ranges, oldest first
 * @throws RangeError if the maker has no such band, or the family no such revision range
 * @example trueRating(positionNamed('Larkfell 2 060 / Low fire'), 0, 0) // { make: 63, break: 51, tolerance: 4 }
 */
export function trueRating({ range, place, rating }: Position, band: number, revision: number): SwitchPoints {
  const { family, maker, sizeIndex } = range
  const bandCount = makers[maker].bands.length
  const revisions = family.revisions ?? [{ adds: 0 }]
  const { adds } = revisions[revision] ?? {}
  if (!(band >= 0 && band < bandCount) || adds === undefined)
    throw new RangeError(`${range.key} has no elevation band ${band}, or no revision range ${revision}`)
  if (place === 'Low gas pressure') return { make: rating.make, break: rating.make - 113, tolerance: 20 }

  const lowest = rating.make + sizeIndex * rating.step + adds
  const make = ownNumber(Math.round(lowest * bandShares[band]!))
  const hysteresis = Math.max(6, Math.min(16, Math.round(make * 0.19)))
  const tolerance = make < 50 ? 3 : make < 100 ? 4 : 6
  if (place === 'Vent back-pressure')
    return { make, break: ownNumber(make + hysteresis), tolerance, opensOnRise: true }
  return { make, break: ownNumber(make - hysteresis), tolerance }
}
