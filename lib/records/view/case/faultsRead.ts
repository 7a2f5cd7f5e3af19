import { type Comparison, closesWhen, judgementWords } from '@/lib/core/reading'
import type { EndingFacts } from './endingNeeds'
import { inServiceSituations } from './expectedAt'

/**
 * Switches whose newest reading in service shows a fault by a rating that can be relied on, as sentences. Such a case
 * can't end with nothing found: the reading found something.
 */
export function faultsRead({ judged, toProve }: Pick<EndingFacts, 'judged' | 'toProve'>): string[] {
  return toProve.flatMap((position) => {
    const newest = judged.findLast(
      ({ entry, positionId }) =>
        positionId === position.id &&
        inServiceSituations.includes(entry.body.situation) &&
        entry.body.phase !== 'rest',
    )
    const fault = newest?.comparison.ok === true ? faultOf(newest.comparison.value) : undefined
    return fault === undefined
      ? []
      : [
          `${position.body.name}: the newest reading is ${fault}. That is a fault: read again, or end the visit another way.`,
        ]
  })
}

/** What of a comparison is a fault, in the words of the verdict; undefined where nothing is, or the rating is weak. */
function faultOf(comparison: Comparison): string | undefined {
  const { higherThanExpected, kind, run, standing, start } = comparison
  if (higherThanExpected === true) return 'higher than expected'
  if (standing !== 'Verified' && standing !== 'Supported') return undefined
  const bad = closesWhen(kind) === 'too low' ? 'enough' : 'too low'
  const fault = [start, run].find((judgement) => judgement?.verdict === bad)
  return fault === undefined ? undefined : judgementWords(fault, kind).toLowerCase()
}
