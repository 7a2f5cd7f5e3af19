import { gaugeHalfWidth } from './instrumentUncertainty'
import type { Instrument, UncertaintyBudget } from './types'

/**
 * The uncertainty budget of one reading against one limit, standard uncertainties in pascals (JCGM 100:2008).
 * A half-width is divided by √3 and a step of the display by √12 (rectangular distributions, 4.3.7). Counts in the
 * accuracy form cover the step already. Where only the resolution is known, its half digit is that same step and
 * enters once, as resolution. Where t/√3 dominates, the normal form of the probability is an approximation.
 * @param scatterPascals repeatability as a standard deviation
 * @param toleranceHalfWidth t of the limit
 */
export function uncertaintyBudget(
  instrument: Instrument,
  readingPascals: number,
  scatterPascals: number,
  toleranceHalfWidth: number,
): UncertaintyBudget {
  const gauge = gaugeHalfWidth(instrument, readingPascals)
  return {
    instrument: gauge.assumed ? 0 : gauge.pascals / Math.sqrt(3),
    resolution: instrument.counts === undefined ? instrument.resolutionPascals / Math.sqrt(12) : 0,
    repeatability: scatterPascals,
    tolerance: toleranceHalfWidth / Math.sqrt(3),
  }
}

/** u, the combined standard uncertainty of independent parts: the root of the sum of their squares. */
export function combined(budget: UncertaintyBudget): number {
  return Math.hypot(budget.instrument, budget.resolution, budget.repeatability, budget.tolerance)
}
