import { combined } from './budget'
import { type ClosesWhen, decide } from './decide'
import type { LimitInterval } from './limitInterval'
import type { UncertaintyBudget } from './types'

type Unsettled = {
  valuePascals: number
  interval: LimitInterval
  budget: UncertaintyBudget
  gaugeHalfWidthPascals: number
  closesWhen: ClosesWhen
  /** Starts that went into the value, and the scatter before it was divided by their root. */
  starts: number
  scatterPascals: number
  /** The scatter can't be averaged down. */
  scatterWhole: boolean
}

/**
 * What could settle 'too close to call' if the value stays where it is: so many further separate starts, when the
 * scatter alone stands in the way; a finer manometer, when the gauge does; nothing (undefined) when the limit itself
 * is not known well enough. It is no way to pass: the number is named beforehand and every start counts.
 * @param mostStarts more than this in all is never asked for
 */
export function whatWouldSettle(
  unsettled: Unsettled,
  mostStarts: number,
): number | 'a finer manometer is needed' | undefined {
  const { valuePascals, interval, budget, gaugeHalfWidthPascals, starts, scatterPascals } = unsettled
  const settledWith = (changed: Partial<UncertaintyBudget>, halfWidth: number): boolean => {
    const u = combined({ ...budget, ...changed })
    // With nothing uncertain left, the value is compared as it stands.
    const standardUncertainty = u > 0 ? u : Number.MIN_VALUE
    return (
      decide(valuePascals, interval, standardUncertainty, halfWidth, unsettled.closesWhen).verdict !==
      'too close to call'
    )
  }
  if (settledWith({ repeatability: 0 }, gaugeHalfWidthPascals)) {
    if (unsettled.scatterWhole) return undefined
    for (let all = starts + 1; all <= mostStarts; all += 1)
      if (settledWith({ repeatability: scatterPascals / Math.sqrt(all) }, gaugeHalfWidthPascals))
        return all - starts
    return undefined
  }
  const repeatability = unsettled.scatterWhole ? budget.repeatability : 0
  return settledWith({ instrument: 0, resolution: 0, repeatability }, 0)
    ? 'a finer manometer is needed'
    : undefined
}
