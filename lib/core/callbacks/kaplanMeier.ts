import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'
import { checkLifetimes, eventTimes } from './lifetimes'

export type SurvivalStep = {
  /** An event happened here; between two of them nothing changes. */
  time: number
  /** How many were still watched just before, and how many of them had their event now. */
  atRisk: number
  events: number
  /** The share without event from here to the next step. */
  survival: number
  /** Greenwood's. Once nobody is left (survival 0) it is not defined, and neither is the interval. */
  standardError: number | 'not defined'
  /** Pointwise, on the log(−log) scale, so it never leaves 0 to 1. */
  interval: readonly [number, number] | 'not defined'
}

/**
 * The share without event over time, when some were watched for a part of the time only.
 *
 * E. L. Kaplan & P. Meier, JASA 53 (1958) 457-481; M. Greenwood's variance, S² · Σ d / (n(n − d)); interval by
 * J. D. Kalbfleisch & R. L. Prentice, S^exp(±z·se(log(−log S))). At a tie events come before censorings.
 *
 * @param times from the start of watching, 0 or more, in any unit
 * @param events for each time: true when the event happened then, false when watching stopped then
 * @param confidence between 0 and 1
 * @returns a step for every different time with an event, in order; none when nothing happened
 * @throws RangeError when lengths differ, a time is negative or no number, or the confidence is out of range
 * @example kaplanMeier([6, 6, 6, 6, 7], [true, true, true, false, true])[0].survival // 2/5
 */
export function kaplanMeier(
  times: readonly number[],
  events: readonly boolean[],
  confidence = 0.95,
): SurvivalStep[] {
  checkLifetimes('kaplanMeier', { times, events })
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError('kaplanMeier requires a confidence between 0 and 1')
  const z = normalQuantile((1 + confidence) / 2, 0, 1)
  let survival = 1
  let greenwood = 0
  return eventTimes({ times, events }).map(({ time, atRisk, events: happened }) => {
    survival *= 1 - happened / atRisk
    greenwood += happened / (atRisk * (atRisk - happened))
    if (survival === 0)
      return {
        time,
        atRisk,
        events: happened,
        survival,
        standardError: 'not defined',
        interval: 'not defined',
      }
    const spread = (z * Math.sqrt(greenwood)) / -Math.log(survival)
    return {
      time,
      atRisk,
      events: happened,
      survival,
      standardError: survival * Math.sqrt(greenwood),
      interval: [survival ** Math.exp(spread), survival ** Math.exp(-spread)],
    }
  })
}
