import { roundsTo, type StatedNumber, sameMagnitude } from './resolution'
import type { KnownValues } from './types'

/** How wrong reports go wrong, by share. Common practice, no published source. */
const decimalShare = 0.35
const knownShare = 0.25
const anywhereShare = 0.4

const differing = (values: readonly number[], truthPascals: number): number[] =>
  values.filter(
    (value, at) =>
      !sameMagnitude(value, truthPascals) &&
      !values.slice(0, at).some((other) => sameMagnitude(other, value)),
  )

/**
 * The probability s(v → x) of a wrong report x when the truth is v: the decimal point slipped (ten times or a tenth,
 * 0.35 shared), another switch point was named (the other action's or the sister switch's known values, 0.25
 * shared), or it went anywhere else. The rest, with the shares of slips that do not exist here, falls evenly on all
 * plausible values but the true one, and is added to any named slip.
 *
 * A report coarser than the slip matches it when the slip rounds to it.
 *
 * @param truthPascals v, a magnitude
 * @param report x, as stated
 * @param plausibleValues M, whole, at least 2
 * @example slipProbability(149.45, sixInches, { otherAction: [], sister: [] }, 40) // 0.175 + 0.65/39
 */
export function slipProbability(
  truthPascals: number,
  report: StatedNumber,
  known: KnownValues,
  plausibleValues: number,
): number {
  const decimal = differing([truthPascals * 10, truthPascals / 10], truthPascals)
  const points = differing([...known.otherAction, ...known.sister], truthPascals)
  const missing = (decimal.length === 0 ? decimalShare : 0) + (points.length === 0 ? knownShare : 0)
  const hits = (targets: number[]) => targets.filter((target) => roundsTo(target, report)).length
  return (
    (anywhereShare + missing) / (plausibleValues - 1) +
    (decimalShare * hits(decimal)) / Math.max(1, decimal.length) +
    (knownShare * hits(points)) / Math.max(1, points.length)
  )
}
