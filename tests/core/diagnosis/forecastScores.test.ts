import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  brierScore,
  type Forecast,
  logLoss,
  reliabilityTable,
  scoreForecasts,
  topHits,
  wilsonInterval,
} from '@/lib/core/diagnosis'
import { deepFreeze } from './anyDiagnosis'

const anyForecasts = fc
  .integer({ min: 2, max: 6 })
  .chain((causes) =>
    fc.array(
      fc.record({
        probabilities: fc
          .array(fc.integer({ min: 1, max: 50 }), { minLength: causes, maxLength: causes })
          .map((parts) => parts.map((part) => part / parts.reduce((sum, one) => sum + one, 0))),
        truth: fc.integer({ min: 0, max: causes - 1 }),
      }),
      { minLength: 1, maxLength: 40 },
    ),
  )
  .map(deepFreeze)

describe('scores of forecasts', () => {
  test('a perfect forecaster loses nothing, a certain and wrong one 2 Brier and 36.04 nats', () => {
    const perfect = scoreForecasts([{ probabilities: [1, 0], truth: 0 }])
    expect(perfect).toMatchObject({ logLoss: 0, brier: 0, logLossStandardError: 0, cases: 1 })
    const wrong = scoreForecasts([{ probabilities: [1, 0], truth: 1 }])
    expect(wrong).toMatchObject({ logLoss: expect.closeTo(52 * Math.LN2, 9), brier: 2 })
  })

  test('equal chances of n causes lose ln n', () => {
    expect(logLoss([{ probabilities: [0.25, 0.25, 0.25, 0.25], truth: 2 }])).toBeCloseTo(Math.log(4), 12)
  })

  test('the standard error is that of a mean: two losses of ln 2 and ln 4 give half their difference', () => {
    const forecasts = [
      { probabilities: [0.5, 0.5], truth: 0 },
      { probabilities: [0.25, 0.75], truth: 0 },
    ]
    expect(scoreForecasts(forecasts).logLossStandardError).toBeCloseTo((Math.log(4) - Math.log(2)) / 2, 12)
  })

  test('hits grow with k, and all causes always hold the true one', () => {
    fc.assert(
      fc.property(anyForecasts, (forecasts) => {
        const hits = [1, 2, 3, 4, 5, 6].map((k) => topHits(forecasts, k).hits)
        expect(hits).toEqual(hits.toSorted((a, b) => a - b))
        expect(hits[5]).toBe(forecasts.length)
        const { rate, interval95 } = topHits(forecasts, 1)
        expect(interval95[0] <= rate && rate <= interval95[1]).toBe(true)
      }),
      { seed: 20260316, numRuns: 150 },
    )
  })

  test('of equal chances the cause listed first counts as first, as it is shown', () => {
    const equal = (truth: number): Forecast[] => [{ probabilities: [0.4, 0.4, 0.2], truth }]
    expect([0, 1, 2].map((truth) => topHits(equal(truth), 1).hits)).toEqual([1, 0, 0])
    expect([0, 1, 2].map((truth) => topHits(equal(truth), 2).hits)).toEqual([1, 1, 0])
  })

  test('Brier and log loss are proper: no other forecast has a better mean than the truth', () => {
    fc.assert(
      fc.property(anyForecasts, (forecasts) => {
        const { probabilities: truly } = forecasts[0]!
        const other = forecasts[forecasts.length - 1]!.probabilities
        for (const score of [brierScore, logLoss]) {
          const mean = (forecast: readonly number[]) =>
            truly.reduce(
              (sum, chance, truth) => sum + chance * score([{ probabilities: forecast, truth }]),
              0,
            )
          expect(mean(truly)).toBeLessThanOrEqual(mean(other) + 1e-12)
        }
      }),
      { seed: 20260317, numRuns: 150 },
    )
  })

  test('the reliability table counts every case once, in the tenth of its leading chance', () => {
    fc.assert(
      fc.property(anyForecasts, (forecasts) => {
        const table = reliabilityTable(forecasts)
        expect(table.reduce((sum, row) => sum + row.cases, 0)).toBe(forecasts.length)
        expect(table.reduce((sum, row) => sum + row.came.hits, 0)).toBe(topHits(forecasts, 1).hits)
        for (const { forecast, from, to } of table)
          expect(forecast >= from - 1e-9 && forecast <= to + 1e-9).toBe(true)
      }),
      { seed: 20260318, numRuns: 150 },
    )
    const [row, last] = reliabilityTable([
      { probabilities: [0.75, 0.25], truth: 0 },
      { probabilities: [0.21, 0.79], truth: 0 },
      { probabilities: [1, 0], truth: 0 },
    ])
    expect(row).toMatchObject({
      from: 0.7,
      to: 0.8,
      cases: 2,
      forecast: expect.closeTo(0.77, 12),
      came: { hits: 1 },
    })
    expect(last).toMatchObject({ from: 0.9, to: 1, cases: 1 })
  })

  test.each([logLoss, brierScore, scoreForecasts, (none: Forecast[]) => topHits(none, 1)])(
    'throws at nothing to score',
    (score) => {
      expect(() => score([])).toThrow(RangeError)
    },
  )
})

describe('wilsonInterval(hits, of, confidence)', () => {
  test('holds the proportion, and turns round when hits and misses do', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 500 }),
        fc.nat(500),
        fc.constantFrom(0.5, 0.9, 0.95, 0.999),
        (of, some, confidence) => {
          const hits = some % (of + 1)
          const [low, high] = wilsonInterval(hits, of, confidence)
          expect(low <= hits / of && hits / of <= high && low >= 0 && high <= 1).toBe(true)
          const [mirrorLow, mirrorHigh] = wilsonInterval(of - hits, of, confidence)
          expect(mirrorLow).toBeCloseTo(1 - high, 12)
          expect(mirrorHigh).toBeCloseTo(1 - low, 12)
        },
      ),
      { seed: 20260319, numRuns: 200 },
    )
  })

  test.each([
    [1, 0, 0.95],
    [2, 1, 0.95],
    [-1, 1, 0.95],
    [1, 2, 1],
    [1, 2, Number.NaN],
  ])('throws at %d of %d with confidence %d', (hits, of, confidence) => {
    expect(() => wilsonInterval(hits, of, confidence)).toThrow(RangeError)
  })
})
