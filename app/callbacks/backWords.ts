import { dayMs } from '@/lib/core/callbacks/heatingSeason'
import type { Repeat } from '@/lib/core/callbacks/repeatsOf'
import { sayDate } from '../ui/words/sayDate'

const dayOf = (moment: number): string => new Date(moment).toISOString().slice(0, 10)

/** The days from the date of one moment to that of a later one, so that they are those between the dates on paper. */
const daysApart = (from: number, to: number): number =>
  (Date.parse(dayOf(to)) - Date.parse(dayOf(from))) / dayMs

/**
 * When a job ended, when its furnace was back, and the days between: they count from the end of the job, not from
 * the day on which its case was opened. Days are those of UTC, as everywhere in these figures.
 * @example 'job ended 25 Nov 2025, back 23 Dec 2025, 28 days'
 */
export function backWords({ jobEndedAt, backAt }: Pick<Repeat, 'jobEndedAt' | 'backAt'>): string {
  const days = daysApart(jobEndedAt, backAt)
  const count = days === 0 ? 'the same day' : days === 1 ? '1 day' : `${days} days`
  return `job ended ${sayDate(dayOf(jobEndedAt))}, back ${sayDate(dayOf(backAt))}, ${count}`
}
