import { monthName, monthNumber, readMonth } from '@/lib/core/callbacks/month'
import type { CaseFacts } from './caseFacts'
import { addTo, type CaseShare, newTally, shareOf, type Tally } from './caseShare'
import type { EndedCase } from './costFigures'
import { ofKey } from './ofKey'

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
  cases: readonly EndedCase[],
  { fromMonth, toMonth }: { fromMonth: string; toMonth: string },
): ReadingFigures {
  const all = newTallies()
  const byMonth = new Map<number, Tallies>()
  for (const { facts } of cases) {
    if (!isRepair(facts)) continue
    addReadings(all, facts)
    addReadings(ofKey(byMonth, monthNumber(facts.ended!.at), newTallies), facts)
  }
  const first = Math.max(readMonth(fromMonth), Math.min(...byMonth.keys()))
  const last = Math.min(readMonth(toMonth), Math.max(...byMonth.keys()))
  const months: ReadingsOfMonth[] = []
  for (let month = first; month <= last; month++)
    months.push({ month: monthName(month), ...sharesOf(byMonth.get(month) ?? newTallies()) })
  return { all: sharesOf(all), months }
}

type Tallies = Record<keyof ReadingShares, Tally>

const newTallies = (): Tallies => ({ both: newTally(), before: newTally(), after: newTally() })

function addReadings({ both, before, after }: Tallies, { id, readBefore, readAfter }: CaseFacts): void {
  addTo(both, id, readBefore && readAfter)
  addTo(before, id, readBefore)
  addTo(after, id, readAfter)
}

const sharesOf = ({ both, before, after }: Tallies): ReadingShares => ({
  both: shareOf(both),
  before: shareOf(before),
  after: shareOf(after),
})
