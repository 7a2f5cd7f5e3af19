import { monthName, monthNumber, readMonth } from '@/lib/core/callbacks/month'
import type { CaseFacts } from './caseFacts'
import { type CaseShare, caseShare } from './caseShare'

/** The repairs of one month, and which of them have readings on record. */
export type ReadingsOfMonth = { month: string } & ReadingShares

/** Of repairs: those with a reading as found and one after the repair, and those with one of the two. */
export type ReadingShares = { both: CaseShare; before: CaseShare; after: CaseShare }

/** The team's own share of repairs with readings before and after. Nobody has to wait for a callback to better it. */
export type ReadingFigures = { all: ReadingShares; months: readonly ReadingsOfMonth[] }

const isRepair = ({ ended }: CaseFacts): boolean =>
  ended?.how === 'repaired and proven' || ended?.how === 'repaired, not proven'

/**
 * @param cases that ended in the period; only repairs count, because where nothing was repaired there is no after
 * @returns the months of the period from the first one with a repair to the last
 */
export function readingFigures(
  cases: readonly CaseFacts[],
  { fromMonth, toMonth }: { fromMonth: string; toMonth: string },
): ReadingFigures {
  const repairs = cases.filter(isRepair)
  const byMonth = new Map<number, CaseFacts[]>()
  for (const one of repairs) {
    const month = monthNumber(one.ended!.at)
    const ofMonth = byMonth.get(month)
    if (ofMonth === undefined) byMonth.set(month, [one])
    else ofMonth.push(one)
  }
  const first = Math.max(readMonth(fromMonth), Math.min(...byMonth.keys()))
  const last = Math.min(readMonth(toMonth), Math.max(...byMonth.keys()))
  const months: ReadingsOfMonth[] = []
  for (let month = first; month <= last; month++)
    months.push({ month: monthName(month), ...shares(byMonth.get(month) ?? []) })
  return { all: shares(repairs), months }
}

const shares = (repairs: readonly CaseFacts[]): ReadingShares => ({
  both: caseShare(repairs, ({ readBefore, readAfter }) => readBefore && readAfter),
  before: caseShare(repairs, ({ readBefore }) => readBefore),
  after: caseShare(repairs, ({ readAfter }) => readAfter),
})
