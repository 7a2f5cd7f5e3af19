import { sayDate, sayMoment } from '../../ui/words/sayDate'

const offset = /([+-])(\d{2}):(\d{2})$/

/** How far a zone is ahead of the universal clock, in words: `UTC`, `UTC−7`, `UTC+5:30`. */
export function zoneWords(minutesAhead: number): string {
  if (minutesAhead === 0) return 'UTC'
  const minutes = Math.abs(minutesAhead)
  const rest = minutes % 60 === 0 ? '' : `:${String(minutes % 60).padStart(2, '0')}`
  return `UTC${minutesAhead < 0 ? '−' : '+'}${Math.floor(minutes / 60)}${rest}`
}

/** How far the clock of this device is ahead of the universal clock at a moment, in minutes. */
export const zoneHere = (moment: string): number => {
  const ahead = -new Date(moment).getTimezoneOffset()
  return ahead === 0 ? 0 : ahead
}

/**
 * A moment as the clock showed it: by its own offset where it was written with one, else by a zone's clock. The same
 * moment read elsewhere shows another time of day, so the zone always goes with it.
 * @param moment ISO 8601 date and time
 * @param minutesAhead the zone for a moment in UTC; that of this device where it is left out
 * @throws RangeError when it is no moment
 */
export function onTheClock(
  moment: string,
  minutesAhead = zoneHere(moment),
): { day: string; time: string; zone: string } {
  const [, sign, hours, minutes] = offset.exec(moment) ?? []
  const ahead =
    sign === undefined ? minutesAhead : Number(`${sign}1`) * (Number(hours) * 60 + Number(minutes))
  const local = new Date(Date.parse(moment) + ahead * 60_000).toISOString()
  return { day: local.slice(0, 10), time: local.slice(11, 16), zone: zoneWords(ahead) }
}

/**
 * A moment with the zone that it is said in.
 * @example momentWords('2026-01-12T16:45:00.000Z', -420) // '12 Jan 2026, 09:45, UTC−7'
 */
export function momentWords(moment: string, minutesAhead?: number): string {
  const { day, time, zone } = onTheClock(moment, minutesAhead)
  return `${sayMoment(`${day}T${time}`)}, ${zone}`
}

/** The day of a moment on that clock, as words. */
export const dayWords = (moment: string, minutesAhead?: number): string =>
  sayDate(onTheClock(moment, minutesAhead).day)

/** The zones that are farthest behind and ahead of the universal clock, in minutes (ISO 8601 offsets in civil use). */
const farthest = { behind: -12 * 60, ahead: 14 * 60 }

/**
 * Whether a day that somebody wrote down is over in every zone at a moment: what is said of it was recorded later,
 * wherever the two people are.
 * @param day year-month-day
 */
export const isBefore = (day: string, moment: string): boolean =>
  day < onTheClock(moment, farthest.behind).day

/** Whether it has begun in no zone yet. */
export const isAfter = (day: string, moment: string): boolean => day > onTheClock(moment, farthest.ahead).day

/**
 * A date and time as a field of a form holds it, with the offset of this device, so that it is the same moment
 * everywhere; undefined for an empty or unreadable one.
 * @example in a zone 7 hours behind: withOffset('2026-01-12T09:40') // '2026-01-12T09:40:00-07:00'
 */
export function withOffset(local: string, minutesAhead = zoneHere(local)): string | undefined {
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(local) || Number.isNaN(Date.parse(local))) return undefined
  const two = (figure: number) => String(Math.floor(figure)).padStart(2, '0')
  const minutes = Math.abs(minutesAhead)
  return `${local}:00${minutesAhead < 0 ? '-' : '+'}${two(minutes / 60)}:${two(minutes % 60)}`
}

/**
 * The other way round: a moment as a field of a form shows it, by the clock of this device whatever offset it was
 * written with, so that saving it again leaves it the same moment.
 */
export function withoutOffset(moment: string): string {
  const { day, time } = onTheClock(new Date(moment).toISOString())
  return `${day}T${time}`
}
