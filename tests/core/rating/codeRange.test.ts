import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { compareCodes, isInCodeRange } from '@/lib/core/rating/codeRange'

describe('compareCodes', () => {
  test.each([
    ['A9', 'A10', -1],
    ['a-10', 'A 10', 0],
    ['１２', '12', 0],
    ['0012', '12', 0],
    ['B', 'A', 1],
    ['2024B', '2024A', 1],
    ['99999999999999999999', '100000000000000000000', -1],
  ])('orders %s and %s', (first, second, order) => {
    expect(compareCodes(first, second)).toBe(order)
  })

  test.each([
    ['A9', '9A'],
    ['A', 'AB'],
    ['A1', 'A1B'],
    ['', 'A'],
    ['--', '1'],
  ])('cannot order %j and %j without the maker’s word', (first, second) => {
    expect(compareCodes(first, second)).toBeUndefined()
  })

  test('is the opposite the other way round', () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 8 }), fc.string({ maxLength: 8 }), (first, second) => {
        const order = compareCodes(first, second)
        expect(compareCodes(second, first)).toBe(order === undefined ? undefined : 0 - order)
      }),
      { seed: 20260112, numRuns: 500 },
    )
  })
})

describe('isInCodeRange', () => {
  test('includes both ends, and an end left out is open', () => {
    expect(isInCodeRange('B', { from: 'B', to: 'D' }, compareCodes)).toBe(true)
    expect(isInCodeRange('D', { from: 'B', to: 'D' }, compareCodes)).toBe(true)
    expect(isInCodeRange('E', { from: 'B', to: 'D' }, compareCodes)).toBe(false)
    expect(isInCodeRange('A', { to: 'D' }, compareCodes)).toBe(true)
    expect(isInCodeRange('Z', { from: 'D' }, compareCodes)).toBe(true)
  })

  test('is undefined when it cannot be told, and false as soon as one end rules it out', () => {
    expect(isInCodeRange('AB', { from: 'A', to: 'D' }, compareCodes)).toBeUndefined()
    expect(isInCodeRange('E', { from: '1', to: 'D' }, compareCodes)).toBe(false)
  })
})
