import type { Limit } from './types'

/** Where the true limit may lie, in pascals. A side that nobody promised is left out. */
export type LimitInterval = {
  low?: number
  high?: number
  /** The value that probability is worked from. */
  centre: number
  /** t: half-width of the tolerance around the centre; zero where only one side is known. */
  halfWidth: number
  /** A tolerance that nobody stated was taken for at least one side. */
  toleranceAssumed: boolean
}

/**
 * The interval of a limit: nominal v − t … v + t, a maximum known only above, a minimum known only below. A
 * tolerance that lies unevenly about the value is centred (the half-width as in JCGM 100:2008, 4.3.8; clause from memory). A one-sided limit is its own
 * bound, with what tolerance its source adds to that side; none is assumed.
 * @throws RangeError if the value is not finite and zero or more, or a tolerance is negative or not finite
 * @example nominal 0.70, tolerance not stated, 0.05 assumed: 0.65 … 0.75
 */
export function limitInterval(limit: Limit, assumedTolerancePascals: number): LimitInterval {
  for (const part of [limit.pascals, limit.toleranceAbove, limit.toleranceBelow])
    if (part !== undefined && !(part >= 0 && part < Number.POSITIVE_INFINITY))
      throw new RangeError(`limitInterval requires magnitudes of zero or more, not ${part}`)
  if (limit.kind === 'maximum') {
    const high = limit.pascals + (limit.toleranceAbove ?? 0)
    return { high, centre: high, halfWidth: 0, toleranceAssumed: false }
  }
  if (limit.kind === 'minimum') {
    const low = limit.pascals - (limit.toleranceBelow ?? 0)
    return { low, centre: low, halfWidth: 0, toleranceAssumed: false }
  }
  const high = limit.pascals + (limit.toleranceAbove ?? assumedTolerancePascals)
  const low = limit.pascals - (limit.toleranceBelow ?? assumedTolerancePascals)
  return {
    low,
    high,
    centre: (low + high) / 2,
    halfWidth: (high - low) / 2,
    toleranceAssumed: limit.toleranceAbove === undefined || limit.toleranceBelow === undefined,
  }
}
