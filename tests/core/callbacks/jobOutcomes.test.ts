import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { jobOutcomes, monthlyRates, settledMonths } from '@/lib/core/callbacks'
import { anyCases, anyWindow, at, caseOf, windowOf } from './made'

const settings = { seed: 20260412, numRuns: 150 }
const anyNow = fc.integer({ min: 0, max: 700 }).map((days) => at('2024-10-01') + days * 86_400_000)

describe('jobOutcomes(cases, window, now)', () => {
  const cases = [
    caseOf('came back', '2026-01-01', '2026-01-02'),
    caseOf('callback', '2026-01-20', '2026-01-21', { how: 'repaired, not proven' }),
    caseOf('elsewhere', '2026-01-05', '2026-01-06', { furnaceId: 'furnace 2' }),
    caseOf('declined', '2026-01-07', '2026-01-08', { furnaceId: 'furnace 3', how: 'repair declined' }),
  ]

  test('a job with its window still running is not settled, whether it came back or not', () => {
    const outcomes = jobOutcomes(cases, windowOf(), at('2026-01-25'))
    expect(outcomes.map(({ caseId, became, settled, isFix }) => [caseId, became, settled, isFix])).toEqual([
      ['came back', 'came back', false, true],
      ['elsewhere', 'not known yet', false, true],
      ['callback', 'not known yet', false, false],
    ])
    expect(outcomes[0]).toMatchObject({
      windowEndsAt: at('2026-02-01'),
      repeat: { laterId: 'callback', days: 18 },
    })
  })

  test('once the window has run out, no callback means quiet', () => {
    const outcomes = jobOutcomes(cases, windowOf(), at('2026-03-01'))
    expect(outcomes.map(({ caseId, became, settled }) => [caseId, became, settled])).toEqual([
      ['came back', 'came back', true],
      ['elsewhere', 'quiet', true],
      ['callback', 'quiet', true],
    ])
  })

  test('settled from the very moment at which the window ends', () => {
    const [only] = jobOutcomes([cases[2]!], windowOf(), at('2026-02-05'))
    expect(only).toMatchObject({ windowEndsAt: at('2026-02-05'), settled: true, became: 'quiet' })
  })

  test('what happened after now is left out: an ending of tomorrow is no job of today', () => {
    expect(jobOutcomes(cases, windowOf(), at('2026-01-19'))[0]).toMatchObject({ became: 'not known yet' })
    expect(jobOutcomes(cases, windowOf(), at('2026-01-01'))).toEqual([])
  })

  test('a settled outcome never changes any more', () => {
    fc.assert(
      fc.property(
        anyCases,
        anyWindow,
        anyNow,
        fc.integer({ min: 1, max: 300 }),
        (cases, window, now, days) => {
          const later = jobOutcomes(cases, window, now + days * 86_400_000)
          for (const outcome of jobOutcomes(cases, window, now).filter(({ settled }) => settled)) {
            const then = later.find(({ caseId }) => caseId === outcome.caseId)!
            expect([then.became, then.settled, then.repeat?.laterId]).toEqual([
              outcome.became,
              true,
              outcome.repeat?.laterId,
            ])
          }
        },
      ),
      settings,
    )
  })

  test('no present, no outcome: RangeError', () => {
    expect(() => jobOutcomes(cases, windowOf(), Number.NaN)).toThrow(
      new RangeError('The present must be a number of milliseconds'),
    )
  })
})

describe('monthlyRates(cases, window, now)', () => {
  const cases = [
    caseOf('A', '2025-11-01', '2025-11-30T23:59:00Z'),
    caseOf('B', '2025-12-20', '2025-12-21', { how: 'no fault found' }),
    caseOf('C', '2026-01-10', '2026-01-11'),
    caseOf('D', '2026-02-20', '2026-02-21', { furnaceId: 'furnace 2' }),
  ]

  test('jobs by the month they were done in, with their callbacks, and fixes apart', () => {
    const months = monthlyRates(cases, windowOf(), at('2026-03-02'))
    expect(
      months.map((one) => [
        one.month,
        one.jobs,
        one.cameBack,
        one.fixes,
        one.fixesThatCameBack,
        one.standing,
      ]),
    ).toEqual([
      ['2025-11', 1, 1, 1, 1, 'settled'],
      ['2025-12', 1, 1, 0, 0, 'settled'],
      ['2026-01', 1, 0, 1, 0, 'open'],
      ['2026-02', 1, 0, 1, 0, 'open'],
      ['2026-03', 0, 0, 0, 0, 'open'],
    ])
  })

  test('January is open until its last possible callback day is over, 2 March 24:00, and settled then', () => {
    const january = (now: number) =>
      monthlyRates(cases, windowOf(), now).find(({ month }) => month === '2026-01')!
    expect(january(at('2026-03-02T23:59:59Z')).standing).toBe('open')
    expect(january(at('2026-03-03'))).toMatchObject({ standing: 'settled', settlesAt: at('2026-03-03') })
    expect(
      settledMonths(monthlyRates(cases, windowOf(), at('2026-03-03'))).map(({ month }) => month),
    ).toEqual(['2025-11', '2025-12', '2026-01'])
  })

  test('in heating-season days the jobs of April settle in autumn only', () => {
    const april = [caseOf('A', '2025-04-20', '2025-04-21')]
    const window = windowOf({ calendar: 'heating-season days' })
    expect(monthlyRates(april, window, at('2025-10-30'))[0]).toMatchObject({
      month: '2025-04',
      standing: 'open',
    })
    expect(monthlyRates(april, window, at('2025-10-31'))[0]).toMatchObject({ standing: 'settled' })
  })

  test('the counts of a settled month never change any more', () => {
    fc.assert(
      fc.property(
        anyCases,
        anyWindow,
        anyNow,
        fc.integer({ min: 1, max: 300 }),
        (cases, window, now, days) => {
          const later = monthlyRates(cases, window, now + days * 86_400_000)
          for (const month of settledMonths(monthlyRates(cases, window, now)))
            expect(later.find((one) => one.month === month.month)).toEqual(month)
        },
      ),
      settings,
    )
  })

  test('every job is in one month, and months follow each other without a gap', () => {
    fc.assert(
      fc.property(anyCases, anyWindow, anyNow, (cases, window, now) => {
        const months = monthlyRates(cases, window, now)
        const outcomes = jobOutcomes(cases, window, now)
        expect(months.reduce((sum, { jobs }) => sum + jobs, 0)).toBe(outcomes.length)
        expect(months.reduce((sum, { cameBack }) => sum + cameBack, 0)).toBe(
          outcomes.filter(({ became }) => became === 'came back').length,
        )
        months.forEach(({ month }, place) => {
          if (place === 0) return
          const next = new Date(`${months[place - 1]!.month}-01T00:00:00Z`)
          next.setUTCMonth(next.getUTCMonth() + 1)
          expect(month).toBe(next.toISOString().slice(0, 7))
        })
      }),
      settings,
    )
  })

  test('no job done, no month', () => {
    expect(monthlyRates([caseOf('A', '2026-01-01')], windowOf(), at('2026-03-02'))).toEqual([])
  })
})
