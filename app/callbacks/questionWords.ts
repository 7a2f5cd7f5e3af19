import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CallbackQuestion } from '@/lib/records/view/callbacks/question'
import { rangeWords } from '../equipment/candidates'
import { sayMonth } from '../ui/words/sayMonth'

/** @example 'Jobs done from Dec 2024 to Nov 2026, all branches, all model ranges.' */
export function whatIsShown(
  { fromMonth, toMonth, branch, rangeId }: CallbackQuestion,
  file: TeamFile,
): string {
  const when =
    fromMonth === toMonth
      ? `in ${sayMonth(fromMonth)}`
      : `from ${sayMonth(fromMonth)} to ${sayMonth(toMonth)}`
  const range = rangeId === undefined ? undefined : file.ranges.get(file.keptId(rangeId))
  const ofRange =
    rangeId === undefined
      ? 'all model ranges'
      : range === undefined
        ? 'a model range that is not on this device'
        : `only ${rangeWords(file, range)}`
  return `Jobs done ${when}, ${branch === undefined ? 'all branches' : `only branch ${branch}`}, ${ofRange}.`
}

/** What counts as a callback, beside every figure. */
export function definitionWords({
  days,
  sameCircuit,
}: Pick<CallbackQuestion, 'days' | 'sameCircuit'>): string {
  const within = days === 1 ? 'one day' : `${days} days`
  return sameCircuit
    ? `A job is a case about the proving circuit that ended repaired, proven or not, or with no fault found. It came back if another case about the proving circuit was opened on the same furnace within ${within}.`
    : `A job is a case that ended repaired, proven or not, or with no fault found. It came back if any other case was opened on the same furnace within ${within}.`
}
