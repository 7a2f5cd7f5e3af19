import { combined, uncertaintyBudget } from './budget'
import { atLeast, decide } from './decide'
import { gaugeHalfWidth } from './instrumentUncertainty'
import { judgedValue } from './judgedValue'
import { limitInterval } from './limitInterval'
import { closesWhen, isHot } from './phases'
import { meanOf } from './repeatability'
import type { Instrument, Judgement, Limit, Reading, ReadingSettings } from './types'
import { whatWouldSettle } from './whatWouldSettle'

/**
 * Holds one reading against one limit whose value is not in dispute.
 * A hidden extreme (an averaging display without minimum or maximum hold) can fail the test but never pass it.
 * Thin is a hot reading that leaves the switch closed by less than the guideline, counted from the limit's value.
 * @param against the action at the limit
 * @throws RangeError for figures that are no magnitudes
 * @example a hot minimum of 0.63 against an opening point of 0.55 ± 0.05 in. w.c., ±1 % + 1 digit of 0.001:
 *   enough, margin 0.08, thin by the guideline of 0.10
 */
export function judge(
  reading: Reading,
  instrument: Instrument,
  limit: Limit,
  against: Judgement['against'],
  settings: ReadingSettings,
): Judgement {
  const value = judgedValue(reading, settings.usualScatterPascals)
  const interval = limitInterval(limit, settings.assumedTolerancePascals)
  const gauge = gaugeHalfWidth(instrument, value.pascals)
  const budget = uncertaintyBudget(instrument, value.pascals, value.scatterPascals, interval.halfWidth)
  const u = combined(budget)
  const closing = closesWhen(reading.kind)
  const decision = decide(value.pascals, interval, u, gauge.pascals, closing)
  const hidden = value.extremeHidden && decision.verdict === closing
  const verdict = hidden ? 'too close to call' : decision.verdict
  const margin = value.pascals - limit.pascals
  const room = closing === 'enough' ? margin : -margin
  const { thinGuideline } = settings
  const starts = reading.separateStarts === true ? reading.samples.length : 1
  const moreSamples =
    verdict === 'too close to call' && !hidden
      ? whatWouldSettle(
          {
            valuePascals: value.pascals,
            interval,
            budget,
            gaugeHalfWidthPascals: gauge.pascals,
            closesWhen: closing,
            starts,
            scatterPascals: value.scatterPascals * Math.sqrt(starts),
            scatterWhole: value.scatterWhole,
          },
          settings.mostStarts,
        )
      : undefined
  return {
    limit,
    against,
    verdict,
    thin: isHot(reading.phase) && verdict === closing && !atLeast(room, thinGuideline.pascals),
    ...(isHot(reading.phase) && { guideline: thinGuideline }),
    meanPascals: meanOf(reading.samples),
    judgedPascals: value.pascals,
    marginPascals: margin,
    probabilityEnough: decision.probabilityEnough,
    standardUncertaintyPascals: u,
    gaugeHalfWidthPascals: gauge.pascals,
    budget,
    clearsWorstCase: decision.clearsWorstCase && !hidden,
    ...(moreSamples !== undefined && { moreSamples }),
  }
}
