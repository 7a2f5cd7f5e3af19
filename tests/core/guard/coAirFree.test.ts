import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { coAirFree } from '@/lib/core/guard'

describe('coAirFree(measuredPpm, oxygenPercent)', () => {
  // The formula of combustion analysis, measured × 20.9 / (20.9 − O₂): from memory, common practice.
  test('60 ppm at 8 % oxygen is 97.2 ppm air-free', () => {
    expect(coAirFree(60, 8)).toBeCloseTo(1254 / 12.9, 12)
    expect(Math.round(coAirFree(60, 8))).toBe(97)
  })

  test('with no oxygen left the measured figure is the air-free one', () => {
    expect(coAirFree(35, 0)).toBe(35)
  })

  test('at half the oxygen of air it is twice the measured figure', () => {
    expect(coAirFree(40, 10.45)).toBeCloseTo(80, 12)
  })

  const ppm = fc.double({ min: 0, max: 100_000, noNaN: true })
  const oxygen = fc.double({ min: 0, max: 20, noNaN: true })

  test('it is never below what was measured, and grows with the oxygen', () => {
    fc.assert(
      fc.property(ppm, oxygen, oxygen, (measured, one, other) => {
        const [less, more] = [Math.min(one, other), Math.max(one, other)]
        expect(coAirFree(measured, less)).toBeGreaterThanOrEqual(measured)
        expect(coAirFree(measured, more)).toBeGreaterThanOrEqual(coAirFree(measured, less))
      }),
      { seed: 20260112 },
    )
  })

  test('mixed with air and brought back, a sample is what it was', () => {
    fc.assert(
      fc.property(ppm, fc.double({ min: 0, max: 0.95, noNaN: true }), (undiluted, airShare) => {
        const measured = undiluted * (1 - airShare)
        expect(coAirFree(measured, 20.9 * airShare)).toBeCloseTo(undiluted, 6)
      }),
      { seed: 20260112 },
    )
  })

  test('a figure that no meter shows is the caller’s mistake', () => {
    for (const measured of [-1, Number.NaN, Infinity])
      expect(() => coAirFree(measured, 8)).toThrow(
        new RangeError(`coAirFree requires CO of zero or more ppm, not ${measured}`),
      )
    for (const percent of [-0.1, 20.9, 25, Number.NaN])
      expect(() => coAirFree(60, percent)).toThrow(
        new RangeError(`coAirFree requires oxygen from 0 to below 20.9 %, not ${percent}`),
      )
  })
})
