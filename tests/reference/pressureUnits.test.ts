import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  fromPascals,
  inchOfWater4CelsiusPascals,
  inchOfWater60FahrenheitPascals,
  pascalsPer,
  pressureUnits,
  toPascals,
  ucumCode,
} from '@/lib/core/pressure'

/** Half a unit in the last printed digit, the tolerance of a printed value; a hair more for the binary halves. */
const agrees = (computed: number, printed: number, lastDigit: number) =>
  expect(Math.abs(computed - printed)).toBeLessThanOrEqual(lastDigit / 2 + 1e-12)

describe('NIST Special Publication 811 (2008), Appendix B.8, as transcribed in the R package NISTunits 1.0.1', () => {
  const table = [
    ['inH2O', 249.0889, 0.0001],
    ['mmH2O', 9.80665, 0.00001],
    ['mbar', 100, 0],
    ['hPa', 100, 0],
    ['kPa', 1000, 0],
    ['Pa', 1, 0],
    ['inHg', 3386.389, 0.001],
    ['psi', 6894.757, 0.001],
  ] as const

  test.each(table)('one %s is %d Pa, to the printed digits', (unit, printed, lastDigit) => {
    agrees(toPascals(1, unit), printed, lastDigit)
  })

  test('every unit is in the table', () => {
    expect(table.map(([unit]) => unit).sort()).toEqual([...pressureUnits].sort())
  })

  test('the inch of water at 4 °C is 249.082 Pa, and at 60 °F 248.84 Pa', () => {
    expect(inchOfWater4CelsiusPascals).toBe(249.082)
    expect(inchOfWater60FahrenheitPascals).toBe(248.84)
  })

  // Densities of water: 999.972 kg/m³ at 4 °C, 999.016 at 60 °F (from memory); height 0.0254 m, standard gravity.
  test('the two warm inches follow from the density of water', () => {
    agrees(999.972 * 9.80665 * 0.0254, inchOfWater4CelsiusPascals, 0.001)
    agrees(999.016 * 9.80665 * 0.0254, inchOfWater60FahrenheitPascals, 0.01)
  })

  test('the three inches of water are within 0.2 % of each other', () => {
    for (const inch of [inchOfWater4CelsiusPascals, inchOfWater60FahrenheitPascals])
      expect(Math.abs(pascalsPer.inH2O / inch - 1)).toBeLessThan(0.002)
  })
})

describe('definitions', () => {
  test('the conventional inch of water is exactly 249.08891 Pa: 25.4 mm × 9.80665 Pa/mm', () => {
    expect(pascalsPer.inH2O).toBe(249.08891)
    expect(BigInt(Math.round(pascalsPer.inH2O * 1e6))).toBe(254n * 980665n)
  })

  test('the pound-force per square inch is 6894.757293168361 Pa: 0.45359237 × 9.80665 / 0.0254²', () => {
    expect(pascalsPer.psi).toBeCloseTo(6894.757293168361, 9)
  })

  // NIST SP 811, App. B.8: 1.333224E+02 Pa for the conventional millimetre of mercury (value from memory).
  test('the inch of mercury is 25.4 conventional millimetres of mercury of 133.322387415 Pa', () => {
    expect(pascalsPer.inHg).toBeCloseTo(25.4 * 133.322387415, 6)
  })

  // The Unified Code for Units of Measure, table of units: m[H2O] = 9.80665 kPa, [in_i'H2O] = m[H2O]·[in_i]/m,
  // [psi] = [lbf_av]/[sin_i]; m[Hg] = 133.3220 kPa, three millionths below NIST's conventional mercury.
  test('the UCUM codes name units of these sizes', () => {
    expect(ucumCode).toEqual({
      inH2O: "[in_i'H2O]",
      mmH2O: 'mm[H2O]',
      Pa: 'Pa',
      hPa: 'hPa',
      kPa: 'kPa',
      mbar: 'mbar',
      inHg: "[in_i'Hg]",
      psi: '[psi]',
    })
    expect(toPascals(1, 'inH2O')).toBeCloseTo(9806.65 * 0.0254, 9)
    expect(toPascals(1, 'mmH2O')).toBeCloseTo(9806.65 / 1000, 12)
    expect(Math.abs(toPascals(1, 'inHg') / (133322 * 0.0254) - 1)).toBeLessThan(4e-6)
  })
})

describe('pairs printed in installation and service manuals of furnaces', () => {
  // Examples of form, read in public manuals: 0.20 in. w.c. (50 Pa), −0.55 (137), −0.60 (149), −1.70 (423), −2.00 (498).
  test.each([
    [0.2, 50],
    [0.55, 137],
    [0.6, 149],
    [0.35, 87],
    [1.7, 423],
    [2, 498],
    [1.5, 374],
  ])('%d in. w.c. is printed as %d Pa', (inches, printed) => {
    agrees(toPascals(inches, 'inH2O'), printed, 1)
  })

  test('one inch of water is 249 Pa, to three digits (manual of a digital gauge, 2017)', () => {
    agrees(toPascals(1, 'inH2O'), 249, 1)
  })

  test('one psi is 27.7 in. of water, to three digits (HVACR NewsMagazine, December 2017, page 36)', () => {
    agrees(fromPascals(toPascals(1, 'psi'), 'inH2O'), 27.7, 0.1)
  })
})

describe('toPascals and fromPascals', () => {
  test('there and back gives the same number, within the last bits', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        fc.constantFrom(...pressureUnits),
        (value, unit) => {
          const back = fromPascals(toPascals(value, unit), unit)
          expect(Math.abs(back - value)).toBeLessThanOrEqual(Math.abs(value) * 4e-16 + Number.MIN_VALUE)
        },
      ),
      { seed: 1 },
    )
  })

  test('keep the sign and the order', () => {
    expect(toPascals(-0.6, 'inH2O')).toBe(-toPascals(0.6, 'inH2O'))
    expect(fromPascals(-150, 'inH2O')).toBeLessThan(fromPascals(-100, 'inH2O'))
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuse %d', (number) => {
    expect(() => toPascals(number, 'Pa')).toThrow(RangeError)
    expect(() => fromPascals(number, 'Pa')).toThrow(RangeError)
  })

  test('refuse a number that leaves the range of numbers in pascals', () => {
    expect(() => toPascals(1e308, 'psi')).toThrow('toPascals requires a finite pressure')
  })

  test('refuse a unit that is not known, even one that every object has', () => {
    for (const unit of ['furlong', 'toString', '__proto__']) {
      expect(() => toPascals(1, unit as 'Pa')).toThrow(`toPascals requires a known unit, not ${unit}`)
      expect(() => fromPascals(1, unit as 'Pa')).toThrow(RangeError)
    }
  })
})
