import canonicalize from 'canonicalize'
import { failure, type Result, success } from '@/lib/core/result'

/**
 * A record as canonical JSON (RFC 8785, JSON Canonicalization Scheme): the same record gives the same bytes,
 * whatever order its fields were sent in. This is what is stored and hashed.
 *
 * @param record what JSON.parse gave
 * @returns the text, or a problem for what no canonical JSON can hold (a number too large for a double, half of a
 *   surrogate pair), and for lists and objects nested more than 100 deep
 * @example canonicalBytes({ b: 1, a: 'é' })   // { ok: true, value: '{"a":"é","b":1}' }
 */
export function canonicalBytes(record: Record<string, unknown>): Result<string> {
  if (isDeeper(record, mostLevels)) return failure('not-canonical', 'It is nested too deeply to be kept.')
  try {
    return success(canonicalize(record) ?? '')
  } catch (cause) {
    return failure('not-canonical', whatCannotBeHeld(cause))
  }
}

/** RFC 8259, 9, lets a reader set a limit. No kind of record needs ten; writing thousands would end in a full stack. */
const mostLevels = 100

const isDeeper = (value: unknown, levels: number): boolean =>
  typeof value === 'object' &&
  value !== null &&
  (levels === 0 || Object.values(value).some((inner) => isDeeper(inner, levels - 1)))

function whatCannotBeHeld(cause: unknown): string {
  const message = cause instanceof Error ? cause.message : ''
  if (message.startsWith('Lone surrogate')) return 'A text in it holds half a character.'
  if (message.startsWith('Infinity')) return 'A number in it is too large to be kept.'
  throw cause
}
