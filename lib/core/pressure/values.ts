import { type Amount, amountFrom, evenTolerance, unevenTolerance, unitsFrom } from './amounts'
import { isNumber, isSign, type NumberToken, type Placed, type SignToken, type Token } from './token'
import type { PressureUnit } from './units'

/** A number that states a pressure, with all that belongs to it. */
export type StatedValue = {
  number: Placed<NumberToken>
  sign?: Placed<SignToken>
  /** Every unit written with it, in order; more than one kind contradicts. */
  units: PressureUnit[]
  above?: Amount
  below?: Amount
  /** The range of tokens it takes, the end not included; words of the label may be among them. */
  from: number
  to: number
}

/** What the numbers of a text were taken for. */
export type Parts = {
  values: StatedValue[]
  codes: string[]
  foreign: string[]
  unclear: string[]
  toleranceAlone: boolean
}

/** No gauge or label writes 060 for 60: it is a date code, or a decimal point was lost. */
const hasLeadingZero = ({ whole, text, value }: Placed<NumberToken>): boolean =>
  whole && text.length > 1 && text.startsWith('0') && value !== 0

/** Whether a number without a unit is a date or part number rather than a pressure. */
function looksLikeCode(
  number: Placed<NumberToken>,
  { sign, referred, ownUnit }: { sign?: SignToken; referred: boolean; ownUnit: PressureUnit },
): boolean {
  const longest = ownUnit === 'Pa' ? 4 : 3
  return (
    hasLeadingZero(number) ||
    (number.whole && (referred || sign?.glued === true || number.text.length > longest))
  )
}

/** Whether the token before says that a part number, model or date follows. */
function afterReference(tokens: readonly Token[], index: number): boolean {
  let before = index - 1
  while (tokens[before]?.kind === 'connector' || tokens[before]?.kind === 'sign') before--
  return tokens[before]?.kind === 'reference'
}

/** A number at a token, with its sign, units and tolerance, and what it was taken for. */
function numberFrom(
  tokens: readonly Token[],
  from: number,
  ownUnit: PressureUnit,
):
  | { as: 'value'; value: StatedValue }
  | { as: 'code' | 'foreign' | 'unclear'; text: string; to: number }
  | undefined {
  const first = tokens[from]
  const sign = isSign(first) ? first : undefined
  const number = sign ? tokens[from + 1] : first
  if (!isNumber(number)) return undefined
  const behind = sign ? from + 2 : from + 1
  const next = tokens[behind]
  if (next?.kind === 'foreign unit' || next?.kind === 'percent')
    return { as: 'foreign', text: `${number.text} ${next.text}`, to: behind + 1 }
  const own = unitsFrom(tokens, behind)
  const tolerance = evenTolerance(tokens, own.to) ?? unevenTolerance(tokens, own.to)
  const { above, below, to = own.to } = tolerance ?? {}
  const units = own.units.length > 0 ? own.units : above?.unit ? [above.unit] : []
  if (units.length > 0 && hasLeadingZero(number)) return { as: 'unclear', text: number.text, to }
  if (units.length === 0 && looksLikeCode(number, { sign, referred: afterReference(tokens, from), ownUnit }))
    return { as: 'code', text: number.text, to }
  return { as: 'value', value: { number, sign, units, above, below, from, to } }
}

/**
 * The pressures among the pieces of a text, with their units and tolerances, and what was not taken for one.
 * A unit behind the tolerance is also the value's.
 */
export function valuesIn(tokens: readonly Token[], ownUnit: PressureUnit): Parts {
  const parts: Parts = { values: [], codes: [], foreign: [], unclear: [], toleranceAlone: false }
  let index = 0
  while (index < tokens.length) {
    const token = tokens[index]
    const alone = token?.kind === 'plus or minus' ? amountFrom(tokens, index + 1) : undefined
    const found = numberFrom(tokens, index, ownUnit)
    if (token?.kind === 'code') parts.codes.push(token.text)
    if (alone) parts.toleranceAlone = true
    if (found?.as === 'value') parts.values.push(found.value)
    if (found?.as === 'code') parts.codes.push(found.text)
    if (found?.as === 'unclear') parts.unclear.push(found.text)
    if (found?.as === 'foreign') parts.foreign.push(found.text)
    index = alone?.to ?? (found?.as === 'value' ? found.value.to : found?.to) ?? index + 1
  }
  return parts
}
