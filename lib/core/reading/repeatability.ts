/** How many readings' worth of trust the usual scatter carries into the pooled estimate. */
const usualScatterWeight = 4

/**
 * Scatter of repeated readings as a standard deviation in pascals, pooled with the usual scatter s₀, so that one or
 * two samples do not look perfect: s² = (4·s₀² + Σ(x − x̄)²)/(n + 3). It is never below half of the whole spread.
 * With one sample and no spread it is s₀ itself.
 * @param samples at least one, pascals
 * @param lowest, highest what minimum and maximum hold showed, if more than the samples
 * @throws RangeError if there is no sample
 * @example pooledScatter([200, 200, 200], 2.5) // √(4 · 6.25 / 6) = 2.04
 */
export function pooledScatter(
  samples: readonly number[],
  usualScatterPascals: number,
  lowest?: number,
  highest?: number,
): number {
  const mean = meanOf(samples)
  const squares = samples.reduce((sum, sample) => sum + (sample - mean) ** 2, 0)
  const pooled = (usualScatterWeight * usualScatterPascals ** 2 + squares) / (samples.length + 3)
  const spread = Math.max(...samples, highest ?? 0) - Math.min(...samples, lowest ?? Number.POSITIVE_INFINITY)
  return Math.max(Math.sqrt(pooled), spread / 2)
}

/** The arithmetic mean. @throws RangeError if there is no sample */
export function meanOf(samples: readonly number[]): number {
  if (samples.length === 0) throw new RangeError('meanOf requires at least one sample')
  return samples.reduce((sum, sample) => sum + sample, 0) / samples.length
}
