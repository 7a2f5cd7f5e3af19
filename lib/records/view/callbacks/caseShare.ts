import { wilsonInterval } from '@/lib/core/wilsonInterval'
import { ofKey } from './ofKey'

/** So many of so many cases, and which ones they are: every figure opens the cases behind it. */
export type CaseShare = {
  count: number
  of: number
  /** Wilson's, 95 %; left out where there is no case at all. */
  interval95?: readonly [number, number]
  countedIds: readonly string[]
  otherIds: readonly string[]
}

/** Under so many cases a share is not said in per cent: it would look like more than it is. */
export const fewestForShare = 10

/** A share while its cases are gathered. */
export type Tally = { countedIds: string[]; otherIds: string[] }

export const newTally = (): Tally => ({ countedIds: [], otherIds: [] })

export function addTo({ countedIds, otherIds }: Tally, id: string, isCounted: boolean): void {
  if (isCounted) countedIds.push(id)
  else otherIds.push(id)
}

export function shareOf({ countedIds, otherIds }: Tally): CaseShare {
  const [count, of] = [countedIds.length, countedIds.length + otherIds.length]
  return {
    count,
    of,
    ...(of === 0 ? {} : { interval95: wilsonInterval(count, of, 0.95) }),
    countedIds,
    otherIds,
  }
}

/** @param isCounted which of the cases make the count */
export function caseShare<Case extends { id: string }>(
  cases: readonly Case[],
  isCounted: (one: Case) => boolean,
): CaseShare {
  const tally = newTally()
  for (const one of cases) addTo(tally, one.id, isCounted(one))
  return shareOf(tally)
}

/** The same for each group of the cases. */
export function caseSharesBy<Case extends { id: string }>(
  cases: readonly Case[],
  keyOf: (one: Case) => string,
  isCounted: (one: Case) => boolean,
): { key: string; share: CaseShare }[] {
  const tallies = new Map<string, Tally>()
  for (const one of cases) addTo(ofKey(tallies, keyOf(one), newTally), one.id, isCounted(one))
  return [...tallies].map(([key, tally]) => ({ key, share: shareOf(tally) }))
}
