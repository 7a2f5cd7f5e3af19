import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { repairOrder, unlistedCause } from '@/lib/core/diagnosis'
import { deepFreeze } from './anyDiagnosis'

type Step = { cause: string; probability: number; danger: boolean }
const safe = (cause: string, probability: number): Step => ({ cause, probability, danger: false })

function permutations<T>(things: readonly T[]): T[][] {
  if (things.length === 0) return [[]]
  return things.flatMap((thing, at) =>
    permutations([...things.slice(0, at), ...things.slice(at + 1)]).map((rest) => [thing, ...rest]),
  )
}

/** Each cause in turn is supposed to be the true one, and the tests up to it are paid. */
function minutesByCases(
  order: readonly string[],
  ranked: readonly Step[],
  costs: Readonly<Record<string, number>>,
) {
  return ranked.reduce((sum, { cause, probability }) => {
    const tested = cause === unlistedCause ? order : order.slice(0, order.indexOf(cause) + 1)
    return sum + probability * tested.reduce((minutes, one) => minutes + costs[one]!, 0)
  }, 0)
}

const anySteps = fc
  .array(
    fc.record({
      part: fc.integer({ min: 0, max: 20 }),
      cost: fc.integer({ min: 0, max: 9 }),
      danger: fc.boolean(),
    }),
    {
      minLength: 1,
      maxLength: 6,
    },
  )
  .filter((made) => made.some(({ part }) => part > 0))
  .map((made) => {
    const sum = made.reduce((total, { part }) => total + part, 0)
    const ranked = made.map(({ part, danger }, at) => ({ cause: `c${at}`, probability: part / sum, danger }))
    return deepFreeze({ ranked, costs: Object.fromEntries(made.map(({ cost }, at) => [`c${at}`, cost])) })
  })

describe('repairOrder({ ranked, costs })', () => {
  test('four actions with a tie: tests 26.5 minutes, with repairs 90.0, the least of all 24 orders', () => {
    // Constructed for this test, by trying all 24 orders; no worked example with several actions was found in print. With repair costs 100, 20, 60, 15 the total is 90.0: the repairs add 63.5 in any
    // order, so the tests take 26.5.
    const ranked = [safe('1', 0.45), safe('2', 0.25), safe('3', 0.2), safe('4', 0.1)]
    const costs = { 1: 30, 2: 5, 3: 10, 4: 2 }
    expect(0.45 * 100 + 0.25 * 20 + 0.2 * 60 + 0.1 * 15).toBeCloseTo(63.5, 12)
    expect(repairOrder({ ranked, costs })).toEqual({
      order: ['2', '4', '3', '1'],
      expectedMinutes: expect.closeTo(26.5, 12),
    })
    expect(minutesByCases(['1', '2', '3', '4'], ranked, costs) + 63.5).toBeCloseTo(99.45, 12)
    expect(minutesByCases(['1', '3', '4', '2'], ranked, costs) + 63.5).toBeCloseTo(100.95, 12)
  })

  test('two causes: the first is checked first exactly when (1 − p)·C1 ≤ p·C2 (textbook problem)', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 99 }),
        fc.integer({ min: 1, max: 60 }),
        fc.integer({ min: 1, max: 60 }),
        (p, c1, c2) => {
          const ranked = [safe('1', p / 100), safe('2', 1 - p / 100)]
          fc.pre((100 - p) * c1 !== p * c2)
          expect(repairOrder({ ranked, costs: { 1: c1, 2: c2 } }).order[0]).toBe(
            (100 - p) * c1 < p * c2 ? '1' : '2',
          )
        },
      ),
      { seed: 20260314, numRuns: 300 },
    )
  })

  test('no other order that puts dangers first takes less, and the minutes are right: all permutations', () => {
    fc.assert(
      fc.property(anySteps, ({ ranked, costs }) => {
        const { order, expectedMinutes } = repairOrder({ ranked, costs })
        expect(expectedMinutes).toBeCloseTo(minutesByCases(order, ranked, costs), 9)
        const dangers = ranked.filter(({ danger }) => danger).map(({ cause }) => cause)
        expect(new Set(order.slice(0, dangers.length))).toEqual(new Set(dangers))
        for (const other of permutations(order)) {
          if (!other.slice(0, dangers.length).every((cause) => dangers.includes(cause))) continue
          expect(minutesByCases(other, ranked, costs)).toBeGreaterThanOrEqual(expectedMinutes - 1e-9)
        }
      }),
      { seed: 20260315, numRuns: 150 },
    )
  })

  test('seven causes against all 5,040 orders, one of them not on the list', () => {
    const listed = [0.3, 0.21, 0.15, 0.12, 0.1, 0.05, 0.02].map((probability, at) =>
      safe(`c${at}`, probability),
    )
    const costs = { c0: 40, c1: 12, c2: 25, c3: 3, c4: 15, c5: 1, c6: 8 }
    const ranked = [...listed, safe(unlistedCause, 0.05)]
    const { order, expectedMinutes } = repairOrder({ ranked, costs })
    const all = permutations(listed.map(({ cause }) => cause)).map((other) =>
      minutesByCases(other, ranked, costs),
    )
    expect(all).toHaveLength(5040)
    expect(expectedMinutes).toBeCloseTo(Math.min(...all), 9)
    expect(order).not.toContain(unlistedCause)
  })

  test('swapping two neighbours costs p_i·C_j − p_j·C_i, whatever else is in the list', () => {
    const ranked = [safe('a', 0.4), safe('b', 0.3), safe('c', 0.2), safe('d', 0.1)]
    const costs = { a: 7, b: 11, c: 2, d: 5 }
    const before = minutesByCases(['d', 'a', 'b', 'c'], ranked, costs)
    const after = minutesByCases(['d', 'b', 'a', 'c'], ranked, costs)
    expect(after - before).toBeCloseTo(0.4 * 11 - 0.3 * 7, 12)
  })

  test('a danger comes first however dear and unlikely, and a free test comes before all others', () => {
    const ranked = [
      safe('likely', 0.9),
      { cause: 'danger', probability: 0.01, danger: true },
      safe('free', 0.09),
    ]
    const costs = { likely: 1, danger: 500, free: 0 }
    expect(repairOrder({ ranked, costs }).order).toEqual(['danger', 'free', 'likely'])
  })

  test('nothing ranked, nothing to do', () => {
    expect(repairOrder({ ranked: [], costs: {} })).toEqual({ order: [], expectedMinutes: 0 })
  })

  test.each([undefined, -1, Number.NaN, Infinity])('throws when a test takes %s minutes', (minutes) => {
    const costs = { a: minutes as number }
    expect(() => repairOrder({ ranked: [safe('a', 1)], costs })).toThrow(RangeError)
  })
})
