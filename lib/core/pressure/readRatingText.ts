import type { Result } from '../result'
import type { PressureText, ReadPressureOptions } from './pressureText'
import { readPressures } from './readPressures'

/**
 * Reads all that a rating label states: one pressure, or several when each is named (close and open, make and
 * break, or abbreviations, which are kept and not interpreted). Each keeps the whole label in `asWritten`.
 * Options and problem codes as for `readPressureText`.
 * @throws RangeError if `options.ownUnit` is not a known unit
 * @example readRatingText('CLOSE 0.75 MAX / OPEN 0.60 ±0.05')
 *   // two: closes, maximum 0.75; opens, nominal 0.60 with 12.45 Pa either way
 */
export function readRatingText(text: string, options?: ReadPressureOptions): Result<PressureText[]> {
  return readPressures(text, options)
}
