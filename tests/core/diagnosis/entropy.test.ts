import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { entropyBits, expectedBits } from '@/lib/core/diagnosis'

const shares = (parts: readonly number[]) =>
  parts.map((part) => part / parts.reduce((sum, one) => sum + one, 0))
const parts = (length: number) =>
  fc.array(fc.integer({ min: 1, max: 100 }), { minLength: length, maxLength: length })
const tables = fc
  .tuple(fc.integer({ min: 1, max: 6 }), fc.integer({ min: 2, max: 4 }))
  .chain(([hypotheses, outcomes]) =>
    fc.record({
      prior: parts(hypotheses).map(shares),
      rows: fc.array(parts(outcomes).map(shares), { minLength: hypotheses, maxLength: hypotheses }),
    }),
  )
const outcomesOf = (rows: number[][]) => rows[0]!.map((_, outcome) => rows.map((row) => row[outcome]!))

describe('entropyBits(probabilities)', () => {
  test.each([
    ['a fair coin: 1 bit', [0.5, 0.5], 1],
    ['eight equal chances: 3 bits', new Array<number>(8).fill(1 / 8), 3],
    ['certainty: 0 bits', [0, 1, 0], 0],
    [
      'a half, a quarter and two eighths: 1.75 bits (Cover & Thomas, example 2.1.2, from memory)',
      [0.5, 0.25, 0.125, 0.125],
      1.75,
    ],
  ])('%s', (_, probabilities, bits) => {
    expect(entropyBits(probabilities)).toBeCloseTo(bits, 12)
  })

  test.each([[[1.5, -0.5]], [[Number.NaN]], [[2]]])('throws at %j', (wrong) => {
    expect(() => entropyBits(wrong)).toThrow(RangeError)
  })
})

describe('expectedBits(probabilities, outcomes)', () => {
  test('is the mutual information by its other definition: Σ p(h, o) · log2 (p(h, o) / p(h) p(o))', () => {
    fc.assert(
      fc.property(tables, ({ prior, rows }) => {
        const outcomes = outcomesOf(rows)
        let bits = 0
        for (const chances of outcomes) {
          const chance = prior.reduce((sum, one, at) => sum + one * chances[at]!, 0)
          prior.forEach((one, at) => {
            bits += one * chances[at]! * Math.log2(chances[at]! / chance)
          })
        }
        expect(expectedBits(prior, outcomes)).toBeCloseTo(bits, 11)
      }),
      { seed: 20260310, numRuns: 200 },
    )
  })

  test('is never below 0, never above what there is to know, and 0 where every hypothesis says the same', () => {
    fc.assert(
      fc.property(tables, ({ prior, rows }) => {
        const bits = expectedBits(prior, outcomesOf(rows))
        expect(bits >= 0 && bits <= entropyBits(prior) + 1e-12).toBe(true)
        expect(expectedBits(prior, outcomesOf(rows.map(() => rows[0]!)))).toBeCloseTo(0, 12)
      }),
      { seed: 20260311, numRuns: 200 },
    )
  })

  test('throws when an outcome has no chance under some hypothesis', () => {
    expect(() => expectedBits([0.5, 0.5], [[1]])).toThrow(RangeError)
  })
})
