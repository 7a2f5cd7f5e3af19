import { type PressureUnit, pressureNumeral } from '@/lib/core/pressure'
import type { LimitKind } from '@/lib/core/vocabulary'

/** The unit shown small beside the reader's own: pascals, or inches of water column for readers of another unit. */
export const otherUnit = (unit: PressureUnit): PressureUnit => (unit === 'inH2O' ? 'Pa' : 'inH2O')

type Tolerance = { toleranceAbove?: number; toleranceBelow?: number; limit: LimitKind }

const sides: Record<LimitKind, string> = { nominal: '', maximum: 'maximum', minimum: 'minimum' }

/**
 * What may be above and below a number, in figures of the unit: `± 0.05`, `+ 0.00 − 0.05`, `maximum`, `minimum`.
 * Empty when a nominal value has no stated tolerance. Tolerances are in pascals.
 */
export function toleranceWords(tolerance: Tolerance, unit: PressureUnit, decimals?: number): string {
  const { toleranceAbove: above, toleranceBelow: below, limit } = tolerance
  if (above === undefined && below === undefined) return sides[limit]
  const figures = (pascals = 0) => pressureNumeral(pascals, unit, decimals)
  const both =
    figures(above) === figures(below) ? `± ${figures(above)}` : `+ ${figures(above)} − ${figures(below)}`
  return sides[limit] ? `${sides[limit]}, ${both}` : both
}
