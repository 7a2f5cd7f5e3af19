import { sayDate } from '@/lib/core/sayDate'

export { sayDate }

/** `sayDate` with the time of day: `12 Jan 2026, 14:05`. A moment without a time of day is said as a date. */
export function sayMoment(moment: string): string {
  const time = /T(\d{2}:\d{2})/.exec(moment)?.[1]
  return time ? `${sayDate(moment)}, ${time}` : sayDate(moment)
}
