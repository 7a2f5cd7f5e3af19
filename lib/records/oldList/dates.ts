/** Which of two numbers before a year is the day; 'not known' keeps 3/4/2019 from being guessed. */
export type DateOrder = 'day first' | 'month first' | 'not known'

const iso = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/
const twoAndYear = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4}|\d{2})$/

/** Two digits of a year: 00 to 69 are of this century (POSIX strptime, %y takes 69 to 99 as of the last one). */
const wholeYear = (year: string): number =>
  year.length === 4 ? Number(year) : Number(year) < 69 ? 2000 + Number(year) : 1900 + Number(year)

/** Whether the dates of a column tell which number is the day: by those in which one is above twelve. */
export function guessDateOrder(cells: readonly string[]): DateOrder {
  let [dayFirst, monthFirst] = [0, 0]
  for (const cell of cells) {
    const [, first = '', second = ''] = twoAndYear.exec(cell) ?? []
    if (Number(first) > 12) dayFirst += 1
    if (Number(second) > 12) monthFirst += 1
    if (/^\d{1,2}\.\d{1,2}\./.test(cell)) dayFirst += 1
  }
  if (dayFirst > 0 && monthFirst === 0) return 'day first'
  return monthFirst > 0 && dayFirst === 0 ? 'month first' : 'not known'
}

/**
 * A day as year-month-day, or why it can't be told: half a sentence.
 *
 * @example readDay('3.4.2019', 'day first') // { day: '2019-04-03' }
 */
export function readDay(text: string, order: DateOrder): { day: string } | { why: string } {
  const [, year, month, day] = iso.exec(text) ?? []
  if (year !== undefined) return lawful(Number(year), Number(month), Number(day), text)
  const [, first, second, short] = twoAndYear.exec(text) ?? []
  if (short === undefined)
    return { why: `“${text}” is no date that can be read. Write it as year-month-day.` }
  const [one, other] = [Number(first), Number(second)]
  if (one <= 12 && other <= 12 && one !== other && order === 'not known')
    return { why: `“${text}” can be two days. Choose which number is the day.` }
  const dayIsFirst = one > 12 || (other <= 12 && order === 'day first')
  return lawful(wholeYear(short), dayIsFirst ? other : one, dayIsFirst ? one : other, text)
}

function lawful(year: number, month: number, day: number, text: string): { day: string } | { why: string } {
  const at = new Date(Date.UTC(year, month - 1, day))
  const isDay = at.getUTCFullYear() === year && at.getUTCMonth() === month - 1 && at.getUTCDate() === day
  return isDay ? { day: at.toISOString().slice(0, 10) } : { why: `“${text}” is no day of the calendar.` }
}
