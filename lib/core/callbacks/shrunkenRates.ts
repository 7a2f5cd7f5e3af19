import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { betaBinomialPosterior, type Explanation } from './betaBinomialPosterior'

export type RateGroup = { group: string; count: number; of: number }

export type ShrunkenRate = RateGroup & {
  /** count / of, as it is. */
  ownRate: number
  /** Between its own rate and what it is drawn towards: ownWeight · ownRate + (1 − ownWeight) · drawnTowards. */
  rate: number
  interval: readonly [number, number]
  /** The common rate of groups like these, as far as it bears on a group of this size. */
  drawnTowards: number
  /** 0: its own count says nothing beside the others; 1: the others say nothing. Grows with `of`. */
  ownWeight: number
}

/**
 * Rates of groups of unequal size, each drawn towards the common rate by as much as its own count is small, so that
 * one callback out of one job does not show as 100 %. Beta-binomial model, the rates of the groups drawn from one beta
 * distribution that the groups themselves estimate (betaBinomialPosterior has the method and its sources).
 *
 * Where the groups differ no more than chance makes them, the rates come out nearly alike, and their intervals near
 * that of all jobs together; never narrower than chance allows, because how much the groups differ is itself known
 * only roughly. The interval is equal-tailed, of the beta distribution with the posterior's mean and variance.
 *
 * @param groups each with of ≥ 1, whole numbers; one group alone is drawn only slightly, towards a half
 * @param confidence between 0 and 1
 * @throws RangeError when a count is not whole or not from 0 to `of`, or the confidence is out of range
 * @example 1 of 1 beside 4 of 40, 6 of 60 and 2 of 25: 0.15, interval 0.02 to 0.40
 */
export function shrunkenRates(groups: readonly RateGroup[], confidence = 0.95): ShrunkenRate[] {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError('shrunkenRates requires a confidence between 0 and 1')
  for (const { count, of } of groups)
    if (!(Number.isInteger(count) && Number.isInteger(of) && of >= 1 && count >= 0 && count <= of))
      throw new RangeError('shrunkenRates requires whole numbers with 0 ≤ count ≤ of, of ≥ 1')
  if (groups.length === 0) return []
  const explanations = betaBinomialPosterior(groups)
  return groups.map((group) => shrink(group, explanations, confidence))
}

function shrink(
  { group, count, of }: RateGroup,
  explanations: readonly Explanation[],
  confidence: number,
): ShrunkenRate {
  let ownWeight = 0
  let pull = 0
  let second = 0
  for (const { mean, strength, weight } of explanations) {
    const rate = (count + mean * strength) / (of + strength)
    ownWeight += (weight * of) / (of + strength)
    pull += (weight * mean * strength) / (of + strength)
    second += weight * (rate ** 2 + (rate * (1 - rate)) / (of + strength + 1))
  }
  const ownRate = count / of
  const rate = ownWeight * ownRate + pull
  const size = (rate * (1 - rate)) / (second - rate ** 2) - 1
  const end = (tail: number) => betaQuantile(tail, rate * size, (1 - rate) * size)
  const interval = [end((1 - confidence) / 2), end((1 + confidence) / 2)] as const
  return { group, count, of, ownRate, rate, interval, drawnTowards: pull / (1 - ownWeight), ownWeight }
}
