import regularizedBeta from '@stdlib/math-base-special-betainc'

/** One beta distribution among several, by its two first moments. The weights of all add up to 1. */
export type BetaPart = { mean: number; secondMoment: number; weight: number }

/** In standard deviations: far finer than is ever shown. */
const fineEnough = 2e-4

/**
 * The value below which so much of a mixture of beta distributions lies. It starts from Cantelli's inequality, which
 * says how many standard deviations from the mean it can lie at most, and goes on by the Illinois form of regula
 * falsi (M. Dowell & P. Jarratt, BIT 11 (1971) 168-174), which keeps it enclosed.
 * @param share between 0 and 1
 * @example a single Beta(1, 1), share 0.3: 0.3
 */
export function betaMixtureQuantile(parts: readonly BetaPart[], share: number): number {
  const { mean, secondMoment } = merged(parts)
  const deviation = Math.sqrt(secondMoment - mean ** 2)
  const shapes = parts.map((part) => {
    const size = (part.mean * (1 - part.mean)) / (part.secondMoment - part.mean ** 2) - 1
    return { a: part.mean * size, b: (1 - part.mean) * size, weight: part.weight }
  })
  const tooMuch = (value: number) =>
    shapes.reduce((sum, { a, b, weight }) => sum + weight * regularizedBeta(value, a, b), -share)

  let low = Math.max(0, mean - deviation * Math.sqrt((1 - share) / share))
  let high = Math.min(1, mean + deviation * Math.sqrt(share / (1 - share)))
  let [belowBy, aboveBy] = [tooMuch(low), tooMuch(high)]
  let moved: 'low' | 'high' | 'neither' = 'neither'
  while (high - low > fineEnough * deviation) {
    const value = (low * aboveBy - high * belowBy) / (aboveBy - belowBy)
    const by = tooMuch(value)
    if (Math.abs(by) < fineEnough * Math.min(share, 1 - share)) return value
    // The end that stays a second time counts half, so that it moves next.
    if (by < 0) {
      low = value
      belowBy = by
      if (moved === 'low') aboveBy /= 2
      moved = 'low'
    } else {
      high = value
      aboveBy = by
      if (moved === 'high') belowBy /= 2
      moved = 'high'
    }
  }
  return (low + high) / 2
}

/** One part with the moments of several together; of no weight at all, any will do. */
export function merged(parts: readonly BetaPart[]): BetaPart {
  const weight = parts.reduce((sum, part) => sum + part.weight, 0)
  if (weight === 0) return { ...parts[0]!, weight }
  const average = (moment: 'mean' | 'secondMoment') =>
    parts.reduce((sum, part) => sum + part.weight * part[moment], 0) / weight
  return { mean: average('mean'), secondMoment: average('secondMoment'), weight }
}
