import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  pressureNumeral,
  pressureUnits,
  readPressureText,
  spellDigits,
  spellPressure,
  toPascals,
} from '@/lib/core/pressure'

const words = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine']

describe('spellPressure', () => {
  test('negative zero point six five inches', () => {
    expect(
      spellPressure({ pascals: toPascals(0.65, 'inH2O'), unit: 'inH2O', decimals: 2, sense: 'suction' }),
    ).toBe('negative zero point six five inches')
  })

  test.each([
    ['-0.65 in. w.c.', 'negative zero point six five inches'],
    ['0.60 in. w.c.', 'zero point six zero inches'],
    ['0.06 in. w.c.', 'zero point zero six inches'],
    ['.5 in. w.c.', 'zero point five inches'],
    ['+1.70 in. w.c.', 'positive one point seven zero inches'],
    ['150 Pa', 'one five zero pascals'],
    ['-1.3 mbar', 'negative one point three millibars'],
    ['1.30 hPa', 'one point three zero hectopascals'],
    ['0.149 kPa', 'zero point one four nine kilopascals'],
    ['15 mm H2O', 'one five millimeters of water'],
    ['0.044 inHg', 'zero point zero four four inches of mercury'],
    ['0.02 psi', 'zero point zero two pounds per square inch'],
  ])('%s is spoken with every digit that was written: %s', (text, spoken) => {
    const read = readPressureText(text)
    expect(read.ok && spellPressure(read.value)).toBe(spoken)
  })

  test('says nothing of a sense that is not stated', () => {
    expect(spellPressure({ pascals: 150, unit: 'Pa', sense: 'not stated' })).toBe('one five zero pascals')
  })

  test('spellDigits reads a tolerance, digit by digit', () => {
    expect(spellDigits(toPascals(0.05, 'inH2O'), 'inH2O', 2)).toBe('zero point zero five')
  })

  test('what is spoken is what is shown, digit for digit', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 1e6, noNaN: true }),
        fc.constantFrom(...pressureUnits),
        (pascals, unit) => {
          const heard = spellDigits(pascals, unit)
            .split(' ')
            .map((word) => (word === 'point' ? '.' : words.indexOf(word)))
            .join('')
          expect(heard).toBe(pressureNumeral(pascals, unit))
        },
      ),
      { seed: 4 },
    )
  })

  test('refuses a signed pressure: the sense carries the sign', () => {
    expect(() => spellDigits(-1, 'Pa')).toThrow('spellDigits requires a magnitude, not -1')
    expect(() => spellPressure({ pascals: -1, unit: 'Pa', sense: 'suction' })).toThrow(RangeError)
    expect(() => spellPressure({ pascals: Number.NaN, unit: 'Pa', sense: 'suction' })).toThrow(RangeError)
  })
})
