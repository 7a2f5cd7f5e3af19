import type { PressureUnit } from '@/lib/core/pressure'
import type { LimitKind } from '@/lib/core/vocabulary'
import { benchSupports } from './benchCheck'
import { isCoarser, roundsTo, type StatedNumber, sameMagnitude, stepPascalsOf } from './resolution'
import type { RatingReport } from './types'

/** A value that the rating may have: a number and which side of it is promised. */
export type Candidate = StatedNumber & {
  limit: LimitKind
  unit: PressureUnit
  /** The tolerances that reports of it state, pascals, each once, widest first. Empty when none states one. */
  tolerancesAbove: readonly number[]
  tolerancesBelow: readonly number[]
}

export const numberOf = (report: RatingReport): StatedNumber => ({
  pascals: report.pascals,
  stepPascals: stepPascalsOf(report),
})

/** Whether the report's own number is the candidate's, or rounds it more coarsely. */
const names = (report: RatingReport, candidate: Candidate): boolean => {
  const number = numberOf(report)
  return (
    report.limit === candidate.limit &&
    (sameMagnitude(number.pascals, candidate.pascals) ||
      (isCoarser(number, candidate) && roundsTo(candidate.pascals, number)))
  )
}

/**
 * "Maximum c" and "nominal n ± t" are one statement when n + t, rounded as c is stated, is c; "minimum m" likewise
 * when n − t is m.
 */
const statesAnEdge = (report: RatingReport, { limit, pascals, ...candidate }: Candidate): boolean => {
  if (limit !== 'nominal') return false
  const number = numberOf(report)
  if (report.limit === 'maximum')
    return candidate.tolerancesAbove.some((tolerance) => roundsTo(pascals + tolerance, number))
  return (
    report.limit === 'minimum' &&
    candidate.tolerancesBelow.some((tolerance) => roundsTo(pascals - tolerance, number))
  )
}

/**
 * Whether a report can be of a candidate: it names it, rounds it, states an edge of its tolerance, or is a bench
 * check that came out within tolerance and gauge uncertainty.
 */
export function supports(report: RatingReport, candidate: Candidate): boolean {
  if (report.source === 'bench check') return benchSupports(report, candidate)
  return names(report, candidate) || statesAnEdge(report, candidate)
}

const withTolerance = (tolerances: readonly number[], tolerance: number | undefined): readonly number[] =>
  tolerance === undefined || tolerances.some((other) => sameMagnitude(other, tolerance))
    ? tolerances
    : [...tolerances, tolerance].sort((one, other) => other - one)

const withReport = (candidate: Candidate, report: RatingReport): Candidate => ({
  ...candidate,
  tolerancesAbove: withTolerance(candidate.tolerancesAbove, report.toleranceAbove),
  tolerancesBelow: withTolerance(candidate.tolerancesBelow, report.toleranceBelow),
})

/** Nominal values first, so that a one-sided limit can find the tolerance it is the edge of; then the finest. */
const byFineness = (one: RatingReport, other: RatingReport): number =>
  Number(one.limit !== 'nominal') - Number(other.limit !== 'nominal') ||
  stepPascalsOf(one) - stepPascalsOf(other) ||
  one.pascals - other.pascals ||
  (one.id < other.id ? -1 : 1)

/**
 * The values that reports propose, at the finest resolution that any of them states: a coarser report proposes its
 * own number only where no finer one rounds to it. The same number with another limit kind is another candidate,
 * unless it is the edge of a stated tolerance. A bench check proposes none. The order of the reports does not
 * matter.
 *
 * @returns candidates, nominal ones first, by fineness and magnitude
 * @example candidatesOf([reportOf('0.65'), reportOf('0.7')]) // one: 0.65
 */
export function candidatesOf(reports: readonly RatingReport[]): Candidate[] {
  const candidates: Candidate[] = []
  for (const report of reports.filter(({ source }) => source !== 'bench check').sort(byFineness)) {
    const { limit, unit } = report
    const held = candidates.findIndex((candidate) => names(report, candidate))
    if (held >= 0) {
      candidates.forEach((candidate, at) => {
        if (names(report, candidate)) candidates[at] = withReport(candidate, report)
      })
    } else if (!candidates.some((candidate) => statesAnEdge(report, candidate))) {
      const bare = { ...numberOf(report), limit, unit, tolerancesAbove: [], tolerancesBelow: [] }
      candidates.push(withReport(bare, report))
    }
  }
  return candidates
}
