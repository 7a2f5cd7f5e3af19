import { toPascals } from '@/lib/core/pressure'
import type { Candidate } from './candidates'
import { slack, stepPascalsOf } from './resolution'
import type { RatingReport } from './types'

/** Tolerance of a switch whose rating states none: ± 0.05 in. w.c. (common practice, from memory). */
const assumedTolerancePascals = toPascals(0.05, 'inH2O')

/**
 * Whether a bench check of a sound switch came out as a candidate has it: within its tolerance and the gauge's
 * uncertainty. A maximum is known only above, a minimum only below. A gauge whose uncertainty was not recorded is
 * taken as good to half of the last decimal.
 *
 * @param report a bench check: the magnitude at which the contact worked
 * @example benchSupports(benchCheckAt('0.67'), candidateOf('0.65 ± 0.05')) // true
 */
export function benchSupports(report: RatingReport, candidate: Candidate): boolean {
  const gauge = (report.gaugeUncertaintyPascals ?? stepPascalsOf(report) / 2) + slack
  const { limit, pascals } = candidate
  const above = limit === 'nominal' ? (candidate.tolerancesAbove[0] ?? assumedTolerancePascals) : 0
  const below = limit === 'nominal' ? (candidate.tolerancesBelow[0] ?? assumedTolerancePascals) : 0
  const lowEnough = limit === 'minimum' || report.pascals <= pascals + above + gauge
  const highEnough = limit === 'maximum' || report.pascals >= pascals - below - gauge
  return lowEnough && highEnough
}
