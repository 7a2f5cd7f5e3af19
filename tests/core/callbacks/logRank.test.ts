import fc from 'fast-check'
import jstat from 'jstat'
import { describe, expect, test } from 'vitest'
import { type Lifetimes, logRank } from '@/lib/core/callbacks'
import { quadraticForm } from '@/lib/core/callbacks/quadraticForm'
import { deepFreeze } from '../diagnosis/anyDiagnosis'
import { anyLifetimes } from './made'

const settings = { seed: 20260412, numRuns: 150 }
const anyGroups = fc.array(anyLifetimes, { minLength: 2, maxLength: 5 }).map(deepFreeze)

const answered = (groups: readonly Lifetimes[]) => {
  const result = logRank(groups)
  if (!result.ok) throw new Error(result.problem.message)
  return result.value
}

describe('logRank(groups)', () => {
  test('worked by hand: A callbacks at 1, B at 2: (1 − 1/2)² / (1/4) = 1 at the first, nothing to learn at the second', () => {
    const groups = deepFreeze([
      { times: [1], events: [true] },
      { times: [2], events: [true] },
    ])
    const found = answered(groups)
    expect(found).toMatchObject({ chiSquare: 1, degreesOfFreedom: 1, observed: [1, 1], expected: [0.5, 1.5] })
    // P(χ²₁ > 1) = 0.3173, twice the normal tail beyond 1 (any table of the normal distribution).
    expect(found.pValue).toBeCloseTo(0.3173, 4)
  })

  test('groups that are alike differ by nothing: χ² 0, p 1', () => {
    fc.assert(
      fc.property(anyLifetimes, fc.integer({ min: 2, max: 4 }), (group, copies) => {
        const found = logRank(Array.from({ length: copies }, () => group))
        if (!found.ok) return
        expect(found.value.chiSquare).toBeCloseTo(0, 9)
        expect(found.value.pValue).toBeCloseTo(1, 4)
      }),
      settings,
    )
  })

  test('the order of the groups, and that of the cases in them, does not matter', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const turned = groups
          .toReversed()
          .map(({ times, events }) => ({ times: times.toReversed(), events: events.toReversed() }))
        const [one, other] = [logRank(groups), logRank(turned)]
        expect(one.ok).toBe(other.ok)
        if (!one.ok || !other.ok) return
        expect(one.value.degreesOfFreedom).toBe(other.value.degreesOfFreedom)
        expect(one.value.chiSquare).toBeCloseTo(other.value.chiSquare, 6)
      }),
      settings,
    )
  })

  test('as many events are expected as were observed, over all groups', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const found = logRank(groups)
        if (!found.ok) return
        const sum = (numbers: number[]) => numbers.reduce((total, one) => total + one, 0)
        expect(sum(found.value.expected)).toBeCloseTo(sum(found.value.observed), 9)
      }),
      settings,
    )
  })

  test('with two groups it is (O − E)²/V, summed over event times by the hypergeometric (brute force)', () => {
    fc.assert(
      fc.property(anyLifetimes, anyLifetimes, (a, b) => {
        const both = [...new Set([...a.times, ...b.times])]
        let difference = 0
        let variance = 0
        for (const time of both) {
          const count = ({ times, events }: Lifetimes) => ({
            n: times.filter((one) => one >= time).length,
            d: times.filter((one, place) => one === time && events[place]).length,
          })
          const [one, other] = [count(a), count(b)]
          const [n, d] = [one.n + other.n, one.d + other.d]
          difference += one.d - (d * one.n) / n
          if (n > 1) variance += (d * one.n * other.n * (n - d)) / (n * n * (n - 1))
        }
        const found = logRank([a, b])
        expect(found.ok).toBe(variance > 1e-12)
        if (found.ok) expect(found.value.chiSquare).toBeCloseTo(difference ** 2 / variance, 8)
      }),
      settings,
    )
  })

  test('the p-value is the upper tail of χ² as jstat has it', () => {
    fc.assert(
      fc.property(anyGroups, (groups) => {
        const found = logRank(groups)
        if (!found.ok) return
        const { chiSquare, degreesOfFreedom, pValue } = found.value
        expect(pValue).toBeCloseTo(1 - jstat.chisquare.cdf(chiSquare, degreesOfFreedom), 8)
      }),
      settings,
    )
  })

  test('a tail too thin for 1 − cdf is still told from nothing', () => {
    const groups = deepFreeze([
      {
        times: Array.from({ length: 200 }, (_, place) => place),
        events: Array.from({ length: 200 }, () => true),
      },
      { times: Array.from({ length: 200 }, () => 500), events: Array.from({ length: 200 }, () => false) },
    ])
    const { pValue } = answered(groups)
    expect(pValue).toBeGreaterThan(0)
    expect(pValue).toBeLessThan(1e-30)
  })

  test('a group that was gone before the first event takes no degree of freedom', () => {
    const early = { times: [1, 2], events: [false, false] }
    const groups = deepFreeze([
      { times: [5, 9, 12], events: [true, true, false] },
      { times: [7, 20], events: [true, false] },
    ])
    const [without, together] = [answered(groups), answered([...groups, early])]
    expect(together.degreesOfFreedom).toBe(without.degreesOfFreedom)
    expect(together.chiSquare).toBeCloseTo(without.chiSquare, 12)
    expect(together.expected[2]).toBe(0)
  })

  test('nothing happened, or everything at one moment: nothing-to-compare', () => {
    for (const event of [false, true]) {
      const group = deepFreeze({ times: [5, 5], events: [event, event] })
      expect(logRank([group, group])).toMatchObject({ ok: false, problem: { code: 'nothing-to-compare' } })
    }
    const empty = { times: [], events: [] }
    expect(logRank([empty, empty])).toMatchObject({ ok: false })
  })

  test('one group, or lifetimes of unequal length: RangeError', () => {
    expect(() => logRank([{ times: [1], events: [true] }])).toThrow('logRank requires at least two groups')
    expect(() =>
      logRank([
        { times: [1], events: [] },
        { times: [1], events: [true] },
      ]),
    ).toThrow(new RangeError('logRank requires as many events as times'))
  })
})

describe('quadraticForm(v, A): v′A⁻v', () => {
  test('worked by hand: A = [[2, 1], [1, 2]], v = (1, 0): A⁻¹ = [[2, −1], [−1, 2]]/3, so 2/3', () => {
    const found = quadraticForm(
      deepFreeze([1, 0]),
      deepFreeze([
        [2, 1],
        [1, 2],
      ]),
    )
    expect(found).toMatchObject({ value: expect.closeTo(2 / 3, 12), rank: 2 })
  })

  test('a matrix of rank 1 has one direction: A = aa′, v = 3a gives 9', () => {
    const a = [1, -2, 1]
    const matrix = a.map((row) => a.map((column) => row * column))
    const found = quadraticForm(
      a.map((one) => 3 * one),
      matrix,
    )
    expect(found).toMatchObject({ value: expect.closeTo(9, 12), rank: 1 })
  })

  test('nothing at all has rank 0', () => {
    expect(
      quadraticForm(
        [0, 0],
        [
          [0, 0],
          [0, 0],
        ],
      ),
    ).toEqual({ value: 0, rank: 0 })
  })
})
