import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { foldLookAlikes } from '@/lib/core/find/lookAlikes'
import { fold, foldWithPositions } from '@/lib/core/find/normalise'

describe('fold(text)', () => {
  test('makes capitals and drops dashes, blanks and signs', () => {
    expect(fold(' kz-90/4b ')).toBe('KZ904B')
    expect(fold('kz–90—4\u00a0b')).toBe('KZ904B')
  })

  test('makes compatibility characters plain (Unicode Standard Annex #15, figure 6: ﬁ, 2⁵, and full-width forms)', () => {
    expect(fold('ﬁ')).toBe('FI')
    expect(fold('2⁵')).toBe('25')
    expect(fold('ＫＺ－９０')).toBe('KZ90')
  })

  test('drops accents, composed or not (Unicode Standard Annex #15, figure 3: Å is A and a ring)', () => {
    expect(fold('Å')).toBe('A')
    expect(fold('A\u030a')).toBe('A')
    expect(fold('Ödenlund Øst Straße')).toBe('ODENLUNDOSTSTRASSE')
  })

  test('keeps letters of other scripts', () => {
    expect(fold('котёл 7')).toBe('КОТЕЛ7')
  })

  test('keeps a wildcard, full-width too', () => {
    expect(fold('xy80*12')).toBe('XY80*12')
    expect(fold('xy80＊12')).toBe('XY80*12')
  })

  test('gives nothing for text without a letter or digit', () => {
    for (const empty of ['', '  ', '—.-', '🔥', '\ud800']) expect(fold(empty)).toBe('')
  })

  test('folding twice changes nothing (property)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        expect(fold(fold(text))).toBe(fold(text))
      }),
      { seed: 1, numRuns: 500 },
    )
  })
})

describe('foldWithPositions(text)', () => {
  test('gives the same string as fold, and places that lie in the text in order (property)', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 40 }), (text) => {
        const { folded, starts, ends } = foldWithPositions(text)
        expect(folded).toBe(fold(text))
        expect([starts.length, ends.length]).toEqual([folded.length, folded.length])
        starts.forEach((start, at) => {
          expect(start).toBeLessThan(ends[at]!)
          expect(ends[at]!).toBeLessThanOrEqual(text.length)
          if (at > 0) expect(start).toBeGreaterThanOrEqual(starts[at - 1]!)
        })
      }),
      { seed: 2, numRuns: 500 },
    )
  })

  test('a mark belongs to the letter before it', () => {
    expect(foldWithPositions('a\u0308b')).toEqual({ folded: 'AB', starts: [0, 2], ends: [2, 3] })
  })

  test('one character that folds to two gives both its place', () => {
    expect(foldWithPositions('-ß')).toEqual({ folded: 'SS', starts: [1, 1], ends: [2, 2] })
  })
})

describe('foldLookAlikes(folded)', () => {
  test('makes 0/O, 1/I/L, 5/S, 8/B, 2/Z and 6/G one, and no others', () => {
    expect(foldLookAlikes('O0 I1L S5 B8 Z2 G6')).toBe('00 111 55 88 22 66')
    expect(foldLookAlikes('ACDEFHJKMNPQRTUVWXY3479')).toBe('ACDEFHJKMNPQRTUVWXY3479')
  })
})
