import { type CallbackWindow, countsIn, daysBetween } from './callbackWindow'
import { type CallbackCase, casesByFurnace, isCompleted, isFix } from './cases'
import { asOf } from './jobOutcomes'
import type { Lifetimes } from './lifetimes'
import { firstAfter } from './repeatsOf'

/** A furnace that was replaced, and when. */
export type ReplacedFurnace = { furnaceId: string; at: number }

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
 * @param replacedFurnaces furnaces that are no longer there
 * @returns in the order of the fixes
 * @throws RangeError when an id comes twice or a time is no number
 * @example fixed 2 January, called back 20 January: 18 days, 'callback'
 */
export function timeToCallback(
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
  replacedFurnaces: readonly ReplacedFurnace[] = [],
): Episode[] {
  const episodes: Episode[] = []
  for (const [furnaceId, ofOneFurnace] of casesByFurnace(asOf(cases, now))) {
    const [fix] = ofOneFurnace
      .filter((one) => countsIn(one, window))
      .filter(isCompleted)
      .filter(isFix)
      .toSorted((a, b) => a.ended.at - b.ended.at)
    if (fix === undefined) continue
    const start = fix.ended.at
    const callback = firstAfter(
      fix,
      ofOneFurnace.filter((one) => countsIn(one, window)),
    )
    const ends: { at: number; endedBy: Episode['endedBy']; laterId?: string }[] = [
      ...(callback ? [{ at: callback.openedAt, endedBy: 'callback' as const, laterId: callback.id }] : []),
      ...ofOneFurnace.flatMap(({ id, ended }) =>
        ended && ended.at >= start && (ended.how === 'left off' || ended.how === 'repair declined')
          ? [{ at: ended.at, endedBy: ended.how, laterId: id }]
          : [],
      ),
      ...replacedFurnaces
        .filter((one) => one.furnaceId === furnaceId && one.at >= start && one.at <= now)
        .map(({ at }) => ({ at, endedBy: 'furnace replaced' as const })),
      { at: now, endedBy: 'end of observation' },
    ]
    const end = ends.reduce((first, other) => (other.at < first.at ? other : first))
    const { at, ...how } = end
    episodes.push({
      furnaceId,
      caseId: fix.id,
      startedAt: start,
      days: daysBetween(start, at, window),
      ...how,
    })
  }
  return episodes.toSorted((a, b) => a.startedAt - b.startedAt || (a.furnaceId < b.furnaceId ? -1 : 1))
}

/** Episodes as kaplanMeier and logRank take them, in days. */
export const lifetimesOf = (episodes: readonly Episode[]): Lifetimes => ({
  times: episodes.map(({ days }) => days),
  events: episodes.map(({ endedBy }) => endedBy === 'callback'),
})
