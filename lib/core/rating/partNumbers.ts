import type { RatingReport, RatingSettings } from './types'

/** A part number without case, blanks and dashes, which people leave out. */
export const plainPartNumber = (partNumber: string): string =>
  partNumber.toUpperCase().replace(/[^\p{L}\p{N}]/gu, '')

/** The part numbers that reports name, each once, as the first of them writes it. */
export function partNumbersOf(reports: readonly RatingReport[]): string[] {
  const named = new Map<string, string>()
  for (const { partNumber } of reports) {
    if (partNumber === undefined) continue
    const plain = plainPartNumber(partNumber)
    if (!named.has(plain)) named.set(plain, partNumber)
  }
  return [...named.values()]
}

/**
 * Whether a later part number replaces this one.
 * @example isSuperseded('Q-100', { now, supersededPartNumbers: ['q100'] }) // true
 */
export function isSuperseded(partNumber: string, { supersededPartNumbers }: RatingSettings): boolean {
  if (supersededPartNumbers === undefined) return false
  if (typeof supersededPartNumbers === 'function') return supersededPartNumbers(partNumber)
  return supersededPartNumbers.some((other) => plainPartNumber(other) === plainPartNumber(partNumber))
}
