/** What a complaint is about. Two complaints about 'something else' are not known to be about the same. */
export const circuits = ['proving circuit', 'something else'] as const
export type Circuit = (typeof circuits)[number]

/** The six ways in which a visit ends; that of its last visit is the case's. Only the first is a fix in any figure. */
export const endings = [
  'repaired and proven',
  'repaired, not proven',
  'waiting for part',
  'no fault found',
  'repair declined',
  'left off',
] as const
export type Ending = (typeof endings)[number]

/** The history of one complaint on one furnace, as far as callbacks need it. Times: milliseconds since 1970, UTC. */
export type CallbackCase = {
  id: string
  furnaceId: string
  circuit: Circuit
  openedAt: number
  /** Left out while nobody ended it. */
  ended?: { at: number; how: Ending }
  /** The main cause that was named; left out where nobody knows. */
  cause?: string
}

/** A case whose job is done: somebody left a furnace that was supposed to run. */
export type CompletedJob = CallbackCase & { ended: { at: number; how: Ending } }

/** Endings after which another visit is a callback. The furnace was not supposed to run after the others. */
const completing: ReadonlySet<Ending> = new Set([
  'repaired and proven',
  'repaired, not proven',
  'no fault found',
])

export const isCompleted = (one: CallbackCase): one is CompletedJob =>
  one.ended !== undefined && completing.has(one.ended.how)

/** Only what was proven by after-readings counts as a fix. */
export const isFix = (one: CallbackCase): boolean => one.ended?.how === 'repaired and proven'

/** Oldest first; of two of one moment the one with the lesser id. */
export const byOpening = (a: CallbackCase, b: CallbackCase): number =>
  a.openedAt - b.openedAt || (a.id < b.id ? -1 : 1)

/** Cases by furnace, each furnace's oldest first. @throws RangeError when an id comes twice or a time is no number */
export function casesByFurnace<Case extends CallbackCase>(cases: readonly Case[]): Map<string, Case[]> {
  const ids = new Set<string>()
  const byFurnace = new Map<string, Case[]>()
  for (const one of cases.toSorted(byOpening)) {
    if (!Number.isFinite(one.openedAt) || !Number.isFinite(one.ended?.at ?? 0))
      throw new RangeError('Every time of a case must be a number of milliseconds')
    ids.add(one.id)
    const ofOneFurnace = byFurnace.get(one.furnaceId)
    if (ofOneFurnace === undefined) byFurnace.set(one.furnaceId, [one])
    else ofOneFurnace.push(one)
  }
  if (ids.size < cases.length) throw new RangeError('Every case must come once, with an id of its own')
  return byFurnace
}
