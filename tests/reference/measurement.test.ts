import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import {
  combined,
  gaugeHalfWidth,
  limitInterval,
  probabilityAbove,
  uncertaintyBudget,
} from '@/lib/core/reading'
import { pooledScatter } from '@/lib/core/reading/repeatability'
import { coarseGauge, fineGauge, inches, limit, rating, reading, started } from '../core/reading/made'

// JCGM 106:2012, clause 7. The figures printed there are from memory; the arithmetic was done again with jstat.
describe('probability of conformity, JCGM 106:2012 (attribution from memory)', () => {
  test('single lower limit, burst pressure of a vessel: 507 kPa, u 8.6, against 490 is 0.98', () => {
    expect(probabilityAbove(507, 490, 8.6)).toBeCloseTo(0.98, 2)
    expect(probabilityAbove(507, 490, 8.6)).toBeCloseTo(0.975965, 6)
  })

  test('single upper limit, breakdown voltage of a diode: −5.47 V, u 0.05, against −5.40 is 0.92', () => {
    expect(1 - probabilityAbove(-5.47, -5.4, 0.05)).toBeCloseTo(0.92, 2)
    expect(1 - probabilityAbove(-5.47, -5.4, 0.05)).toBeCloseTo(0.919243, 6)
  })

  test('two limits, viscosity of a motor oil: 13.6, u 1.8, between 12.5 and 16.3 is 0.66', () => {
    const inside = probabilityAbove(13.6, 12.5, 1.8) - probabilityAbove(13.6, 16.3, 1.8)
    expect(inside).toBeCloseTo(0.66, 2)
    expect(inside).toBeCloseTo(0.66263, 5)
  })

  test.each([
    [0.841621, 0.8],
    [1.281552, 0.9],
    [1.644854, 0.95],
    [2.326348, 0.99],
    [3.090232, 0.999],
  ])('z of %f is a probability of %f (table 1)', (z, probability) => {
    expect(probabilityAbove(z, 0, 1)).toBeCloseTo(probability, 6)
  })

  // Guard bands as printed in the table of ILAC-G8:09/2019, read second-hand: < 5 %, < 2.5 %, < 0.16 %, < 1 ppm.
  // The exact figures are 1 − Φ(2r), worked independently.
  test.each([
    [0, 0.5, 0.5],
    [0.83, 0.05, 0.04846],
    [1, 0.025, 0.02275],
    [1.5, 0.0016, 0.00135],
    [3, 1e-6, 9.87e-10],
  ])('a guard band of %f times U = 2u leaves a false acceptance of at most %f', (ratio, printed, exact) => {
    const falseAcceptance = probabilityAbove(0, ratio * 2, 1)
    expect(falseAcceptance).toBeLessThanOrEqual(printed)
    expect(Math.abs(falseAcceptance / exact - 1)).toBeLessThan(0.001)
  })

  test('agrees with an independent library (jstat) from six sigma below to six above', () => {
    for (let z = -6; z <= 6; z += 0.25)
      expect(probabilityAbove(z * 3 + 40, 40, 3)).toBeCloseTo(jstat.normal.cdf(z, 0, 1), 7)
  })

  test('refuses a standard uncertainty of zero', () => {
    expect(() => probabilityAbove(1, 1, 0)).toThrow(RangeError)
    expect(() => probabilityAbove(1, 1, Number.NaN)).toThrow(RangeError)
  })
})

// JCGM 100:2008 (GUM): 4.3.7 rectangular half-width over √3, F.2.2.1 step of a display over √12, 5.1.2 root sum of
// squares; clause numbers from memory. Arithmetic by hand, in inches of water.
describe('uncertainty budget, JCGM 100:2008', () => {
  const inInches = (pascals: number) => pascals / 249.08891

  test('±1 % + 1 digit of 0.001 at 0.86, s 0.01, t 0.05: √(0.00554² + 0.01² + 0.02887²) = 0.03105', () => {
    const budget = uncertaintyBudget(fineGauge, inches(0.86), inches(0.01), inches(0.05))
    expect(inInches(budget.instrument)).toBeCloseTo(0.0096 / 1.7320508, 7)
    expect(budget.resolution).toBe(0)
    expect(inInches(budget.repeatability)).toBeCloseTo(0.01, 12)
    expect(inInches(budget.tolerance)).toBeCloseTo(0.0288675, 6)
    expect(inInches(combined(budget))).toBeCloseTo(0.031049, 5)
  })

  test('±0.5 % of 20 in., display step 0.01: √(0.05774² + 0.00289² + 0.01² + 0.02887²) = 0.06538', () => {
    const budget = uncertaintyBudget(coarseGauge, inches(0.86), inches(0.01), inches(0.05))
    expect(inInches(budget.instrument)).toBeCloseTo(0.057735, 6)
    expect(inInches(budget.resolution)).toBeCloseTo(0.0028868, 6)
    expect(inInches(combined(budget))).toBeCloseTo(0.065383, 5)
  })

  test('with only the resolution known, the half digit enters once: 0.01/√12', () => {
    const bare = {
      ...fineGauge,
      percentOfReading: undefined,
      counts: undefined,
      resolutionPascals: inches(0.01),
    }
    const budget = uncertaintyBudget(bare, inches(0.5), inches(0.01), 0)
    expect(budget.instrument).toBe(0)
    expect(inInches(budget.resolution)).toBeCloseTo(0.0028868, 6)
  })

  test('an uneven tolerance +0.00/−0.05 on 0.60 is 0.575 ± 0.025', () => {
    const interval = limitInterval(
      limit(0.6, undefined, { toleranceAbove: 0, toleranceBelow: inches(0.05) }),
      inches(0.05),
    )
    expect(inInches(interval.centre)).toBeCloseTo(0.575, 12)
    expect(inInches(interval.halfWidth)).toBeCloseTo(0.025, 12)
  })

  test('combining is the root of the sum of squares, checked on 3-4-12 to 13', () => {
    expect(combined({ instrument: 3, resolution: 4, repeatability: 12, tolerance: 0 })).toBeCloseTo(13, 12)
  })
})

