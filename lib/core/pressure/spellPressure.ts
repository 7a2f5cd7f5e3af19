import type { Sense } from '../vocabulary'
import { pressureNumeral } from './formatPressure'
import type { PressureUnit } from './units'

const digitWords = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

const spokenUnit: Readonly<Record<PressureUnit, string>> = {
  inH2O: 'inches',
  mmH2O: 'millimeters of water',
  Pa: 'pascals',
  hPa: 'hectopascals',
  kPa: 'kilopascals',
  mbar: 'millibars',
  inHg: 'inches of mercury',
  psi: 'pounds per square inch',
}

const spokenSense: Readonly<Record<Sense, string>> = {
  suction: 'negative ',
  pressure: 'positive ',
  'not stated': '',
}

/**
 * A magnitude digit by digit, without unit or sense: for a tolerance, "plus or minus zero point zero five".
 * @throws RangeError if the pressure is negative or not finite, or the decimals are out of range
 * @example spellDigits(12.4544455, 'inH2O', 2) // 'zero point zero five'
 */
export function spellDigits(pascals: number, unit: PressureUnit, decimals?: number): string {
  if (pascals < 0) throw new RangeError(`spellDigits requires a magnitude, not ${pascals}`)
  return [...pressureNumeral(pascals, unit, decimals)]
    .map((character) => (character === '.' ? 'point' : (digitWords[Number(character)] ?? character)))
    .join(' ')
}

/**
 * A pressure for reading back over the phone, every digit spoken, so that 0.06 can't be heard as 0.60.
 * Any PressureText or report of a rating fits as it is.
 * @throws RangeError if the magnitude is negative or not finite, or the decimals are out of range
 * @example spellPressure({ pascals: 161.9, unit: 'inH2O', decimals: 2, sense: 'suction' })
 *   // 'negative zero point six five inches'
 */
export function spellPressure(pressure: {
  pascals: number
  unit: PressureUnit
  decimals?: number
  sense: Sense
}): string {
  const digits = spellDigits(pressure.pascals, pressure.unit, pressure.decimals)
  return `${spokenSense[pressure.sense]}${digits} ${spokenUnit[pressure.unit]}`
}
