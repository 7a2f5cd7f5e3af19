import { type CallbackWindow, countsIn, daysBetween } from './callbackWindow'
import { type CallbackCase, type CompletedJob, casesByFurnace, isCompleted, isFix } from './cases'
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
  const fix = firstFix(counting, started)
  if (fix === undefined) return undefined
  const { id: caseId, furnaceId } = fix
  const startedAt = fix.ended.at
  const { at, ...how } = watchingEnds(fix, { known, counting, watchEnds, now })
  return { furnaceId, caseId, startedAt, days: daysBetween(startedAt, at, window), ...how }
}

/** The earliest fix in that time; of one moment that of the case opened first. */
function firstFix(cases: readonly CallbackCase[], { from, before }: Started): CompletedJob | undefined {
  let first: CompletedJob | undefined
  for (const one of cases) {
    if (!isCompleted(one) || !isFix(one) || one.ended.at < from || one.ended.at >= before) continue
    if (first === undefined || one.ended.at < first.ended.at) first = one
  }
  return first
}

type Furnace = {
  known: readonly CallbackCase[]
  /** Those of them that the window is about. */
  counting: readonly CallbackCase[]
  watchEnds: readonly WatchEnd[]
  now: number
}

/** What ends the watching of a fix first; of one moment a callback before whatever else. */
function watchingEnds(
  fix: CompletedJob,
  { known, counting, watchEnds, now }: Furnace,
): { at: number } & Pick<Episode, 'endedBy' | 'laterId'> {
  const callback = firstAfter(fix, counting)
  let first: ReturnType<typeof watchingEnds> =
    callback === undefined
      ? { at: Number.POSITIVE_INFINITY, endedBy: 'end of observation' }
      : { at: callback.openedAt, endedBy: 'callback', laterId: callback.id }
  const comesFirst = (at: number): boolean => at >= fix.ended.at && at <= now && at < first.at
  for (const { id, ended } of known)
    if (ended?.how === 'left off' || ended?.how === 'repair declined')
      if (comesFirst(ended.at)) first = { at: ended.at, endedBy: ended.how, laterId: id }
  for (const { at, endedBy } of watchEnds) if (comesFirst(at)) first = { at, endedBy }
  return { ...first, at: Math.min(first.at, now) }
}

/** Episodes as kaplanMeier and logRank take them, in days. */
export const lifetimesOf = (episodes: readonly Pick<Episode, 'days' | 'endedBy'>[]): Lifetimes => ({
  times: episodes.map(({ days }) => days),
  events: episodes.map(({ endedBy }) => endedBy === 'callback'),
})
