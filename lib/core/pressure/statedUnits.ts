import type { Token } from './token'
import type { PressureUnit } from './units'
import type { StatedValue } from './values'

export type UnitSaid = { unit: PressureUnit; stated: boolean; contradicting: boolean }

/**
 * The values, each with its unit. One that stands apart from the numbers (a heading "IN. W.C.", or behind MAX) speaks for every
 * value without its own, if the whole text names only one; without any, the person's own unit is taken.
 */
export function withUnits<Value extends StatedValue>(
  tokens: readonly Token[],
  values: readonly Value[],
  ownUnit: PressureUnit,
): (Value & { unitSaid: UnitSaid })[] {
  const inside = (index: number) => values.some((value) => index >= value.from && index < value.to)
  const apart = tokens.flatMap((token, index) =>
    token.kind === 'unit' && !inside(index) ? [token.unit] : [],
  )
  const everywhere = new Set([...apart, ...values.flatMap((value) => value.units)])
  const [common] = everywhere.size === 1 ? everywhere : []
  return values.map((value) => {
    const said = new Set(values.length === 1 ? [...value.units, ...apart] : value.units)
    const [unit = common] = said
    const unitSaid = { unit: unit ?? ownUnit, stated: unit !== undefined, contradicting: said.size > 1 }
    return { ...value, unitSaid }
  })
}
