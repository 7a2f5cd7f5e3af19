import { describe, expect, test } from 'vitest'
import { changeWords, shareChange } from '@/app/callbacks/letter/changeWords'
import { caseShare } from '@/lib/records/view/callbacks/caseShare'

const share = (count: number, of: number) =>
  caseShare(
    Array.from({ length: of }, (_, place) => ({ id: String(place) })),
    ({ id }) => Number(id) < count,
  )

describe('shareChange(month, before, isOpen): what changed in so many of so many', () => {
  test('is said in shares: the same count of fewer jobs is not the same', () => {
    expect(shareChange(share(3, 17), share(3, 21), false)).toBe(
      '18\u00a0% against 14\u00a0%: chance alone can make that',
    )
  })

  test('intervals that do not meet are more than chance easily makes, in either direction', () => {
    expect(shareChange(share(18, 20), share(2, 20), false)).toBe(
      '90\u00a0% against 10\u00a0%: more than chance easily makes',
    )
    expect(shareChange(share(2, 20), share(18, 20), false)).toMatch(/^10.*: more than chance easily makes$/)
  })

  test('a month that can still grow is not compared', () => {
    expect(shareChange(share(2, 12), share(5, 11), true)).toBe('open, not compared')
  })

  test.each([
    [9, 10],
    [10, 9],
    [0, 30],
  ])('%i against %i jobs: too few', (month, before) => {
    expect(shareChange(share(0, month), share(0, before), false)).toBe('too few to compare')
  })

  test('ten each are compared', () => {
    expect(shareChange(share(1, 10), share(1, 10), false)).toContain('10\u00a0% against 10\u00a0%')
  })
})

describe('changeWords(month, before): what changed in a count', () => {
  test.each([
    [3, 3, 'the same'],
    [3, 5, '2 fewer'],
    [5, 3, '2 more'],
  ])('%i after %i: %s', (month, before, words) => {
    expect(changeWords(month, before)).toBe(words)
  })
})
