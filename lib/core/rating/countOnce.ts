import { type Candidate, numberOf, supports } from './candidates'
import { isCoarser } from './resolution'
import type { RatingReport } from './types'

/** A report as it is weighed: its reliability, and the candidates that it supports, by place in the list. */
export type Counted = { report: RatingReport; reliability: number; supported: readonly number[] }

/** The finer number speaks first, then the more reliable. */
const byWord = (one: Counted, other: Counted): number => {
  const [first, second] = [numberOf(one.report), numberOf(other.report)]
  if (isCoarser(first, second)) return 1
  if (isCoarser(second, first)) return -1
  return other.reliability - one.reliability || (one.report.id < other.report.id ? -1 : 1)
}

const covers = (outer: readonly number[], inner: readonly number[]): boolean =>
  inner.every((at) => outer.includes(at))

/**
 * Counts the reports of one origin once, at the highest reliability of those that say the same. Where one origin is
 * reported with different values (two people read one photo differently), each value counts once: choosing silently
 * between them would hide that one of the two is a misreading.
 *
 * @param groups what is to be weighed, one group an origin
 * @returns one entry for each origin and value
 * @example countOnce([[photoReadByAnn, photoReadByBen]], candidates, reliabilityOf) // one entry
 */
export function countOnce(
  groups: readonly (readonly RatingReport[])[],
  candidates: readonly Candidate[],
  reliabilityOf: (report: RatingReport) => number,
): Counted[] {
  return groups.flatMap((members) => {
    const entries = members
      .map((report) => ({
        report,
        reliability: reliabilityOf(report),
        supported: candidates.flatMap((candidate, at) => (supports(report, candidate) ? [at] : [])),
      }))
      .sort(byWord)
    const spoken: Counted[] = []
    for (const entry of entries) {
      const same = spoken.findIndex(
        ({ supported }) => covers(supported, entry.supported) && covers(entry.supported, supported),
      )
      const held = spoken[same]
      if (held !== undefined)
        spoken[same] = { ...held, reliability: Math.max(held.reliability, entry.reliability) }
      else if (!spoken.some(({ supported }) => covers(entry.supported, supported))) spoken.push(entry)
    }
    return spoken
  })
}
