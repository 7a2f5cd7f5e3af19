const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const

/**
 * The date of a moment as it was on the clock of whoever said it: the offset is part of what was written, so the
 * same words appear on the phone, on the server and on paper, whatever their time zones.
 * @param moment ISO 8601 date, or date and time
 * @returns `12 Jan 2026`; the text itself when it isn't such a date, because hiding it would help nobody
 */
export function sayDate(moment: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})(?:T|$)/.exec(moment) ?? []
  const name = months[Number(month) - 1]
  return year && day && name ? `${Number(day)} ${name} ${year}` : moment
}
