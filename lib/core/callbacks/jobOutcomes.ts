import { type CallbackWindow, countsIn, windowEnd } from './callbackWindow'
import { type CallbackCase, isCompleted, isFix } from './cases'
import { type Repeat, repeatsOf } from './repeatsOf'

/** A completed job, and what became of it as far as is known now. */
export type JobOutcome = {
  caseId: string
  furnaceId: string
  endedAt: number
  isFix: boolean
  /** Its window has run out, so what became of it no longer changes. Only settled jobs make a rate. */
  settled: boolean
  windowEndsAt: number
  /** 'came back' can be known before the window has run out, 'quiet' only afterwards. */
  became: 'came back' | 'quiet' | 'not known yet'
  repeat?: Repeat
}

/**
 * What became of every completed job. A rate over jobs whose window is still running would count the callbacks that
 * came early and miss those that come late, so such jobs are marked, whether they came back or not.
 *
 * @param now milliseconds since 1970, UTC; what happened later is left out
 * @returns in the order in which the jobs ended
 * @throws RangeError as repeatsOf does
 */
export function jobOutcomes(
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
): JobOutcome[] {
  const known = asOf(cases, now)
  const repeats = new Map(repeatsOf(known, window).map((repeat) => [repeat.earlierId, repeat]))
  return known
    .filter((one) => countsIn(one, window))
    .filter(isCompleted)
    .map((job): JobOutcome => {
      const repeat = repeats.get(job.id)
      const windowEndsAt = windowEnd(job.ended.at, window)
      const settled = windowEndsAt <= now
      const became = repeat !== undefined ? 'came back' : settled ? 'quiet' : 'not known yet'
      return {
        caseId: job.id,
        furnaceId: job.furnaceId,
        endedAt: job.ended.at,
        isFix: isFix(job),
        settled,
        windowEndsAt,
        became,
        ...(repeat && { repeat }),
      }
    })
    .toSorted((a, b) => a.endedAt - b.endedAt || (a.caseId < b.caseId ? -1 : 1))
}

/** The cases as they stood at a moment: none opened later, none ended later, and no cause of one not ended then. */
export function asOf(cases: readonly CallbackCase[], now: number): CallbackCase[] {
  if (!Number.isFinite(now)) throw new RangeError('The present must be a number of milliseconds')
  return cases
    .filter(({ openedAt }) => openedAt <= now)
    .map((one) => {
      if (one.ended === undefined || one.ended.at <= now) return one
      const { id, furnaceId, circuit, openedAt } = one
      return { id, furnaceId, circuit, openedAt }
    })
}
