import { failure, type Result, success } from '../result'
import type { SurvivalStep } from './kaplanMeier'

export type MedianTime = {
  time: number
  /** Its upper end is not reached when the band never comes down to a half. */
  interval: readonly [number, number | 'not reached']
}

/** Products of fractions miss a half by rounding alone. */
const slack = 1e-9

/**
 * The first time by which half have had the event (survival ≤ 0.5), and the times at which the ends of the pointwise
 * interval come down to a half (R. Brookmeyer & J. Crowley, Biometrics 38 (1982) 29-41, on the log(−log) scale).
 * @param steps as kaplanMeier gives them, at the confidence wanted
 * @returns the median, or the problem 'half-not-reached'
 * @example the 6-MP trial: 23 weeks, interval 13 to not reached
 */
export function medianTime(steps: readonly SurvivalStep[]): Result<MedianTime> {
  const median = steps.find((step) => step.survival <= 0.5 + slack)
  if (median === undefined)
    return failure(
      'half-not-reached',
      'More than half have had no callback so far, so there is no median yet. Show the curve instead.',
    )
  const firstBelowHalf = (end: 0 | 1) =>
    steps.find(({ interval }) => interval !== 'not defined' && interval[end] <= 0.5)?.time
  return success({
    time: median.time,
    interval: [firstBelowHalf(0) ?? median.time, firstBelowHalf(1) ?? 'not reached'],
  })
}
