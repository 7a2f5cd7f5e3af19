import type { Sense } from '../vocabulary'
import type { Token } from './token'
import type { StatedValue } from './values'

/** The bare word "pressure" right behind a value without a sign, with nothing behind it that makes it a noun. */
function isSenseOfValue(tokens: readonly Token[], values: readonly StatedValue[], index: number): boolean {
  const next = tokens[index + 1]
  return (
    values.some((value) => value.to === index && !value.sign) &&
    (next === undefined || next.kind === 'break' || next.kind === 'limit')
  )
}

/** The senses that the plain words of a text state: they speak for every value of a label. */
export function sensesInWords(
  tokens: readonly Token[],
  values: readonly StatedValue[],
): Exclude<Sense, 'not stated'>[] {
  const said = tokens.flatMap((token, index) =>
    token.kind === 'sense'
      ? [token.sense]
      : token.kind === 'pressure' && isSenseOfValue(tokens, values, index)
        ? ['pressure' as const]
        : [],
  )
  return [...new Set(said)]
}

/**
 * A value's sense from its sign and the words of the text. A sign and a word that disagree state nothing.
 */
export function senseOf(
  value: StatedValue,
  inWords: readonly Exclude<Sense, 'not stated'>[],
): { sense: Sense; contradicting: boolean } {
  const signed = value.sign?.sense ?? 'not stated'
  const said = [...new Set(signed === 'not stated' ? inWords : [...inWords, signed])]
  const [sense] = said
  if (said.length > 1) return { sense: 'not stated', contradicting: true }
  if (sense === undefined || value.number.value === 0) return { sense: 'not stated', contradicting: false }
  return { sense, contradicting: false }
}
