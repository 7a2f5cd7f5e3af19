import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { bigramCount, bigramNumber, bigramsOf, boundary, characterClass } from '@/lib/core/find/bigrams'
import { layPostings } from '@/lib/core/find/postings'
import { slip, slipKinds } from './invented'

const pair = (before: string, here: string) =>
  bigramNumber(
    before === '' ? boundary : characterClass(before.charCodeAt(0)),
    here === '' ? boundary : characterClass(here.charCodeAt(0)),
  )

describe('bigramsOf(folded)', () => {
  test('counts the beginning and the end as neighbours', () => {
    expect(bigramsOf('KZ9')).toEqual([pair('', 'K'), pair('K', 'Z'), pair('Z', '9'), pair('9', '')])
  })

  test('names a pair once', () => {
    expect(bigramsOf('4444')).toEqual([pair('', '4'), pair('4', '4'), pair('4', '')])
  })

  test('spans no wildcard', () => {
    expect(bigramsOf('KZ*9*')).toEqual([pair('', 'K'), pair('K', 'Z')])
  })

  test('has none for nothing', () => {
    expect(bigramsOf('')).toEqual([])
  })

  test('keeps digits and capitals apart from each other, and every number in its bounds', () => {
    const plain = [...'0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ']
    expect(new Set(plain.map((sign) => characterClass(sign.charCodeAt(0)))).size).toBe(36)
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 30 }), (text) => {
        for (const bigram of bigramsOf(text)) expect(bigram >= 0 && bigram < bigramCount).toBe(true)
      }),
      { seed: 3 },
    )
  })

  test('one slip takes away at most three different pairs (property)', () => {
    const number = fc.stringMatching(/^[0-9A-Z]{3,14}$/)
    fc.assert(
      fc.property(
        number,
        fc.constantFrom(...slipKinds),
        fc.double({ min: 0, max: 0.999, noNaN: true }),
        (right, kind, chance) => {
          const slipped = bigramsOf(slip(() => chance, right, kind))
          expect(bigramsOf(right).filter((bigram) => !slipped.includes(bigram)).length).toBeLessThanOrEqual(3)
        },
      ),
      { seed: 4, numRuns: 500 },
    )
  })
})

describe('layPostings(rows, eachPair)', () => {
  test('lays out the lists as plain arrays would (brute force)', () => {
    const pairs = fc.array(fc.tuple(fc.nat(5), fc.nat(1000)), { maxLength: 50 })
    fc.assert(
      fc.property(pairs, (given) => {
        const { starts, values } = layPostings(6, (report) => {
          for (const [row, value] of given) report(row, value)
        })
        for (let row = 0; row < 6; row++) {
          const plain = given.filter(([of]) => of === row).map(([, value]) => value)
          expect([...values.subarray(starts[row]!, starts[row + 1]!)]).toEqual(plain)
        }
      }),
      { seed: 5 },
    )
  })
})
