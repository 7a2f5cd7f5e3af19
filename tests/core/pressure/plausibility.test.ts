import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  confirmRatingRange,
  isUsualRating,
  plausibilityWarnings,
  pressureUnits,
  toPascals,
  usualRatingRange,
} from '@/lib/core/pressure'

const codes = (...question: Parameters<typeof plausibilityWarnings>) =>
  plausibilityWarnings(...question).map((warning) => warning.code)

// The bounds 0.10 and 3.0 in. w.c. and the slips: common practice, no published source.
describe('isUsualRating', () => {
  test('0.10 to 3.0 in. w.c., both ends included', () => {
    for (const inches of [0.1, 0.6, 1.7, 3]) expect(isUsualRating(toPascals(inches, 'inH2O'))).toBe(true)
    for (const inches of [0, 0.06, 0.0999, 3.001, 6])
      expect(isUsualRating(toPascals(inches, 'inH2O'))).toBe(false)
  })

  test('the ends are the same, however the number came there', () => {
    expect(isUsualRating(toPascals(1, 'inH2O') * 0.1)).toBe(true)
    expect(isUsualRating(30 * toPascals(0.1, 'inH2O'))).toBe(true)
  })

  test('the ranges are in pascals', () => {
    expect(usualRatingRange.lowPascals).toBeCloseTo(24.908891, 9)
    expect(usualRatingRange.highPascals).toBeCloseTo(747.26673, 9)
    expect(confirmRatingRange).toEqual({ lowPascals: 5, highPascals: 2500 })
  })

  test('refuses what is no magnitude', () => {
    expect(() => isUsualRating(-1)).toThrow('isUsualRating requires a finite magnitude, not -1')
    expect(() => isUsualRating(Number.NaN)).toThrow(RangeError)
  })
})

describe('plausibilityWarnings', () => {
  test('say nothing of a usual rating, in any unit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 25, max: 747, noNaN: true }),
        fc.constantFrom(...pressureUnits),
        (pascals, unit) => {
          expect(codes(pascals / toPascals(1, unit), unit, 'rating')).toEqual([])
        },
      ),
      { seed: 5 },
    )
  })

  test('an unusual rating always has a warning, and each code comes once', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.constantFrom(...pressureUnits),
        (value, unit) => {
          const found = codes(value, unit, 'rating')
          expect(found.length > 0).toBe(!isUsualRating(toPascals(value, unit)))
          expect(new Set(found).size).toBe(found.length)
        },
      ),
      { seed: 6 },
    )
  })

  test('name ten times only where a tenth would be usual, and a tenth only where ten times would be', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (inches) => {
        const found = codes(inches, 'inH2O', 'rating')
        const usual = isUsualRating(toPascals(inches, 'inH2O'))
        expect(found.includes('ten-times')).toBe(!usual && isUsualRating(toPascals(inches, 'inH2O') / 10))
        expect(found.includes('a-tenth')).toBe(!usual && isUsualRating(toPascals(inches, 'inH2O') * 10))
      }),
      { seed: 9 },
    )
  })

  test.each([
    [150, 'inH2O', 'pascals-as-inches'],
    [4.2, 'inH2O', 'millibars-as-inches'],
    [0.6, 'Pa', 'inches-as-pascals'],
    [1.5, 'Pa', 'millibars-as-pascals'],
    [150, 'mbar', 'pascals-as-millibars'],
    [0.2, 'mbar', 'inches-as-millibars'],
    [150, 'kPa', 'pascals-as-kilopascals'],
    [150, 'hPa', 'pascals-as-hectopascals'],
    [0.6, 'psi', 'inches-as-psi'],
    [0.6, 'mmH2O', 'inches-as-millimeters'],
    [0.6, 'inHg', 'inches-as-inches-of-mercury'],
  ] as const)('%d %s may be %s', (value, unit, code) => {
    expect(codes(value, unit, 'rating')).toContain(code)
  })

  test('millibars and hectopascals are the same and never taken for each other', () => {
    expect(codes(60, 'hPa', 'rating').join()).not.toContain('millibars-as')
  })

  test('a reading is doubted only above the range and never asks for confirmation', () => {
    expect(codes(0, 'inH2O', 'reading')).toEqual([])
    expect(codes(0.01, 'Pa', 'reading')).toEqual([])
    expect(codes(6, 'inH2O', 'reading')).toContain('ten-times')
    expect(codes(1e6, 'Pa', 'reading')).toEqual(['outside-usual-range'])
  })

  test('refuse a value that is not finite', () => {
    expect(() => plausibilityWarnings(Number.NaN, 'Pa', 'rating')).toThrow(RangeError)
  })
})
