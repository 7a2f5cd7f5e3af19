import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type ChartPoint, type CountOf, controlChart } from '@/lib/core/callbacks'
import { deepFreeze } from '../diagnosis/anyDiagnosis'

const settings = { seed: 20260412, numRuns: 200 }
const anyPoints = fc
  .array(
    fc
      .integer({ min: 0, max: 40 })
      .chain((of) => fc.record({ count: fc.integer({ min: 0, max: of }), of: fc.constant(of) })),
    { minLength: 1, maxLength: 30 },
  )
  .filter((points) => points.some(({ of }) => of > 0))
  .map(deepFreeze)

const counted = (points: readonly ChartPoint[]) =>
  points.flatMap((point) => (point.verdict === 'nothing counted' ? [] : [point]))

describe('controlChart(kind, points)', () => {
  test('worked by hand: 1 of 10 and 3 of 10: centre 0.2, upper 0.2 + 3√(0.2·0.8/10), lower cut off at 0', () => {
    const points: CountOf[] = deepFreeze([
      { count: 1, of: 10 },
      { count: 3, of: 10 },
    ])
    expect(controlChart('p', points)[0]).toEqual({
      count: 1,
      of: 10,
      verdict: 'within',
      value: 0.1,
      centre: 0.2,
      lower: 0,
      upper: expect.closeTo(0.2 + 3 * Math.sqrt(0.016), 12),
    })
  })

  test('limits stop at 0, those of shares also at 1, and hold the centre', () => {
    fc.assert(
      fc.property(anyPoints, fc.constantFrom('p' as const, 'u' as const), (points, kind) => {
        for (const { lower, centre, upper } of counted(controlChart(kind, points))) {
          expect(0 <= lower && lower <= centre && centre <= upper).toBe(true)
          if (kind === 'p') expect(upper).toBeLessThanOrEqual(1)
        }
      }),
      settings,
    )
  })

  test('the less was counted, the wider the limits', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const bySize = counted(controlChart('u', points)).toSorted((a, b) => a.of - b.of)
        const widths = bySize.map(({ upper }) => upper)
        widths.forEach((width, place) => {
          if (place > 0) expect(width).toBeLessThanOrEqual(widths[place - 1]! + 1e-12)
        })
      }),
      settings,
    )
  })

  test('the centre is the total count over the total, whatever the order of the points', () => {
    fc.assert(
      fc.property(anyPoints, (points) => {
        const total = (of: 'count' | 'of') => points.reduce((sum, point) => sum + point[of], 0)
        const chart = controlChart('p', points)
        for (const { centre } of counted(chart)) expect(centre).toBeCloseTo(total('count') / total('of'), 12)
        const verdicts = controlChart('p', points.toReversed()).map(({ verdict }) => verdict)
        expect(verdicts.toReversed()).toEqual(chart.map(({ verdict }) => verdict))
      }),
      settings,
    )
  })

  test('one unit each: u and c give the same limits', () => {
    const counts = deepFreeze([3, 0, 7, 2, 15].map((count) => ({ count, of: 1 })))
    expect(controlChart('u', counts)).toEqual(controlChart('c', counts))
  })

  test('a month without jobs has no value, no limits and no say', () => {
    const with0 = controlChart(
      'p',
      deepFreeze([
        { count: 2, of: 20 },
        { count: 0, of: 0 },
        { count: 1, of: 15 },
      ]),
    )
    expect(with0[1]).toEqual({ count: 0, of: 0, verdict: 'nothing counted' })
    expect([with0[0], with0[2]]).toEqual(
      controlChart('p', [
        { count: 2, of: 20 },
        { count: 1, of: 15 },
      ]),
    )
  })

  test('all alike: every point on the centre, none outside, also where the limits have no width', () => {
    for (const count of [0, 5]) {
      const chart = controlChart('p', [
        { count, of: 5 },
        { count, of: 5 },
      ])
      expect(chart.map(({ verdict }) => verdict)).toEqual(['within', 'within'])
      expect(chart[0]).toMatchObject({ centre: count / 5, lower: count / 5, upper: count / 5 })
    }
  })

  test('no points, no chart', () => {
    expect(controlChart('c', [])).toEqual([])
  })

  test.each([
    ['p', { count: 3, of: 2 }, 'requires count ≤ of'],
    ['u', { count: 1, of: 0 }, 'nothing counted of nothing'],
    ['u', { count: -1, of: 2 }, 'counts of 0 or more'],
    ['p', { count: 1, of: Number.NaN }, 'counts of 0 or more'],
    ['p', { count: 0, of: 0 }, 'requires a point with something counted'],
  ] as const)('%s of %j: RangeError, %s', (kind, point, message) => {
    expect(() => controlChart(kind, [point])).toThrow(RangeError)
    expect(() => controlChart(kind, [point])).toThrow(message)
  })
})
