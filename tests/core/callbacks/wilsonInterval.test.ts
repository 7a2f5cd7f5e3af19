import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { wilsonInterval } from '@/lib/core/callbacks'

const settings = { seed: 20260412, numRuns: 300 }
const anyShare = fc
  .integer({ min: 1, max: 500 })
  .chain((of) => fc.tuple(fc.integer({ min: 0, max: of }), fc.constant(of)))
const anyConfidence = fc.double({ min: 0.5, max: 0.999, noNaN: true })

describe('wilsonInterval(hits, of, confidence)', () => {
  test('stays within 0 and 1 and holds the share', () => {
    fc.assert(
      fc.property(anyShare, anyConfidence, ([hits, of], confidence) => {
        const [low, high] = wilsonInterval(hits, of, confidence)
        expect(0 <= low && low <= hits / of && hits / of <= high && high <= 1).toBe(true)
      }),
      settings,
    )
  })

  test('misses are the complement of hits', () => {
    fc.assert(
      fc.property(anyShare, anyConfidence, ([hits, of], confidence) => {
        const [low, high] = wilsonInterval(hits, of, confidence)
        const [otherLow, otherHigh] = wilsonInterval(of - hits, of, confidence)
        expect(otherLow).toBeCloseTo(1 - high, 12)
        expect(otherHigh).toBeCloseTo(1 - low, 12)
      }),
      settings,
    )
  })

  test('its ends are the shares that a score test at that confidence would just not reject', () => {
    fc.assert(
      fc.property(anyShare, ([hits, of]) => {
        for (const end of wilsonInterval(hits, of, 0.95)) {
          if (end === 0 || end === 1) continue
          const score = (hits / of - end) / Math.sqrt((end * (1 - end)) / of)
          expect(Math.abs(score)).toBeCloseTo(1.959964, 4)
        }
      }),
      settings,
    )
  })

  test.each([
    [0, 0, 0.95, '0 ≤ hits ≤ of, of > 0'],
    [3, 2, 0.95, '0 ≤ hits ≤ of, of > 0'],
    [-1, 2, 0.95, '0 ≤ hits ≤ of, of > 0'],
    [1, 2, 1, 'a confidence between 0 and 1'],
  ])('%d of %d at %d: RangeError, requires %s', (hits, of, confidence, message) => {
    expect(() => wilsonInterval(hits, of, confidence)).toThrow(
      new RangeError(`wilsonInterval requires ${message}`),
    )
  })
})
