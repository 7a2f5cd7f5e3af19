import type { Expected } from './types'

/**
 * Whether a reading is higher than this furnace should show: above the reported running range, or above the highest
 * of its baselines by more than weather alone can do. The gauge gets the benefit of the doubt.
 * @param weatherShare 0.15: a screening figure for density (common practice, no published source)
 * @returns undefined when there is nothing to tell by
 * @throws RangeError if a range runs backwards or a figure is no magnitude
 * @example baselines 0.80 and 0.84, reading 1.10, U 0.01: 1.09 > 0.84 × 1.15 = 0.966, higher
 */
export function isHigherThanExpected(
  readingPascals: number,
  gaugeHalfWidthPascals: number,
  expected: Expected | undefined,
  weatherShare: number,
): boolean | undefined {
  if (expected === undefined) return undefined
  const figures = expected.kind === 'range' ? [expected.lowPascals, expected.highPascals] : expected.pascals
  if (figures.some((figure) => !(figure >= 0 && figure < Number.POSITIVE_INFINITY)))
    throw new RangeError('isHigherThanExpected requires expected magnitudes of zero or more')
  if (expected.kind === 'range') {
    if (expected.lowPascals > expected.highPascals)
      throw new RangeError('isHigherThanExpected requires a range that runs from low to high')
    return readingPascals - gaugeHalfWidthPascals > expected.highPascals
  }
  if (expected.pascals.length === 0) return undefined
  return readingPascals - gaugeHalfWidthPascals > Math.max(...expected.pascals) * (1 + weatherShare)
}
