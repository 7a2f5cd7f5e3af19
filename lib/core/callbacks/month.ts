/** Months are those of UTC, named '2026-01'. A number counts them from year 0, so that they can be compared quickly. */
export const monthNumber = (moment: number): number => {
  const date = new Date(moment)
  return 12 * date.getUTCFullYear() + date.getUTCMonth()
}

/** The moment at which a month begins. */
export const monthBegins = (number: number): number => Date.UTC(Math.floor(number / 12), number % 12)

/** @example monthName(monthNumber(Date.parse('2026-01-31T00:00:00Z'))) // '2026-01' */
export const monthName = (number: number): string =>
  `${String(Math.floor(number / 12)).padStart(4, '0')}-${String((number % 12) + 1).padStart(2, '0')}`

/** @throws RangeError when it is no month */
export function readMonth(name: string): number {
  const [, year, month] = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(name) ?? []
  if (year === undefined) throw new RangeError(`A month is written as 2026-01, not as ${name}`)
  return 12 * Number(year) + Number(month) - 1
}
