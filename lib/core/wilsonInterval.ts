import normalQuantile from '@stdlib/stats-base-dists-normal-quantile'

/**
 * Wilson's score interval for a proportion (E. B. Wilson, JASA 22 (1927) 209-212, without continuity correction).
 *
 * @param hits from 0 to `of`
 * @param confidence between 0 and 1, e.g. 0.95
 * @throws RangeError when there is nothing to count, or an argument is outside its range
 * @example wilsonInterval(81, 263, 0.95) // [0.2553, 0.3662]
 */
export function wilsonInterval(hits: number, of: number, confidence: number): readonly [number, number] {
  if (!(of > 0) || !(hits >= 0 && hits <= of))
    throw new RangeError('wilsonInterval requires 0 ≤ hits ≤ of, of > 0')
  if (!(confidence > 0 && confidence < 1))
    throw new RangeError('wilsonInterval requires a confidence between 0 and 1')
  const z = normalQuantile((1 + confidence) / 2, 0, 1)
  const share = hits / of
  const middle = share + (z * z) / (2 * of)
  const half = z * Math.sqrt((share * (1 - share)) / of + (z * z) / (4 * of * of))
  const below = (middle - half) / (1 + (z * z) / of)
  const above = (middle + half) / (1 + (z * z) / of)
  // At the ends the limits are 0 and 1 exactly; the formula reaches them only up to rounding.
  return [hits === 0 ? 0 : Math.max(0, below), hits === of ? 1 : Math.min(1, above)]
}
