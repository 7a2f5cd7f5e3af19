import { type PressureUnit, toPascals } from '@/lib/core/pressure'

/** Slack of every comparison: a number that went through another unit is still the same number. */
export const slack = 1e-9

/** Whether two magnitudes in pascals are the same number. */
export const sameMagnitude = (first: number, second: number): boolean =>
  Math.abs(first - second) <= slack * Math.max(1, Math.abs(first), Math.abs(second))

/** A number as stated: its magnitude and the step of its last decimal, both in pascals. */
export type StatedNumber = { pascals: number; stepPascals: number }

/**
 * The step of the last decimal that a source states, in pascals.
 * @param decimals whole, 0 to 20
 * @throws RangeError if the decimals are out of range
 * @example stepPascalsOf({ decimals: 2, unit: 'inH2O' }) // 2.4908891
 */
export function stepPascalsOf({ decimals, unit }: { decimals: number; unit: PressureUnit }): number {
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 20)
    throw new RangeError(`A rating requires 0 to 20 whole decimals, not ${decimals}`)
  return toPascals(10 ** -decimals, unit)
}

/** Whether a number is stated more coarsely than another. */
export const isCoarser = (number: StatedNumber, than: StatedNumber): boolean =>
  number.stepPascals > than.stepPascals * (1 + slack)

/**
 * Whether a value rounds to a stated number: half a step below is in, half a step above is out, as school rounding
 * has it (halves go up), so that 0.65 rounds to 0.7 and not to 0.6.
 * @example roundsTo(161.9, { pascals: 174.4, stepPascals: 24.9 }) // 0.65 in. w.c. to 0.7: true
 */
export function roundsTo(pascals: number, { pascals: stated, stepPascals }: StatedNumber): boolean {
  const half = stepPascals / 2
  const margin = slack * Math.max(1, stated)
  return pascals >= stated - half - margin && pascals < stated + half - margin
}
