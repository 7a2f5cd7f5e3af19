import type { PressureUnit } from '@/lib/core/pressure'
import type { LimitKind } from '@/lib/core/vocabulary'
import { benchSupports } from './benchCheck'
import { canBeOne, isCoarser, type StatedNumber, sameMagnitude, stepPascalsOf } from './resolution'
import type { RatingReport } from './types'

/** A value that the rating may have: a number and which side of it is promised. */
export type Candidate = StatedNumber & {
  limit: LimitKind
  unit: PressureUnit
  /** The widest tolerance that a report of it states, pascals; undefined when none states one. */
  toleranceAbove?: number
  toleranceBelow?: number
  /** Where the tolerances of its reports end: what a maximum or a minimum says of the same switch. */
  upperEdges: readonly StatedNumber[]
  lowerEdges: readonly StatedNumber[]
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
      (isCoarser(number, candidate) && canBeOne(number, candidate)))
  )
}

/** "Maximum c" and "nominal n ± t" are one statement when n + t = c; "minimum m" likewise when n − t = m. */
const statesAnEdge = (report: RatingReport, candidate: Candidate): boolean => {
  if (candidate.limit !== 'nominal') return false
  const edges =
    report.limit === 'maximum' ? candidate.upperEdges : report.limit === 'minimum' ? candidate.lowerEdges : []
  return edges.some((edge) => canBeOne(edge, numberOf(report)))
}

/**
 * Whether a report can be of a candidate: it names it, rounds it, states an edge of its tolerance, or is a bench
 * check that came out within tolerance and gauge uncertainty.
 */
export function supports(report: RatingReport, candidate: Candidate): boolean {
  if (report.source === 'bench check') return benchSupports(report, candidate)
  return names(report, candidate) || statesAnEdge(report, candidate)
}

const widest = (one: number | undefined, other: number | undefined): number | undefined =>
  one === undefined ? other : other === undefined ? one : Math.max(one, other)

const withReport = (candidate: Candidate, report: RatingReport): Candidate => {
  const { pascals, stepPascals } = numberOf(report)
  const { toleranceAbove, toleranceBelow } = report
  const edge = (tolerance: number | undefined, sign: 1 | -1) =>
    tolerance === undefined ? [] : [{ pascals: Math.max(0, pascals + sign * tolerance), stepPascals }]
  return {
    ...candidate,
    toleranceAbove: widest(candidate.toleranceAbove, toleranceAbove),
    toleranceBelow: widest(candidate.toleranceBelow, toleranceBelow),
    upperEdges: [...candidate.upperEdges, ...edge(toleranceAbove, 1)],
    lowerEdges: [...candidate.lowerEdges, ...edge(toleranceBelow, -1)],
  }
}

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
      const bare = { ...numberOf(report), limit, unit, upperEdges: [], lowerEdges: [] }
      candidates.push(withReport(bare, report))
    }
  }
  return candidates
}
