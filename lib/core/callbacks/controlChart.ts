export type CountOf = { count: number; of: number }

/** One point with its own limits: they widen where less was counted. */
export type ChartPoint = { count: number; of: number } & (
  | {
      verdict: 'within' | 'above' | 'below'
      value: number
      centre: number
      lower: number
      upper: number
    }
  | { verdict: 'nothing counted' }
)

/** A point that lies on its limit is within; rounding alone never puts it outside. */
const slack = 1e-9

/**
 * A control chart with limits three standard deviations either side of the centre (W. A. Shewhart; formulas as in
 * D. C. Montgomery, Introduction to Statistical Quality Control). The centre is the total over all points.
 *
 * 'p': shares, `count` among `of`, standard deviation √(p(1 − p)/of). 'u': counts per unit, √(u/of). 'c': plain
 * counts of equal chance, √c; `of` is left out. Limits stop at 0, those of p also at 1. The limits are the normal
 * approximation: where `of` times the centre is below about 5, a single count can already lie above (common practice).
 *
 * @param points in order of time. One with nothing counted (`of` 0) has no value and no limits.
 * @throws RangeError when a count is negative, a share is above 1, or no point has anything counted
 * @example controlChart('c', [{ count: 16 }, { count: 4 }])[0] // centre 10, lower 0.51, upper 19.49, within
 */
export function controlChart(kind: 'c', points: readonly { count: number }[]): ChartPoint[]
export function controlChart(kind: 'p' | 'u', points: readonly CountOf[]): ChartPoint[]
export function controlChart(
  kind: 'p' | 'u' | 'c',
  points: readonly { count: number; of?: number }[],
): ChartPoint[] {
  const counted = points.map(({ count, of }) => ({ count, of: kind === 'c' ? 1 : (of ?? Number.NaN) }))
  for (const { count, of } of counted) {
    if (!(count >= 0 && of >= 0 && count + of < Infinity) || (of === 0 && count > 0))
      throw new RangeError('controlChart requires counts of 0 or more, and nothing counted of nothing')
    if (kind === 'p' && count > of) throw new RangeError('controlChart of shares requires count ≤ of')
  }
  const total = counted.reduce((sum, { of }) => sum + of, 0)
  if (points.length > 0 && !(total > 0))
    throw new RangeError('controlChart requires a point with something counted')
  const centre = counted.reduce((sum, { count }) => sum + count, 0) / total
  const variance = kind === 'p' ? centre * (1 - centre) : centre
  return counted.map(({ count, of }) => {
    if (of === 0) return { count, of, verdict: 'nothing counted' }
    const value = count / of
    const reach = 3 * Math.sqrt(variance / of)
    const lower = Math.max(0, centre - reach)
    const upper = kind === 'p' ? Math.min(1, centre + reach) : centre + reach
    const nearly = slack * (centre + reach)
    const verdict = value > upper + nearly ? 'above' : value < lower - nearly ? 'below' : 'within'
    return { count, of, verdict, value, centre, lower, upper }
  })
}
