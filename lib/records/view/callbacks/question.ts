import { type CallbackWindow, usualCallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import type { CaseFacts } from './caseFacts'

/** What the figures are asked of. It is said beside them. */
export type CallbackQuestion = {
  /** The months in which the jobs were done, '2026-01', both included. */
  fromMonth: string
  toMonth: string
  /** Left out: all of them, also furnaces of which nobody said it. */
  branch?: string
  rangeId?: string
  /** What counts as a callback: opened within so many calendar days of the end of the job, above 0. */
  days: number
  /** Both about the proving circuit; otherwise any case on the same furnace counts. */
  sameCircuit: boolean
  /** What the time to a callback is counted in. */
  timeScale: CallbackWindow['calendar']
}

/** The last two years up to a moment, everything, and the usual window. */
export function usualQuestion(now: string): CallbackQuestion {
  const month = monthNumber(Date.parse(now))
  return {
    fromMonth: monthName(month - 23),
    toMonth: monthName(month),
    days: usualCallbackWindow.days,
    sameCircuit: usualCallbackWindow.sameCircuit,
    timeScale: 'heating-season days',
  }
}

/** The window that says which jobs came back; its days are those of the calendar. */
export const callbackWindowOf = ({ days, sameCircuit }: CallbackQuestion): CallbackWindow => ({
  ...usualCallbackWindow,
  days,
  sameCircuit,
})

/** The window by which the time to a callback is counted. */
export const timeWindowOf = (question: CallbackQuestion): CallbackWindow => ({
  ...callbackWindowOf(question),
  calendar: question.timeScale,
})

/** Whether a case is on a furnace that is asked about. */
export const isAskedAbout = (
  { branch, rangeId }: Pick<CaseFacts, 'branch' | 'rangeId'>,
  asked: CallbackQuestion,
): boolean =>
  (asked.branch === undefined || branch === asked.branch) &&
  (asked.rangeId === undefined || rangeId === asked.rangeId)
