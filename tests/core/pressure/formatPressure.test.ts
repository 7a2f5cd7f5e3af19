import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  formatPressure,
  fromPascals,
  pressureNumeral,
  pressureUnits,
  toPascals,
  unitLabel,
  usualDecimals,
} from '@/lib/core/pressure'

describe('formatPressure', () => {
  // One pressure in every unit, worked by hand from the factors of NIST SP 811, App. B.8: 0.60 × 249.08891 = 149.453 Pa.
  test.each([
    ['inH2O', '0.60 in. w.c.'],
    ['mmH2O', '15.2 mm w.c.'],
    ['Pa', '149 Pa'],
    ['hPa', '1.49 hPa'],
    ['kPa', '0.149 kPa'],
    ['mbar', '1.49 mbar'],
    ['inHg', '0.0441 in. Hg'],
    ['psi', '0.0217 psi'],
  ] as const)('0.60 in. w.c. in %s is %s', (unit, shown) => {
    expect(formatPressure(toPascals(0.6, 'inH2O'), unit)).toBe(shown)
  })

  test('a step of the usual decimals is never coarser than 0.04 in. w.c., so that no switch band is hidden', () => {
    for (const unit of pressureUnits)
      expect(fromPascals(toPascals(10 ** -usualDecimals[unit], unit), 'inH2O')).toBeLessThanOrEqual(0.0401)
  })

  test('shows as many decimals as it is told', () => {
    expect(formatPressure(toPascals(0.6, 'inH2O'), 'inH2O', 3)).toBe('0.600 in. w.c.')
    expect(formatPressure(149.6, 'Pa', 0)).toBe('150 Pa')
  })

  test('a negative pressure has a true minus sign, and what rounds to nothing has none', () => {
    expect(formatPressure(-150, 'Pa')).toBe('−150 Pa')
    expect(formatPressure(-0.2, 'Pa')).toBe('0 Pa')
    expect(formatPressure(-0, 'inH2O')).toBe('0.00 in. w.c.')
  })

  test('rounds by no more than half a step', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        fc.constantFrom(...pressureUnits),
        (pascals, unit) => {
          const shown = Number(pressureNumeral(pascals, unit).replace('−', '-'))
          const step = 10 ** -usualDecimals[unit]
          expect(Math.abs(shown - fromPascals(pascals, unit))).toBeLessThanOrEqual(step / 2 + 1e-9)
        },
      ),
      { seed: 3 },
    )
  })

  test('is the numeral and the label of the unit', () => {
    for (const unit of pressureUnits)
      expect(formatPressure(150, unit)).toBe(`${pressureNumeral(150, unit)} ${unitLabel[unit]}`)
  })

  test.each([-1, 0.5, 21, Number.NaN])('refuses %d decimals', (decimals) => {
    expect(() => formatPressure(1, 'Pa', decimals)).toThrow(RangeError)
  })

  test('refuses a pressure that is not finite', () => {
    expect(() => formatPressure(Number.NaN, 'Pa')).toThrow(RangeError)
    expect(() => formatPressure(Number.POSITIVE_INFINITY, 'inH2O')).toThrow(RangeError)
  })
})
