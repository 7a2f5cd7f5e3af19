/**
 * Units of pressure and their factors. Everything in the core is in pascals; people's units live at the edges.
 *
 * Convention: 'inH2O' is the conventional inch of water, water of exactly 1000 kg/m³ under standard gravity
 * (9.80665 m/s²), so 25.4 × 9.80665 = 249.08891 Pa exactly. Source: NIST Special Publication 811 (2008), App. B.8.
 * Manometers are not all scaled alike: some use water at 4 °C or at 60 °F. The three are within 0.1 % of each other.
 */
export const pressureUnits = ['inH2O', 'mmH2O', 'Pa', 'hPa', 'kPa', 'mbar', 'inHg', 'psi'] as const

export type PressureUnit = (typeof pressureUnits)[number]

/** Inch of water at 4 °C (39.2 °F), pascals. NIST SP 811 (2008), App. B.8. */
export const inchOfWater4CelsiusPascals = 249.082

/** Inch of water at 60 °F, pascals. NIST SP 811 (2008), App. B.8. */
export const inchOfWater60FahrenheitPascals = 248.84

/**
 * Pascals in one of each unit. Exact by definition, save 'inHg': conventional mercury of 13 595.1 kg/m³, which
 * NIST SP 811 lists as 3386.389 Pa. psi is the avoirdupois pound-force (0.45359237 × 9.80665 N) on a square inch.
 */
export const pascalsPer: Readonly<Record<PressureUnit, number>> = {
  inH2O: 249.08891,
  mmH2O: 9.80665,
  Pa: 1,
  hPa: 100,
  kPa: 1000,
  mbar: 100,
  inHg: (13595.1 * 9.80665 * 25.4) / 1000,
  psi: (0.45359237 * 9.80665) / 0.0254 ** 2,
}

/** The code of each unit in the Unified Code for Units of Measure (UCUM), case sensitive, for export. */
export const ucumCode: Readonly<Record<PressureUnit, string>> = {
  inH2O: "[in_i'H2O]",
  mmH2O: 'mm[H2O]',
  Pa: 'Pa',
  hPa: 'hPa',
  kPa: 'kPa',
  mbar: 'mbar',
  inHg: "[in_i'Hg]",
  psi: '[psi]',
}

const finite = (name: string, number: number): number => {
  if (!Number.isFinite(number)) throw new RangeError(`${name} requires a finite pressure, not ${number}`)
  return number
}

const factorOf = (name: string, unit: PressureUnit): number => {
  const factor = Object.hasOwn(pascalsPer, unit) ? pascalsPer[unit] : undefined
  if (factor === undefined) throw new RangeError(`${name} requires a known unit, not ${String(unit)}`)
  return factor
}

/**
 * Pascals of a pressure given in a unit. The sign is kept.
 * @throws RangeError if the value is not finite, leaves the range of numbers, or the unit is not known
 * @example toPascals(0.52, 'inH2O') // 129.5262332
 */
export function toPascals(value: number, unit: PressureUnit): number {
  return finite('toPascals', finite('toPascals', value) * factorOf('toPascals', unit))
}

/**
 * The number in a unit of a pressure in pascals, unrounded: round only for display. The sign is kept.
 * @throws RangeError if the pressure is not finite, leaves the range of numbers, or the unit is not known
 * @example fromPascals(150, 'inH2O') // 0.60219…
 */
export function fromPascals(pascals: number, unit: PressureUnit): number {
  return finite('fromPascals', finite('fromPascals', pascals) / factorOf('fromPascals', unit))
}
