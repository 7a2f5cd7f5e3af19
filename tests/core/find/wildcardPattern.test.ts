import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { fitsPattern, isPattern, printedCharacters } from '@/lib/core/find/wildcardPattern'

describe('fitsPattern(pattern, whole)', () => {
  test('a wildcard stands for any run of characters, none included', () => {
    for (const whole of ['XY80A12', 'XY80AB12', 'XY8012', 'XY801212']) {
      expect(fitsPattern('XY80*12', whole), whole).toBe(true)
    }
  })

  test('everything printed has to be there, from end to end', () => {
    for (const whole of ['XY80A13', 'AXY80A12', 'XY80A12B', 'XY80', '']) {
      expect(fitsPattern('XY80*12', whole), whole).toBe(false)
    }
  })

  test('agrees with the regular expression .* (ECMAScript) on every small case (property)', () => {
    const short = (letters: string) => fc.string({ unit: fc.constantFrom(...letters), maxLength: 9 })
    fc.assert(
      fc.property(short('AB*'), short('AB'), (pattern, whole) => {
        const expression = new RegExp(`^${pattern.replaceAll('*', '.*')}$`)
        expect(fitsPattern(pattern, whole)).toBe(expression.test(whole))
      }),
      { seed: 6, numRuns: 2000 },
    )
  })

  test('a pattern full of wildcards does not take for ever', () => {
    const started = performance.now()
    expect(fitsPattern('*A'.repeat(200), `${'A'.repeat(199)}B`.repeat(2))).toBe(false)
    expect(performance.now() - started).toBeLessThan(1000)
  })
})

describe('isPattern(folded)', () => {
  test('has a wildcard and at least two printed characters', () => {
    expect(['XY*', '*X*Y', 'X*', '*', '', 'XY'].map(isPattern)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ])
    expect(printedCharacters('XY80**12')).toBe(6)
  })
})
