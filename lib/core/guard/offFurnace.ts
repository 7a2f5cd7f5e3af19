import { type Judgement, limitInterval } from '@/lib/core/reading'
import type { CaseState, GuardSettings, OffFurnaceCheck } from './types'

type Bound = Pick<GuardSettings, 'assumedTolerancePascals' | 'nearLimitPascals' | 'pulls'>

/** The side of the limit that a sound switch keeps to: the high side, or the low side if it opens on rise. */
function edge(judgement: Judgement, kind: CaseState['kind'], settings: Bound): number {
  const { low, high } = limitInterval(judgement.limit, settings.assumedTolerancePascals)
  return (kind === 'opens on rise' ? low : high) ?? judgement.limit.pascals
}

/** Whether a reading lies so near to its limit, tolerance included, that the switch has to be checked off the furnace. */
export function isNearLimit(judgement: Judgement, kind: CaseState['kind'], settings: Bound): boolean {
  const distance = Math.abs(judgement.judgedPascals - edge(judgement, kind, settings))
  return distance <= settings.nearLimitPascals * (1 + 1e-9)
}

/**
 * Whether the check off the furnace speaks against the switch: out of tolerance by more than the gauge can be off, on
 * every one of at least three pulls, to the side that explains the complaint; or it leaks down, the pump line proven
 * tight.
 * @example limit 0.70 ± 0.05, gauge ± 0.01, pulls at 0.80, 0.81, 0.79: all above 0.76, so it does
 */
export function speaksAgainstTheSwitch(
  check: OffFurnaceCheck,
  judgement: Judgement,
  kind: CaseState['kind'],
  settings: Bound,
): boolean {
  if (check.heldForTenSeconds === 'leaked down' && check.pumpLineProvenTight) return true
  const bound = edge(judgement, kind, settings)
  const outside = (pull: number | 'did not close') =>
    pull === 'did not close' ||
    (kind === 'opens on rise'
      ? pull + check.gaugeHalfWidthPascals < bound
      : pull - check.gaugeHalfWidthPascals > bound)
  return check.pulls.length >= settings.pulls && check.pulls.every(outside)
}
