import { ucumCode } from '@/lib/core/pressure'

/** Fields whose names do not carry their unit, by the UCUM code of the unit. */
const named: Readonly<Record<string, readonly string[]>> = {
  [ucumCode.Pa]: ['pascals', 'toleranceAbove', 'toleranceBelow', 'samples', 'lowest', 'highest', 'pulls'],
  V: ['volts'],
  By: ['bytes'],
  // A unit of UCUM in curly brackets is the unit one, with a word.
  '{minor unit of the currency}': ['amountMinorUnits'],
  '{pixel}': ['width', 'height'],
  '%': ['percentOfReading', 'percentOfSpan'],
  // Counts, which have the unit one.
  '1': ['counts', 'decimals', 'thermostatCycles', 'rows', 'row', 'taken'],
}

/** How a name carries its unit. */
const carried: readonly (readonly [RegExp, string])[] = [
  [/Pascals$/, ucumCode.Pa],
  [/^metres|Metres$/, 'm'],
  [/^minutes|Minutes$/, 'min'],
  [/^seconds|Seconds$/, 's'],
  [/^percent|Percent$/, '%'],
  [/Ppm$/, '[ppm]'],
]

/**
 * The unit of a number in a record, as its UCUM code (the Unified Code for Units of Measure); undefined for a field
 * that is not known. Depths of a body do not matter: `reading.against.pascals` is a `pascals`.
 *
 * @example unitOfField('toleranceAbove')   // 'Pa'
 */
export const unitOfField = (field: string): string | undefined =>
  Object.entries(named).find(([, fields]) => fields.includes(field))?.[0] ??
  carried.find(([pattern]) => pattern.test(field))?.[1]
