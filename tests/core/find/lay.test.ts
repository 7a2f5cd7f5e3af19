import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { lay } from '@/lib/core/find/lay'
import { foldLookAlikes } from '@/lib/core/find/lookAlikes'

const forms = (folded: string) => ({ folded, alike: foldLookAlikes(folded) })
const lie = (typed: string, text: string, ends: 'free' | 'whole') => lay(forms(typed))(forms(text), ends)

/** The definition of the optimal string alignment distance, written out as a recursion, in tenths of a slip. */
function alignmentDistance(one: string, other: string, swaps = true): number {
  const step = (a: string, b: string) => (a === b ? 0 : foldLookAlikes(a) === foldLookAlikes(b) ? 1 : 10)
  const known = new Map<string, number>()
  const distance = (i: number, j: number): number => {
    if (i === 0 || j === 0) return 10 * (i + j)
    const name = `${i},${j}`
    const before = known.get(name)
    if (before !== undefined) return before
    const ways = [
      distance(i - 1, j) + 10,
      distance(i, j - 1) + 10,
      distance(i - 1, j - 1) + step(one[i - 1]!, other[j - 1]!),
    ]
    const crossed =
      swaps &&
      i > 1 &&
      j > 1 &&
      step(one[i - 1]!, other[j - 2]!) < 10 &&
      step(one[i - 2]!, other[j - 1]!) < 10
    if (crossed) ways.push(distance(i - 2, j - 2) + 10)
    known.set(name, Math.min(...ways))
    return Math.min(...ways)
  }
  return distance(one.length, other.length)
}

const substrings = (text: string) => {
  const all = ['']
  for (let from = 0; from < text.length; from++) {
    for (let to = from + 1; to <= text.length; to++) all.push(text.slice(from, to))
  }
  return all
}

const short = (letters: string, maxLength: number) =>
  fc.string({ unit: fc.constantFrom(...letters), minLength: 1, maxLength })

describe("lay(typed)(text, 'whole')", () => {
  test('gives the known distances: KITTEN to SITTING 3 (Levenshtein); CA to ABC 3, not 2, since a swapped pair is not touched again (Boytsov 2011)', () => {
    expect(lie('KITTEN', 'SITTING', 'whole').slips).toBe(3)
    expect(lie('CA', 'ABC', 'whole').slips).toBe(3)
  })

  test('counts one for a wrong, missing, doubled or swapped character, a tenth for a look-alike', () => {
    expect(lie('KZ94', 'KZ93', 'whole').slips).toBe(1)
    expect(lie('KZ3', 'KZ93', 'whole').slips).toBe(1)
    expect(lie('KZ993', 'KZ93', 'whole').slips).toBe(1)
    expect(lie('ZK93', 'KZ93', 'whole').slips).toBe(1)
    expect(lie('K293', 'KZ93', 'whole').slips).toBe(0.1)
  })

  test('is the distance by its definition (property)', () => {
    fc.assert(
      fc.property(short('AB0O1', 6), short('AB0O1', 6), (typed, text) => {
        expect(lie(typed, text, 'whole').slips).toBe(alignmentDistance(typed, text) / 10)
      }),
      { seed: 7, numRuns: 400 },
    )
  })

  test('a wildcard in the text takes any run for nothing', () => {
    expect(lie('XY80A12', 'XY80*12', 'whole')).toMatchObject({ slips: 0, leftOver: 0 })
    expect(lie('XY81A12', 'XY80**12', 'whole').slips).toBe(1)
    expect(lie('XY8012', 'XY80*12', 'whole').slips).toBe(0)
    expect(lie('ABC', '*', 'whole').slips).toBe(0)
  })

  test('with wildcards it is the least distance to anything the text stands for, swaps across a wildcard apart (brute force)', () => {
    const runs = ['', ...'AB', 'AA', 'AB', 'BA', 'BB', 'AAA', 'ABA', 'BAB', 'BBB', 'AAB', 'ABB', 'BAA', 'BBA']
    fc.assert(
      fc.property(short('AB', 3), short('AB*', 4), (typed, text) => {
        fc.pre((text.match(/\*/g) ?? []).length < 3)
        const standsFor = [...text].reduce(
          (made, sign) =>
            made.flatMap((front) => (sign === '*' ? runs.map((run) => front + run) : [front + sign])),
          [''],
        )
        const least = (swaps: boolean) =>
          Math.min(...standsFor.map((number) => alignmentDistance(typed, number, swaps)))
        const { slips } = lie(typed, text, 'whole')
        expect(slips).toBeGreaterThanOrEqual(least(true) / 10)
        expect(slips).toBeLessThanOrEqual(least(false) / 10)
      }),
      { seed: 8, numRuns: 100 },
    )
  })
})

describe("lay(typed)(text, 'free')", () => {
  test('lets the piece lie in the middle or the tail for nothing', () => {
    expect(lie('906', 'KZ90613', 'free')).toEqual({ slips: 0, leftOver: 4, taken: [2, 3, 4] })
    expect(lie('613', 'KZ90613', 'free')).toEqual({ slips: 0, leftOver: 4, taken: [4, 5, 6] })
  })

  test('is the least distance to any part of the text (brute force)', () => {
    fc.assert(
      fc.property(short('AB0O1', 5), short('AB0O1', 7), (typed, text) => {
        const least = Math.min(...substrings(text).map((part) => alignmentDistance(typed, part)))
        expect(lie(typed, text, 'free').slips).toBe(least / 10)
      }),
      { seed: 9, numRuns: 200 },
    )
  })

  test('takes places that agree but for look-alikes and swaps, each once, in order (property)', () => {
    fc.assert(
      fc.property(short('AB0O1', 6), short('AB0O1', 9), (typed, text) => {
        const { taken, leftOver } = lie(typed, text, 'free')
        expect([...new Set(taken)].sort((one, other) => one - other)).toEqual(taken)
        expect(taken.length).toBeLessThanOrEqual(Math.min(typed.length, text.length - leftOver))
        for (const place of taken) expect(foldLookAlikes(typed)).toContain(foldLookAlikes(text[place]!))
      }),
      { seed: 10, numRuns: 500 },
    )
  })

  test('an empty text holds nothing', () => {
    expect(lie('KZ9', '', 'free')).toEqual({ slips: 3, leftOver: 0, taken: [] })
  })

  test('may be used again for texts of any length', () => {
    const piece = lay(forms('KZ9'))
    expect([
      piece(forms('K'), 'free').slips,
      piece(forms('AAAAKZ9AAAA'), 'free').slips,
      piece(forms('KZ'), 'free').slips,
    ]).toEqual([2, 0, 1])
  })
})
