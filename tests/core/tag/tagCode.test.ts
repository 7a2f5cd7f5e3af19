import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  codeInTagLink,
  groupedTagCode,
  isTagCode,
  makeTagCode,
  readTagCode,
  tagAlphabet,
  tagLink,
} from '@/lib/core/tag'

const random = fc.array(fc.integer({ min: 0, max: 28 }), { minLength: 11, maxLength: 11 })
const codes = random.map(makeTagCode)
const places = fc.integer({ min: 0, max: 11 })
const put = (code: string, at: number, character: string) =>
  code.slice(0, at) + character + code.slice(at + 1)

describe('makeTagCode', () => {
  test('ends with the character that makes the weighed sum 0, as worked by hand', () => {
    // Σ n·(n−1) for n = 1…11 is 440, and 440 mod 29 = 5; 12·x ≡ −5 ≡ 24 (mod 29) has x = 2.
    expect(makeTagCode([0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10])).toBe('0123456789A2')
  })

  test('makes a code that is read back as itself, and different numbers make different codes', () => {
    fc.assert(
      fc.property(random, random, (one, other) => {
        const code = makeTagCode(one)
        expect(readTagCode(code)).toEqual({ ok: true, value: code })
        expect(makeTagCode(other) === code).toBe(String(one) === String(other))
      }),
    )
  })

  test('throws a RangeError for too few numbers, or one that is out of range', () => {
    expect(() => makeTagCode([1, 2])).toThrow(RangeError)
    expect(() => makeTagCode([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 29])).toThrow(RangeError)
    expect(() => makeTagCode([0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0.5])).toThrow(RangeError)
  })
})

describe('readTagCode', () => {
  test('reads a code in groups, in small letters, and with look-alikes typed for what the tag has', () => {
    fc.assert(
      fc.property(codes, (code) => {
        const typed = groupedTagCode(code)
          .toLowerCase()
          .replaceAll('0', 'o')
          .replaceAll('1', 'l')
          .replaceAll('8', 'b')
        expect(readTagCode(typed)).toEqual({ ok: true, value: code })
      }),
    )
  })

  test('one wrong character is always told', () => {
    fc.assert(
      fc.property(codes, places, fc.constantFrom(...tagAlphabet), (code, at, character) => {
        fc.pre(code[at] !== character)
        expect(readTagCode(put(code, at, character))).toMatchObject({ problem: { code: 'tag-misread' } })
      }),
    )
  })

  test('two neighbours that changed places are always told', () => {
    fc.assert(
      fc.property(codes, fc.integer({ min: 0, max: 10 }), (code, at) => {
        const [one, other] = [code[at]!, code[at + 1]!]
        fc.pre(one !== other)
        const swapped = put(put(code, at, other), at + 1, one)
        expect(readTagCode(swapped)).toMatchObject({ problem: { code: 'tag-misread' } })
      }),
    )
  })

  test('anything else is no tag, and no text makes it throw', () => {
    expect(readTagCode('OM-7731')).toMatchObject({ problem: { code: 'not-a-tag' } })
    expect(readTagCode('')).toMatchObject({ problem: { code: 'not-a-tag' } })
    fc.assert(fc.property(fc.string({ unit: 'binary' }), (text) => typeof readTagCode(text).ok === 'boolean'))
  })
})

describe('codeInTagLink', () => {
  test('finds the code of a tag’s own link, whatever name the server has today', () => {
    fc.assert(
      fc.property(codes, fc.webUrl({ withFragments: false }), (code, url) => {
        const link = tagLink(new URL(url).origin, code)
        expect(codeInTagLink(link)).toBe(code)
        expect(link).not.toMatch(/furnace|[0-9a-f]{8}-/)
      }),
    )
  })

  test('other links, other texts and codes with a slip are no tag', () => {
    const code = '0123456789A2'
    expect(isTagCode(code)).toBe(true)
    for (const read of [
      code,
      `/t?c=${code}`,
      `https://team.example/furnace?c=${code}`,
      'https://team.example/t?c=0123456789A3',
      'https://team.example/t',
      'OM-7731',
    ])
      expect(codeInTagLink(read), read).toBeUndefined()
  })
})
