import type { PressureText } from '../pressure'

/** Warnings that say that a number is of an odd size, each naming a slip: a lost decimal point above all. */
const isOddSize = (code: string): boolean =>
  ['ten-times', 'a-tenth', 'manifold-pressure', 'outside-usual-range', 'confirm-value'].includes(code) ||
  code.includes('-as-')

/** Units in which ratings of air switches are less than ten, so that labels print them with a decimal point. */
const withPoint: readonly string[] = ['inH2O', 'mbar', 'hPa', 'kPa', 'psi', 'inHg']

/**
 * What speaks against a rating that was recognised in a picture. A decimal point is the smallest thing on a label and
 * the first to be lost; without it the number is ten times or a hundred times too great.
 * @returns sentences; none where nothing does
 */
export function doubtsAbout({ value, unit, decimals, warnings }: PressureText): string[] {
  const odd = warnings.filter(({ code }) => isOddSize(code)).map(({ message }) => message)
  if (decimals > 0 || !withPoint.includes(unit)) return odd
  return [
    `A decimal point may be lost: ${value} was read without one, and labels print such numbers with one.`,
    ...odd,
  ]
}
