import { sayDate } from '../ui/words/sayDate'

/**
 * The last day on which a job can still come back, of a window or of a whole month. The moment itself is the end of
 * that day where it is midnight, so it is never said as the day after.
 * @param endsAt milliseconds since 1970, UTC
 * @example lastDay(Date.parse('2026-12-01T00:00:00Z')) // '30 Nov 2026'
 */
export const lastDay = (endsAt: number): string => sayDate(new Date(endsAt - 1).toISOString())

/** @example untilWords(Date.parse('2026-12-01T00:00:00Z')) // 'can come back until 30 Nov 2026' */
export const untilWords = (endsAt: number): string => `can come back until ${lastDay(endsAt)}`
