import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { kaplanMeier, medianTime, survivalAt } from '@/lib/core/callbacks'
import { deepFreeze } from '../diagnosis/anyDiagnosis'
import { anyLifetimes } from './made'

const settings = { seed: 20260412, numRuns: 200 }

describe('kaplanMeier(times, events)', () => {
  test('worked by hand: 3 of 5 remain after 2 of 5, then half of the 2 still watched: 0.6 · 0.5 = 0.3', () => {
    const steps = kaplanMeier([10, 10, 20, 30, 40], [true, true, false, true, false])
    expect(steps.map(({ time, atRisk, events }) => [time, atRisk, events])).toEqual([
      [10, 5, 2],
      [30, 2, 1],
    ])
    expect(steps.map(({ survival }) => survival)).toEqual([0.6, expect.closeTo(0.3, 12)])
    // Greenwood: 0.6² · 2/(5·3) and 0.3² · (2/(5·3) + 1/(2·1)).
    expect(steps[0]!.standardError).toBeCloseTo(0.6 * Math.sqrt(2 / 15), 12)
    expect(steps[1]!.standardError).toBeCloseTo(0.3 * Math.sqrt(2 / 15 + 1 / 2), 12)
  })

  test('is a step function that starts at 1, never rises, and changes at events only', () => {
    fc.assert(
      fc.property(anyLifetimes, ({ times, events }) => {
        const steps = kaplanMeier(times, events)
        const curve = [1, ...steps.map(({ survival }) => survival)]
        expect(curve.every((value, place) => place === 0 || value < curve[place - 1]!)).toBe(true)
        expect(curve.every((value) => value >= 0)).toBe(true)
        const eventful = new Set(times.filter((_, place) => events[place]))
        expect(new Set(steps.map(({ time }) => time))).toEqual(eventful)
        expect(survivalAt(steps, Math.min(...times, 1e9) - 0.5)).toBe(1)
      }),
      settings,
    )
  })

  test('with nobody leaving early it is the share that is still without event', () => {
    fc.assert(
      fc.property(anyLifetimes, fc.integer({ min: 0, max: 60 }), ({ times }, time) => {
        const steps = kaplanMeier(
          times,
          times.map(() => true),
        )
        const share = times.filter((one) => one > time).length / times.length
        expect(survivalAt(steps, time)).toBeCloseTo(share, 12)
      }),
      settings,
    )
  })

  test('with nobody leaving early Greenwood’s error is that of a share, √(p(1 − p)/n)', () => {
    fc.assert(
      fc.property(anyLifetimes, ({ times }) => {
        for (const { survival, standardError } of kaplanMeier(
          times,
          times.map(() => true),
        ))
          if (standardError !== 'not defined')
            expect(standardError).toBeCloseTo(Math.sqrt((survival * (1 - survival)) / times.length), 10)
      }),
      settings,
    )
  })

  test('is the product over every single event of the share that survives it (brute force, quadratic)', () => {
    fc.assert(
      fc.property(anyLifetimes, fc.integer({ min: 0, max: 60 }), ({ times, events }, time) => {
        let product = 1
        for (const moment of new Set(times)) {
          if (moment > time) continue
          const watched = times.filter((one) => one >= moment).length
          const happened = times.filter((one, place) => one === moment && events[place]).length
          product *= (watched - happened) / watched
        }
        expect(survivalAt(kaplanMeier(times, events), time)).toBeCloseTo(product, 12)
      }),
      settings,
    )
  })

  test('the interval holds the estimate, stays within 0 and 1, and widens with the confidence', () => {
    fc.assert(
      fc.property(anyLifetimes, ({ times, events }) => {
        const wide = kaplanMeier(times, events, 0.99)
        kaplanMeier(times, events, 0.8).forEach(({ survival, interval }, place) => {
          const wider = wide[place]!.interval
          if (interval === 'not defined' || wider === 'not defined') {
            expect([survival, interval, wider]).toEqual([0, 'not defined', 'not defined'])
            return
          }
          const ends = [wider[0], interval[0], survival, interval[1], wider[1]]
          expect(ends).toEqual(ends.toSorted((a, b) => a - b))
          expect(wider[0] >= 0 && wider[1] <= 1).toBe(true)
        })
      }),
      settings,
    )
  })

  test('the order of the cases does not matter', () => {
    fc.assert(
      fc.property(anyLifetimes, ({ times, events }) => {
        expect(kaplanMeier(times.toReversed(), events.toReversed())).toEqual(kaplanMeier(times, events))
      }),
      settings,
    )
  })

  test('nobody watched, or nothing happened: no step, survival stays 1', () => {
    expect(kaplanMeier([], [])).toEqual([])
    expect(survivalAt(kaplanMeier([5, 9], [false, false]), 100)).toBe(1)
  })

  test('a callback on the very day counts: time 0 is a time', () => {
    expect(survivalAt(kaplanMeier([0, 8], [true, false]), 0)).toBe(0.5)
  })

  test.each([
    [[1, 2], [true], 0.95, 'as many events as times'],
    [[-1], [true], 0.95, 'numbers, 0 or more'],
    [[Number.NaN], [true], 0.95, 'numbers, 0 or more'],
    [[Infinity], [true], 0.95, 'numbers, 0 or more'],
    [[1], [true], 1, 'confidence between 0 and 1'],
  ] as const)('times %j, events %j, confidence %d: RangeError, %s', (times, events, confidence, message) => {
    expect(() => kaplanMeier(times, events, confidence)).toThrow(RangeError)
    expect(() => kaplanMeier(times, events, confidence)).toThrow(message)
  })
})

describe('medianTime(steps)', () => {
  test('a survival of one half exactly is the median, however it was multiplied up', () => {
    let missedByRounding = 0
    for (let half = 1; half <= 40; half++) {
      const times = deepFreeze(Array.from({ length: 2 * half }, (_, place) => place + 1))
      const steps = kaplanMeier(
        times,
        times.map(() => true),
      )
      if (survivalAt(steps, half) > 0.5) missedByRounding++
      expect(medianTime(steps)).toMatchObject({ ok: true, value: { time: half } })
    }
    expect(missedByRounding).toBeGreaterThan(0)
  })

  test('the median lies within its interval', () => {
    fc.assert(
      fc.property(anyLifetimes, ({ times, events }) => {
        const median = medianTime(kaplanMeier(times, events))
        if (!median.ok) return
        const { time, interval } = median.value
        expect(interval[0]).toBeLessThanOrEqual(time)
        if (interval[1] !== 'not reached') expect(interval[1]).toBeGreaterThanOrEqual(time)
      }),
      settings,
    )
  })

  test('while more than half are without event there is none: half-not-reached', () => {
    expect(medianTime(kaplanMeier([3, 9, 9], [true, false, false]))).toMatchObject({
      ok: false,
      problem: { code: 'half-not-reached' },
    })
    expect(medianTime([])).toMatchObject({ ok: false })
  })
})
