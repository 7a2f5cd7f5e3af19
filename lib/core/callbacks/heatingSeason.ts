/** Calendar months, 1 to 12, both included; it may run over the turn of the year. */
export type HeatingSeason = { firstMonth: number; lastMonth: number }

/** October to April: common practice in a cold climate, no published source. */
export const usualHeatingSeason: HeatingSeason = { firstMonth: 10, lastMonth: 4 }

/** One day, in milliseconds. */
export const dayMs = 86_400_000

/**
 * The days between two moments that lie in heating seasons, parts of days included. Months are those of UTC.
 *
 * A repair that was never asked to heat has proven nothing, so a quiet summer counts for nothing here.
 *
 * @param from milliseconds since 1970, UTC; not after `to`
 * @throws RangeError when `to` is before `from`, or a month is not 1 to 12
 * @example from 21 April to 11 October, October to April: 10 days and 10 days, 20
 */
export function heatingSeasonDays(from: number, to: number, season: HeatingSeason): number {
  checkSeason(season)
  if (!(Number.isFinite(from) && Number.isFinite(to) && from <= to))
    throw new RangeError('heatingSeasonDays requires two moments, the later one last')
  return (seasonMsUpTo(to, season) - seasonMsUpTo(from, season)) / dayMs
}

const monthLengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const

/** The time in heating seasons from 1 January of year 1 to a moment: whole years, whole months, and the rest. */
function seasonMsUpTo(moment: number, season: HeatingSeason): number {
  const date = new Date(moment)
  const [year, month] = [date.getUTCFullYear(), date.getUTCMonth()]
  const leapDays = leapYearsBefore(month > 1 ? year + 1 : year)
  let days = isInSeason(2, season) ? leapDays : 0
  monthLengths.forEach((length, place) => {
    if (isInSeason(place + 1, season)) days += length * (place < month ? year : year - 1)
  })
  return days * dayMs + (isInSeason(month + 1, season) ? moment - Date.UTC(year, month) : 0)
}

/** In the Gregorian calendar, from year 1 on. */
const leapYearsBefore = (year: number): number =>
  Math.floor((year - 1) / 4) - Math.floor((year - 1) / 100) + Math.floor((year - 1) / 400)

/**
 * The moment by which so many heating-season days have passed.
 * @param days above 0
 * @throws RangeError when an argument is outside its range
 * @example 30 days after 21 April 0:00, October to April: 21 October 0:00
 */
export function afterHeatingSeasonDays(from: number, days: number, season: HeatingSeason): number {
  checkSeason(season)
  if (!(Number.isFinite(from) && days > 0 && days < Infinity))
    throw new RangeError('afterHeatingSeasonDays requires a moment and a number of days above 0')
  let left = days * dayMs
  const months = seasonMonths(from, season)
  for (;;) {
    const [start, end] = months.next().value
    if (end - start >= left) return start + left
    left -= end - start
  }
}

/** The months of heating seasons from a moment on, the first cut off at that moment; without end. */
function* seasonMonths(from: number, season: HeatingSeason): Generator<readonly [number, number], never> {
  const date = new Date(from)
  for (let month = date.getUTCMonth(); ; month++) {
    const start = Date.UTC(date.getUTCFullYear(), month)
    if (isInSeason((month % 12) + 1, season))
      yield [Math.max(from, start), Date.UTC(date.getUTCFullYear(), month + 1)]
  }
}

const isInSeason = (month: number, { firstMonth, lastMonth }: HeatingSeason): boolean =>
  firstMonth <= lastMonth
    ? month >= firstMonth && month <= lastMonth
    : month >= firstMonth || month <= lastMonth

function checkSeason({ firstMonth, lastMonth }: HeatingSeason): void {
  for (const month of [firstMonth, lastMonth])
    if (!(Number.isInteger(month) && month >= 1 && month <= 12))
      throw new RangeError('A heating season runs from and to a month, 1 to 12')
}
