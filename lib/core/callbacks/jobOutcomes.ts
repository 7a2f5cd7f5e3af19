import { type CallbackWindow, countsIn, windowEnd } from './callbackWindow'
import { type CallbackCase, casesByFurnace, isCompleted, isFix } from './cases'
import { callbackOf, type Repeat, repeat } from './repeatsOf'

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
export const jobOutcomes = (
  cases: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
): JobOutcome[] =>
  [...casesByFurnace(asOf(cases, now)).values()]
    .flatMap((ofOneFurnace) => outcomesOfFurnace(ofOneFurnace, window, now))
    .toSorted((a, b) => a.endedAt - b.endedAt || (a.caseId < b.caseId ? -1 : 1))

/**
 * The same for one furnace, in the order in which its cases were opened.
 * @param ofOneFurnace as casesByFurnace gives them
 */
export function outcomesOfFurnace(
  ofOneFurnace: readonly CallbackCase[],
  window: CallbackWindow,
  now: number,
): JobOutcome[] {
  const counting = asOf(ofOneFurnace, now).filter((one) => countsIn(one, window))
  return counting.filter(isCompleted).map((job): JobOutcome => {
    const next = callbackOf(job, counting, window)
    const windowEndsAt = windowEnd(job.ended.at, window)
    const settled = windowEndsAt <= now
    return {
      caseId: job.id,
      furnaceId: job.furnaceId,
      endedAt: job.ended.at,
      isFix: isFix(job),
      settled,
      windowEndsAt,
      became: next !== undefined ? 'came back' : settled ? 'quiet' : 'not known yet',
      ...(next === undefined ? {} : { repeat: repeat(job, next, window) }),
    }
  })
}

/** The cases as they stood at a moment: none opened later, none ended later, and no cause of one not ended then. */
export function asOf(cases: readonly CallbackCase[], now: number): readonly CallbackCase[] {
  if (!Number.isFinite(now)) throw new RangeError('The present must be a number of milliseconds')
  if (cases.every(({ openedAt, ended }) => openedAt <= now && (ended?.at ?? now) <= now)) return cases
  return cases
    .filter(({ openedAt }) => openedAt <= now)
    .map((one) => {
      if (one.ended === undefined || one.ended.at <= now) return one
      const { id, furnaceId, circuit, openedAt } = one
      return { id, furnaceId, circuit, openedAt }
    })
}
