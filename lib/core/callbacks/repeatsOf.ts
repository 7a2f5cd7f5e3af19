import { type CallbackWindow, countsIn, daysBetween, windowEnd } from './callbackWindow'
import {
  byOpening,
  type CallbackCase,
  type CompletedJob,
  casesByFurnace,
  type Ending,
  isCompleted,
} from './cases'

/** A job that was called back, and the case that it was called back for. */
export type Repeat = {
  furnaceId: string
  earlierId: string
  laterId: string
  /** When the earlier job ended and when the later case was opened: milliseconds since 1970, UTC. */
  jobEndedAt: number
  backAt: number
  /** From the one to the other, as the window counts. */
  days: number
  earlierEnding: Ending
  /** What was named then and now. Another cause means that the first was not the cause, or not the only one. */
  earlierCause: string | 'not named'
  laterCause: string | 'not named'
  causes: 'same cause' | 'another cause' | 'not known'
}

/**
 * The callbacks among cases: for each completed job, the first case opened afterwards on the same furnace (about the
 * same circuit, if the window says so), when it was opened within the window's days.
 *
 * A job is completed when it was repaired, proven or not, or no fault was found. After a declined repair, a furnace
 * left off, or while a part is awaited, another visit is no callback. A job is called back once: what follows a
 * callback is that callback's own affair.
 *
 * @param cases in any order, each once
 * @returns oldest callback first
 * @throws RangeError when an id comes twice, a time is no number, or the window has no days
 * @example fixed 2 January, a new case on the proving circuit 20 January: one Repeat, 18 days
 */
export function repeatsOf(cases: readonly CallbackCase[], window: CallbackWindow): Repeat[] {
  const later = new Map<Repeat, CallbackCase>()
  for (const ofOneFurnace of casesByFurnace(cases).values()) {
    const counting = ofOneFurnace.filter((one) => countsIn(one, window))
    for (const job of counting.filter(isCompleted)) {
      const next = callbackOf(job, counting, window)
      if (next !== undefined) later.set(repeat(job, next, window), next)
    }
  }
  return [...later]
    .toSorted(([one, a], [other, b]) => byOpening(a, b) || (one.earlierId < other.earlierId ? -1 : 1))
    .map(([one]) => one)
}

/** The case that a job was called back for, if it was. @param counting of its furnace, oldest first */
export function callbackOf(
  job: CompletedJob,
  counting: readonly CallbackCase[],
  window: CallbackWindow,
): CallbackCase | undefined {
  const next = firstAfter(job, counting)
  return next !== undefined && next.openedAt <= windowEnd(job.ended.at, window) ? next : undefined
}

/** The first case opened once a job was done. @param cases of one furnace, oldest first */
export const firstAfter = (job: CompletedJob, cases: readonly CallbackCase[]): CallbackCase | undefined =>
  cases.find((one) => one.id !== job.id && one.openedAt >= job.ended.at)

export function repeat(job: CompletedJob, next: CallbackCase, window: CallbackWindow): Repeat {
  const known = job.cause !== undefined && next.cause !== undefined
  return {
    furnaceId: job.furnaceId,
    earlierId: job.id,
    laterId: next.id,
    jobEndedAt: job.ended.at,
    backAt: next.openedAt,
    days: daysBetween(job.ended.at, next.openedAt, window),
    earlierEnding: job.ended.how,
    earlierCause: job.cause ?? 'not named',
    laterCause: next.cause ?? 'not named',
    causes: !known ? 'not known' : job.cause === next.cause ? 'same cause' : 'another cause',
  }
}
