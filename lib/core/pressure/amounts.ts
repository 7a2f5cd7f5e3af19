import { isNumber, isSign, type Token } from './token'
import type { PressureUnit } from './units'

/** A number of a tolerance; its unit is left out where the text gives none. */
export type Amount = { value: number; unit?: PressureUnit; percent?: true }

export type Tolerance = {
  above: Amount
  below: Amount
  /** The token behind it. */
  to: number
}

/** The units written one after the other from a token on, and the token behind them. */
export function unitsFrom(tokens: readonly Token[], from: number): { units: PressureUnit[]; to: number } {
  const units: PressureUnit[] = []
  let to = from
  for (let token = tokens[to]; token?.kind === 'unit'; token = tokens[++to]) units.push(token.unit)
  return { units, to }
}

/** A number with its unit or percent sign, from a token on. */
export function amountFrom(
  tokens: readonly Token[],
  from: number,
): { amount: Amount; to: number } | undefined {
  const number = tokens[from]
  if (!isNumber(number)) return undefined
  if (tokens[from + 1]?.kind === 'percent')
    return { amount: { value: number.value, percent: true }, to: from + 2 }
  const { units, to } = unitsFrom(tokens, from + 1)
  return { amount: { value: number.value, unit: units[0] }, to }
}

const mayPrecede = new Set<Token['kind']>(['tolerance', 'limit', 'action', 'undecoded', 'connector'])

/** A tolerance of one amount, ±0.05, which may stand behind the words that follow a value. */
export function evenTolerance(tokens: readonly Token[], start: number): Tolerance | undefined {
  let from = start
  for (let token = tokens[from]; token; token = tokens[++from])
    if (!mayPrecede.has(token.kind) && !(token.kind === 'break' && token.text !== '/')) break
  if (tokens[from]?.kind !== 'plus or minus') return undefined
  const both = amountFrom(tokens, from + 1)
  return both && { above: both.amount, below: both.amount, to: both.to }
}

/** A tolerance of two amounts right behind the value, in either order: +0.00/−0.05. One unit serves both. */
export function unevenTolerance(tokens: readonly Token[], start: number): Tolerance | undefined {
  const from = tokens[start]?.text === ',' || tokens[start]?.kind === 'tolerance' ? start + 1 : start
  const one = amountFrom(tokens, from + 1)
  if (!one) return undefined
  const behind = tokens[one.to]?.kind === 'break' ? one.to + 1 : one.to
  const other = amountFrom(tokens, behind + 1)
  const [first, second] = [tokens[from], tokens[behind]]
  if (!other || !isSign(first) || !isSign(second)) return undefined
  const unit = one.amount.unit ?? other.amount.unit
  const amounts = [one.amount, other.amount].map((amount) => ({ ...amount, unit: amount.unit ?? unit }))
  const [above, below] = first.sense === 'pressure' ? amounts : amounts.toReversed()
  const opposite =
    first.sense !== second.sense && first.sense !== 'not stated' && second.sense !== 'not stated'
  return above && below && opposite ? { above, below, to: other.to } : undefined
}
