import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { heatingSeasonDays, usualHeatingSeason } from '@/lib/core/callbacks'
import { afterHeatingSeasonDays } from '@/lib/core/callbacks/heatingSeason'
import { at } from './made'

const settings = { seed: 20260412, numRuns: 200 }
const day = 86_400_000
const anyMonth = fc.integer({ min: 1, max: 12 })
const anySeason = fc.record({ firstMonth: anyMonth, lastMonth: anyMonth })
const anyDay = fc.integer({ min: 0, max: 1500 }).map((days) => at('2023-01-01') + days * day)

/** Day by day, by the calendar. */
const countDays = (
  from: number,
  to: number,
  { firstMonth, lastMonth }: typeof usualHeatingSeason,
): number => {
  let days = 0
  for (let moment = from; moment < to; moment += day) {
    const month = new Date(moment).getUTCMonth() + 1
    const inside =
      firstMonth <= lastMonth
        ? firstMonth <= month && month <= lastMonth
        : month >= firstMonth || month <= lastMonth
    if (inside) days++
  }
  return days
}

describe('heatingSeasonDays(from, to, season)', () => {
  test('21 April to 11 October, October to April: the last ten days of the one and the first ten of the other', () => {
    expect(heatingSeasonDays(at('2025-04-21'), at('2025-10-11'), usualHeatingSeason)).toBe(20)
  })

  test('a whole summer takes none, a winter all its days: 212, or 213 with 29 February', () => {
    expect(heatingSeasonDays(at('2025-05-01'), at('2025-10-01'), usualHeatingSeason)).toBe(0)
    expect(heatingSeasonDays(at('2024-10-01'), at('2025-05-01'), usualHeatingSeason)).toBe(212)
    expect(heatingSeasonDays(at('2023-10-01'), at('2024-05-01'), usualHeatingSeason)).toBe(213)
  })

  test('counts as the calendar does, day by day, whatever the season', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 0, max: 3000 }), anySeason, (from, days, season) => {
        const to = from + days * day
        expect(heatingSeasonDays(from, to, season)).toBeCloseTo(countDays(from, to, season), 9)
      }),
      settings,
    )
  })

  test('over the year 2100, which has no 29 February, and over 2000, which has one', () => {
    const years = (from: string, to: string) => heatingSeasonDays(at(from), at(to), usualHeatingSeason)
    expect(years('2099-05-01', '2102-05-01')).toBe(3 * 212)
    expect(years('1998-05-01', '2001-05-01')).toBe(3 * 212 + 1)
  })

  test('two spans one after the other add up', () => {
    fc.assert(
      fc.property(fc.array(anyDay, { minLength: 3, maxLength: 3 }), anySeason, (days, season) => {
        const [from, between, to] = days.toSorted((a, b) => a - b) as [number, number, number]
        const parts = heatingSeasonDays(from, between, season) + heatingSeasonDays(between, to, season)
        expect(heatingSeasonDays(from, to, season)).toBeCloseTo(parts, 9)
      }),
      settings,
    )
  })

  test('a season from January to December, or from July to June, has every day', () => {
    for (const season of [
      { firstMonth: 1, lastMonth: 12 },
      { firstMonth: 7, lastMonth: 6 },
    ])
      expect(heatingSeasonDays(at('2024-01-01'), at('2025-03-02'), season)).toBe(426)
  })

  test('hours count as parts of a day', () => {
    const [from, to] = [at('2025-01-10T06:00:00Z'), at('2025-01-11T18:00:00Z')]
    expect(heatingSeasonDays(from, to, usualHeatingSeason)).toBe(1.5)
  })

  test('a time that runs backwards, no time at all, a thirteenth month: RangeError', () => {
    const now = at('2025-01-10')
    expect(() => heatingSeasonDays(now, now - 1, usualHeatingSeason)).toThrow(
      new RangeError('heatingSeasonDays requires two moments, the later one last'),
    )
    expect(() => heatingSeasonDays(Number.NaN, now, usualHeatingSeason)).toThrow(RangeError)
    expect(() => heatingSeasonDays(now, Infinity, usualHeatingSeason)).toThrow(RangeError)
    for (const firstMonth of [0, 13, 2.5])
      expect(() => heatingSeasonDays(now, now, { firstMonth, lastMonth: 4 })).toThrow('a month, 1 to 12')
  })
})

describe('afterHeatingSeasonDays(from, days, season)', () => {
  test('30 days after 21 April: ten until the end of the season, twenty from 1 October', () => {
    expect(afterHeatingSeasonDays(at('2025-04-21'), 30, usualHeatingSeason)).toBe(at('2025-10-21'))
  })

  test('from there back it is that many days, and a moment earlier it is fewer', () => {
    fc.assert(
      fc.property(anyDay, fc.integer({ min: 1, max: 400 }), anySeason, (from, days, season) => {
        const end = afterHeatingSeasonDays(from, days, season)
        expect(heatingSeasonDays(from, end, season)).toBeCloseTo(days, 9)
        expect(heatingSeasonDays(from, end - 1000, season)).toBeLessThan(days)
      }),
      settings,
    )
  })

  test('no days at all: RangeError', () => {
    expect(() => afterHeatingSeasonDays(at('2025-01-01'), 0, usualHeatingSeason)).toThrow(
      new RangeError('afterHeatingSeasonDays requires a moment and a number of days above 0'),
    )
  })
})
