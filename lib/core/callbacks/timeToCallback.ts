import { type CallbackWindow, countsIn, daysBetween } from './callbackWindow'
import { type CallbackCase, casesByFurnace, isCompleted, isFix } from './cases'
import { asOf } from './jobOutcomes'
import type { Lifetimes } from './lifetimes'
import { firstAfter } from './repeatsOf'

/** What ends the watching of a furnace beside its cases: it was replaced, or left off for whatever else. */
export type WatchEnd = { furnaceId: string; at: number; endedBy: 'left off' | 'furnace replaced' }

/** Milliseconds since 1970, UTC: from this moment on, and before that one. */
type Started = { from: number; before: number }
const always: Started = { from: Number.NEGATIVE_INFINITY, before: Number.POSITIVE_INFINITY }

/** How long a furnace ran after its first fix, and what ended the watching. */
export type Episode = {
  furnaceId: string
  /** The fix. */
  caseId: string
  startedAt: number
  days: number
  endedBy: 'callback' | 'left off' | 'repair declined' | 'furnace replaced' | 'end of observation'
  /** The callback, or the case that left the furnace off or was declined. */
  laterId?: string
}

/**
 * The time from a furnace's first fix to its first callback. Only repaired and proven is a fix. The window's days set
 * no limit here; its circuit says what a callback is, its calendar what a day is.
 *
 * Watching ends without a callback when the furnace is left off, its repair declined (about whatever else), or it is
 * replaced, and now. One episode a furnace, because several of one furnace are not independent of each other.
 *
 * @param now milliseconds since 1970, UTC; what happened later is left out
 * @param watchEnds furnaces that are no longer there, or left off, beside what the cases say
 * @param started the time in which an episode has to begin: of each furnace the first fix in it counts
 * @returns in the order of the fixes
 * @throws RangeError when an id comes twice or a time is no number
 * @example fixed 2 January, called back 20 January: 18 days, 'callback'
 */
export function timeToCallback(
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
  watchEnds: readonly WatchEnd[] = [],
  started: Started = always,
): Episode[] {
  const ends = watchEndsByFurnace(watchEnds)
  return [...casesByFurnace(asOf(cases, now))]
    .flatMap(
      ([furnaceId, ofOneFurnace]) =>
        episodeOfFurnace(ofOneFurnace, window, now, ends.get(furnaceId), started) ?? [],
    )
    .toSorted((a, b) => a.startedAt - b.startedAt || (a.furnaceId < b.furnaceId ? -1 : 1))
}

export function watchEndsByFurnace(watchEnds: readonly WatchEnd[]): Map<string, WatchEnd[]> {
  const byFurnace = new Map<string, WatchEnd[]>()
  for (const end of watchEnds) {
    const ofOneFurnace = byFurnace.get(end.furnaceId)
    if (ofOneFurnace === undefined) byFurnace.set(end.furnaceId, [end])
    else ofOneFurnace.push(end)
  }
  return byFurnace
}

/**
 * The same for one furnace; undefined where it has no fix in that time.
 * @param ofOneFurnace as casesByFurnace gives them
 * @param watchEnds of this furnace
 */
export function episodeOfFurnace(
  ofOneFurnace: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
  watchEnds: readonly WatchEnd[] = [],
  started: Started = always,
): Episode | undefined {
  const known = asOf(ofOneFurnace, now)
  const counting = known.filter((one) => countsIn(one, window))
  const [fix] = counting
    .filter(isCompleted)
    .filter((one) => isFix(one) && one.ended.at >= started.from && one.ended.at < started.before)
    .toSorted((a, b) => a.ended.at - b.ended.at)
  if (fix === undefined) return undefined
  const { id: caseId, furnaceId } = fix
  const start = fix.ended.at
  const callback = firstAfter(fix, counting)
  const ends: { at: number; endedBy: Episode['endedBy']; laterId?: string }[] = [
    ...(callback ? [{ at: callback.openedAt, endedBy: 'callback' as const, laterId: callback.id }] : []),
    ...known.flatMap(({ id, ended }) =>
      ended && ended.at >= start && (ended.how === 'left off' || ended.how === 'repair declined')
        ? [{ at: ended.at, endedBy: ended.how, laterId: id }]
        : [],
    ),
    ...watchEnds
      .filter((one) => one.at >= start && one.at <= now)
      .map(({ at, endedBy }) => ({ at, endedBy })),
    { at: now, endedBy: 'end of observation' },
  ]
  const { at, ...how } = ends.reduce((first, other) => (other.at < first.at ? other : first))
  return { furnaceId, caseId, startedAt: start, days: daysBetween(start, at, window), ...how }
}

/** Episodes as kaplanMeier and logRank take them, in days. */
export const lifetimesOf = (episodes: readonly Episode[]): Lifetimes => ({
  times: episodes.map(({ days }) => days),
  events: episodes.map(({ endedBy }) => endedBy === 'callback'),
})
