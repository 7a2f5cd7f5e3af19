import type { LimitInterval } from './limitInterval'
import { probabilityAbove } from './probability'
import type { Verdict } from './types'

/** Rounding in the last place must not decide. Relative to the size of what is compared. */
const slack = 1e-9

/** Whether a is at least b, rounding aside. */
export const atLeast = (a: number, b: number): boolean => a >= b - slack * Math.max(Math.abs(a), Math.abs(b))

/** Which verdict leaves the switch closed: 'enough', or 'too low' for one that opens on rise. */
export type ClosesWhen = 'enough' | 'too low'

type Decision = { verdict: Verdict; probabilityEnough: number; clearsWorstCase: boolean }

/**
 * One value held against one limit. 'Enough' needs a known high side and a probability of at least 0.95, 'too low'
 * a known low side and at most 0.05 (JCGM 106:2012 for the probability; the 0.95 is common practice). Whichever of
 * the two leaves the switch closed must also clear the worst case: the reading less the gauge's half-width against
 * the limit plus its tolerance, or the other way about for a switch that opens on rise.
 * @example 0.86 with U 0.0096 and u 0.031 against 0.70 ± 0.05: 0.8504 ≥ 0.75, enough
 */
export function decide(
  valuePascals: number,
  interval: LimitInterval,
  standardUncertainty: number,
  gaugeHalfWidthPascals: number,
  closesWhen: ClosesWhen,
): Decision {
  const { low, high } = interval
  const probabilityEnough = probabilityAbove(valuePascals, interval.centre, standardUncertainty)
  const clearsWorstCase =
    closesWhen === 'enough'
      ? high !== undefined && atLeast(valuePascals - gaugeHalfWidthPascals, high)
      : low !== undefined && atLeast(low, valuePascals + gaugeHalfWidthPascals)
  const guarded = (verdict: ClosesWhen) => verdict !== closesWhen || clearsWorstCase
  if (high !== undefined && probabilityEnough >= 0.95 && guarded('enough'))
    return { verdict: 'enough', probabilityEnough, clearsWorstCase }
  if (low !== undefined && probabilityEnough <= 0.05 && guarded('too low'))
    return { verdict: 'too low', probabilityEnough, clearsWorstCase }
  return { verdict: 'too close to call', probabilityEnough, clearsWorstCase }
}
