import { failure, type Result, success } from '../result'
import type { PressureText, ReadPressureOptions } from './pressureText'
import { readPressures } from './readPressures'

/**
 * Reads one pressure as people type it and labels print it: `.52`, `-0.52 in. w.c.`, `130 Pa`, `0.60 ±0.05`,
 * `OPEN 0.75 MAX`. A bare number is taken in the person's own unit, with `unitStated: false`.
 *
 * Problem codes: 'no-number', 'several-numbers', 'contradicting-units', 'not-finite', 'number-unclear',
 * 'looks-like-code', 'unit-not-known', 'zero-is-no-rating' (ratings only), 'too-long' (over 200 characters).
 * No text makes it throw.
 * @throws RangeError if `options.ownUnit` is not a known unit
 * @example readPressureText('-0.52 in. w.c.') // pascals 129.526…, sense 'suction', decimals 2
 */
export function readPressureText(text: string, options?: ReadPressureOptions): Result<PressureText> {
  const read = readPressures(text, options)
  if (!read.ok) return read
  const [first, second] = read.value
  if (first && !second) return success(first)
  return failure('several-numbers', 'The text gives more than one pressure. Enter them one at a time.')
}
