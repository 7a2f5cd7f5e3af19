import { betaBinomialPosterior, type Explanation } from './betaBinomialPosterior'
import { betaMixtureQuantile, merged } from './betaMixture'

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
 * only roughly. The interval is equal-tailed.
 *
 * @param groups each with of ≥ 1, whole numbers; one group alone is drawn only slightly, towards a half
 * @param confidence between 0 and 1
 * @throws RangeError when a count is not whole or not from 0 to `of`, or the confidence is out of range
 * @example 1 of 1 beside 4 of 40, 6 of 60 and 2 of 25: 0.15, interval 0.05 to 0.43
 */
export function shrunkenRates(groups: readonly RateGroup[], confidence = 0.95): ShrunkenRate[] {
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError('shrunkenRates requires a confidence between 0 and 1')
  for (const { count, of } of groups)
    if (!(Number.isInteger(count) && Number.isInteger(of) && of >= 1 && count >= 0 && count <= of))
      throw new RangeError('shrunkenRates requires whole numbers with 0 ≤ count ≤ of, of ≥ 1')
  if (groups.length === 0) return []
  const explanations = betaBinomialPosterior(groups)
  const shrunken = new Map<string, Omit<ShrunkenRate, 'group'>>()
  return groups.map(({ group, count, of }) => {
    const key = `${count} of ${of}`
    const rate = shrunken.get(key) ?? shrink({ count, of }, explanations, confidence)
    shrunken.set(key, rate)
    return { group, ...rate }
  })
}

function shrink(
  { count, of }: Omit<RateGroup, 'group'>,
  explanations: readonly (readonly Explanation[])[],
  confidence: number,
): Omit<ShrunkenRate, 'group'> {
  let ownWeight = 0
  let pull = 0
  const rows = explanations.map((row) =>
    row.map(({ mean, strength, weight }) => {
      const rate = (count + mean * strength) / (of + strength)
      ownWeight += (weight * of) / (of + strength)
      pull += (weight * mean * strength) / (of + strength)
      return { mean: rate, secondMoment: rate ** 2 + (rate * (1 - rate)) / (of + strength + 1), weight }
    }),
  )
  // Explanations of one strength make nearly a beta distribution together; those of different strengths do not.
  const parts = rows.map(merged).filter(({ weight }) => weight > 0)
  const interval = [
    betaMixtureQuantile(parts, (1 - confidence) / 2),
    betaMixtureQuantile(parts, (1 + confidence) / 2),
  ] as const
  const ownRate = count / of
  const rate = ownWeight * ownRate + pull
  return { count, of, ownRate, rate, interval, drawnTowards: pull / (1 - ownWeight), ownWeight }
}
