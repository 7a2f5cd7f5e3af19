import { unitLabel } from './formatPressure'
import type { ReadPressureOptions, Warning } from './pressureText'
import { fromPascals, type PressureUnit, pascalsPer, toPascals } from './units'
import { confirmRatingRange, isWithin, usualRatingRange } from './usualRange'

/**
 * Gas pressures met at the same furnace: 3.5 in. w.c. (natural gas) and 10 (propane) at the manifold, up to 14 at
 * the valve's inlet (common practice, no published source).
 */
const highestGasPressureInches = 14

/** The units that people in this trade mix up. */
const mixedUp = ['inH2O', 'Pa', 'mbar'] as const

const unitName: Readonly<Record<PressureUnit, string>> = {
  inH2O: 'inches',
  mmH2O: 'millimeters',
  Pa: 'pascals',
  hPa: 'hectopascals',
  kPa: 'kilopascals',
  mbar: 'millibars',
  inHg: 'inches-of-mercury',
  psi: 'psi',
}

const written = (value: number, unit: PressureUnit): string =>
  `${Number(value.toPrecision(12))} ${unitLabel[unit]}`

const usual = (pascals: number): boolean => isWithin(usualRatingRange, pascals)

function slips(value: number, unit: PressureUnit): Warning[] {
  const pascals = toPascals(value, unit)
  const shown = written(value, unit)
  const found: Warning[] = mixedUp
    .filter((meant) => pascalsPer[meant] !== pascalsPer[unit] && usual(toPascals(value, meant)))
    .map((meant) => ({
      code: `${unitName[meant]}-as-${unitName[unit]}`,
      message: `${shown} is unusual for an air switch. Was ${written(value, meant)} meant?`,
    }))
  if (usual(pascals / 10))
    found.push({
      code: 'ten-times',
      message: `${shown} is unusually high. Check the decimal point: was ${written(value / 10, unit)} meant?`,
    })
  if (usual(pascals * 10))
    found.push({
      code: 'a-tenth',
      message: `${shown} is unusually low. Check the decimal point: was ${written(value * 10, unit)} meant?`,
    })
  const inches = fromPascals(pascals, 'inH2O')
  if (pascals > usualRatingRange.highPascals && inches <= highestGasPressureInches)
    found.push({
      code: 'manifold-pressure',
      message: `${shown} looks like a gas pressure at the manifold or valve, not an air switch's setting. Check what it belongs to.`,
    })
  return found
}

/**
 * What may have gone wrong with a pressure outside the usual range of ratings, each plausible slip under its own code:
 * 'ten-times', 'a-tenth', 'manifold-pressure', '<unit meant>-as-<unit written>' such as 'pascals-as-inches', else
 * 'outside-usual-range'; and 'confirm-value' for a rating outside 5 to 2500 Pa. A low reading is what a faulty air
 * path gives, so a reading is doubted only above the range.
 * @param value finite magnitude in `unit`
 * @throws RangeError if the value is not finite
 * @example plausibilityWarnings(150, 'inH2O', 'rating').map((warning) => warning.code)
 *   // ['pascals-as-inches', 'confirm-value']
 */
export function plausibilityWarnings(
  value: number,
  unit: PressureUnit,
  as: NonNullable<ReadPressureOptions['as']>,
): Warning[] {
  const pascals = toPascals(value, unit)
  if (usual(pascals) || (as === 'reading' && pascals < usualRatingRange.lowPascals)) return []
  const shown = written(value, unit)
  const found = slips(value, unit)
  if (found.length === 0)
    found.push({
      code: 'outside-usual-range',
      message: `${shown} is outside the usual 0.10 to 3.0 in. w.c. of air switches. Check the number and its unit.`,
    })
  if (as === 'rating' && !isWithin(confirmRatingRange, pascals))
    found.push({
      code: 'confirm-value',
      message: `Confirm that ${shown} is what was written. It is kept as written, Unverified.`,
    })
  return found
}
