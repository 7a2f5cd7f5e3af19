import { wilsonInterval } from '@/lib/core/wilsonInterval'

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

/** @param isCounted which of the cases make the count */
export function caseShare<Case extends { id: string }>(
  cases: readonly Case[],
  isCounted: (one: Case) => boolean,
): CaseShare {
  const countedIds: string[] = []
  const otherIds: string[] = []
  for (const one of cases) (isCounted(one) ? countedIds : otherIds).push(one.id)
  const [count, of] = [countedIds.length, cases.length]
  return {
    count,
    of,
    ...(of === 0 ? {} : { interval95: wilsonInterval(count, of, 0.95) }),
    countedIds,
    otherIds,
  }
}
