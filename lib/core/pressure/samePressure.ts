import type { Token } from './token'
import { type PressureUnit, toPascals } from './units'
import type { StatedValue } from './values'

/** Half a unit in the last digit written, in pascals. */
const roundingPascals = (value: StatedValue, unit: PressureUnit): number =>
  toPascals(0.5 * 10 ** -value.number.decimals, unit)

/** Whether two numbers state one pressure, within their rounding and the 0.2 % between definitions of the inch. */
function agree(one: StatedValue, other: StatedValue, ownUnit: PressureUnit): boolean {
  if (one.sign && other.sign && one.sign.sense !== other.sign.sense) return false
  const unit = one.units[0] ?? ownUnit
  const otherUnit = other.units[0] ?? ownUnit
  if (unit === otherUnit) return one.number.value === other.number.value
  const pascals = toPascals(one.number.value, unit)
  const otherPascals = toPascals(other.number.value, otherUnit)
  const rounding = roundingPascals(one, unit) + roundingPascals(other, otherUnit)
  return Math.abs(pascals - otherPascals) <= rounding + 0.002 * Math.max(pascals, otherPascals)
}

/**
 * Values that state one pressure twice in a row, such as −0.55 in. w.c. (137 Pa), made one: the first, as written.
 * A first without a unit that agrees in the person's own unit is stated by the second.
 */
export function mergeSamePressures(
  tokens: readonly Token[],
  values: readonly StatedValue[],
  ownUnit: PressureUnit,
): StatedValue[] {
  const kept: StatedValue[] = []
  for (const value of values) {
    const last = kept.at(-1)
    const between = last ? tokens.slice(last.to, value.from) : []
    const named = between.some((token) => token.kind === 'action' || token.kind === 'undecoded')
    if (!last || named || !agree(last, value, ownUnit)) {
      kept.push(value)
      continue
    }
    const units = last.units.length > 0 || value.units.length === 0 ? last.units : [ownUnit]
    const { above = value.above, below = value.below } = last
    kept[kept.length - 1] = { ...last, units, above, below, to: value.to }
  }
  return kept
}
