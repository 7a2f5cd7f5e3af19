import { fromPascals, type PressureUnit } from './units'

/** How each unit is written beside a number. */
export const unitLabel: Readonly<Record<PressureUnit, string>> = {
  inH2O: 'in. w.c.',
  mmH2O: 'mm w.c.',
  Pa: 'Pa',
  hPa: 'hPa',
  kPa: 'kPa',
  mbar: 'mbar',
  inHg: 'in. Hg',
  psi: 'psi',
}

/**
 * Decimals shown when nobody says otherwise: each step is about 0.01 in. w.c. (2.5 Pa) or the next finer one, the
 * fineness to which ratings are printed (common practice, no published source).
 */
export const usualDecimals: Readonly<Record<PressureUnit, number>> = {
  inH2O: 2,
  mmH2O: 1,
  Pa: 0,
  hPa: 2,
  kPa: 3,
  mbar: 2,
  inHg: 4,
  psi: 4,
}

/**
 * A pressure as a numeral in a unit, rounded for display only: `0.52`. A negative one has a true minus sign (U+2212),
 * and what rounds to nothing has no sign.
 * @param pascals any finite pressure
 * @param decimals whole, 0 to 20; default: the unit's usual ones
 * @throws RangeError if the pressure is not finite, or the decimals are out of range
 * @example pressureNumeral(129.526, 'inH2O') // '0.52'
 */
export function pressureNumeral(pascals: number, unit: PressureUnit, decimals = usualDecimals[unit]): string {
  const value = fromPascals(pascals, unit)
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 20)
    throw new RangeError(`pressureNumeral requires 0 to 20 whole decimals, not ${decimals}`)
  const digits = Math.abs(value).toFixed(decimals)
  return value < 0 && Number(digits) !== 0 ? `−${digits}` : digits
}

/**
 * A pressure for display, with its unit: `0.52 in. w.c.`. Arguments and errors as for `pressureNumeral`.
 * @example formatPressure(129.526, 'Pa') // '130 Pa'
 */
export function formatPressure(pascals: number, unit: PressureUnit, decimals?: number): string {
  return `${pressureNumeral(pascals, unit, decimals)} ${unitLabel[unit]}`
}
