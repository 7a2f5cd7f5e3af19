import normalCdf from '@stdlib/stats-base-dists-normal-cdf'

/**
 * The probability that a quantity measured as `value` with standard uncertainty `u` reaches `limit`:
 * Φ((value − limit)/u), a normal state of knowledge (JCGM 106:2012, clause 7).
 * @throws RangeError if the standard uncertainty is not above zero
 * @example probabilityAbove(507, 490, 8.6) // 0.976
 */
export function probabilityAbove(value: number, limit: number, standardUncertainty: number): number {
  if (!(standardUncertainty > 0))
    throw new RangeError(
      `probabilityAbove requires a standard uncertainty above zero, not ${standardUncertainty}`,
    )
  return normalCdf((value - limit) / standardUncertainty, 0, 1)
}