describe('repeatability, s² = (4·s₀² + Σ(x − x̄)²)/(n + 3)', () => {
  test('one sample has the usual scatter itself: √(4 · 0.01²/4)', () => {
    expect(pooledScatter([0.7], 0.01)).toBeCloseTo(0.01, 15)
  })

  test('0.78, 0.80, 0.82: √((0.0004 + 0.0008)/6) = 0.01414, below half the spread 0.02', () => {
    expect(pooledScatter([0.78, 0.8, 0.82], 0.01)).toBeCloseTo(0.02, 12)
    expect(Math.sqrt((4 * 0.0001 + 0.0008) / 6)).toBeLessThan(0.02)
  })

  test('ten of 0.79 and ten of 0.81: √((0.0004 + 0.002)/23) = 0.010215, above half the spread 0.01', () => {
    const samples = [...Array.from({ length: 10 }, () => 0.79), ...Array.from({ length: 10 }, () => 0.81)]
    expect(pooledScatter(samples, 0.01)).toBeCloseTo(0.010215, 6)
  })

  test('a held lowest widens it', () => {
    expect(pooledScatter([0.7], 0.01, 0.6)).toBeCloseTo(0.05, 12)
  })
})

// How a manometer's maker prints its accuracy, and what that leaves at a reading: common practice, no published source.
describe('gauge accuracy at a reading', () => {
  test('±1 % + 2 digits of 0.001 at 0.80 is 0.008 + 0.002 = 0.010', () => {
    expect(gaugeHalfWidth({ ...fineGauge, counts: 2 }, inches(0.8)).pascals).toBeCloseTo(inches(0.01), 10)
  })

  test('±0.5 % of 60 in. is 0.30, as much as a whole rating', () => {
    expect(gaugeHalfWidth({ ...coarseGauge, spanPascals: inches(60) }, inches(0.8)).pascals).toBeCloseTo(
      inches(0.3),
      10,
    )
  })

  test('±0.5 % of 5 in. is 0.025', () => {
    expect(gaugeHalfWidth({ ...coarseGauge, spanPascals: inches(5) }, inches(0.8)).pascals).toBeCloseTo(
      inches(0.025),
      10,
    )
  })

  test('an inclined manometer of ±3 % of full scale on 1 in. is 0.03 (an inclined manometer’s instructions)', () => {
    const inclined = { ...coarseGauge, percentOfSpan: 3, spanPascals: inches(1) }
    expect(gaugeHalfWidth(inclined, inches(0.4)).pascals).toBeCloseTo(inches(0.03), 10)
  })

  test('“whichever is greater” takes the greatest part', () => {
    const greater = { ...fineGauge, percentOfSpan: 0.1, combine: 'greater' as const }
    expect(gaugeHalfWidth(greater, inches(0.4)).pascals).toBeCloseTo(inches(0.005), 10)
    expect(gaugeHalfWidth(greater, inches(0.8)).pascals).toBeCloseTo(inches(0.008), 10)
  })

  test('resolution alone is half a digit, and says that it is assumed', () => {
    const bare = {
      ...fineGauge,
      percentOfReading: undefined,
      counts: undefined,
      resolutionPascals: inches(0.01),
    }
    expect(gaugeHalfWidth(bare, inches(0.8))).toEqual({ pascals: inches(0.01) / 2, assumed: true })
  })

  test('a stated accuracy of zero counts is stated, not assumed', () => {
    expect(gaugeHalfWidth({ ...fineGauge, percentOfReading: undefined, counts: 0 }, inches(0.8))).toEqual({
      pascals: 0,
      assumed: false,
    })
  })

  test('refuses a negative or endless accuracy', () => {
    expect(() => gaugeHalfWidth({ ...fineGauge, counts: -1 }, 1)).toThrow(RangeError)
    expect(() => gaugeHalfWidth({ ...fineGauge, percentOfSpan: Number.POSITIVE_INFINITY }, 1)).toThrow(
      RangeError,
    )
  })

  test('a gauge as wrong as its whole reading never passes one', () => {
    const hopeless = { ...fineGauge, percentOfReading: 100 }
    const closes = rating({ closes: limit(0.2, 0.05) })
    expect(started({ reading: reading([3]), rating: closes, instrument: hopeless }).verdict).not.toBe(
      'enough',
    )
  })
})
