import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { slipProbability } from '@/lib/core/rating/slipKernel'

// Slip shares are common practice, no published source: decimal 0.35, another switch point 0.25, anywhere 0.40.

const none = { otherAction: [], sister: [] }
const whole = (pascals: number) => ({ pascals, stepPascals: 1 })

describe('slipProbability', () => {
  test('ten times and a tenth share 0.35; without known points their share falls evenly on all other values', () => {
    // 0.175 + (0.40 + 0.25)/39 = 0.19166667
    expect(slipProbability(150, whole(1500), none, 40)).toBeCloseTo(0.175 + 0.65 / 39, 12)
    expect(slipProbability(150, whole(15), none, 40)).toBeCloseTo(0.175 + 0.65 / 39, 12)
    expect(slipProbability(150, whole(160), none, 40)).toBeCloseTo(0.65 / 39, 12)
  })

  test('known values share 0.25, each counted once, the true one not at all', () => {
    const known = { otherAction: [140, 150], sister: [100, 140] }
    expect(slipProbability(150, whole(140), known, 40)).toBeCloseTo(0.125 + 0.4 / 39, 12)
    expect(slipProbability(150, whole(100), known, 40)).toBeCloseTo(0.125 + 0.4 / 39, 12)
    expect(slipProbability(150, whole(160), known, 40)).toBeCloseTo(0.4 / 39, 12)
  })

  test('a known value that is ten times as well has both shares', () => {
    expect(slipProbability(150, whole(1500), { otherAction: [1500], sister: [] }, 40)).toBeCloseTo(
      0.175 + 0.25 + 0.4 / 39,
      12,
    )
  })

  test('nothing has no tenth: its share falls on all other values', () => {
    expect(slipProbability(0, whole(10), none, 40)).toBeCloseTo(1 / 39, 12)
  })

  test('over all the values that a wrong report can name it sums to one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 20 }),
        fc.subarray([7, 33, 71]),
        fc.integer({ min: 6, max: 60 }),
        (tens, sister, plausibleValues) => {
          const truth = tens * 10
          const known = { otherAction: [], sister }
          // M − 1 other values: ten times, a tenth, the known ones, and fillers that no slip leads to.
          const named = [...new Set([truth * 10, truth / 10, ...sister])].filter((value) => value !== truth)
          const fillers = Array.from({ length: plausibleValues - 1 - named.length }, (_, at) => 1e5 + at * 10)
          const sum = [...named, ...fillers]
            .map((value) =>
              slipProbability(truth, { pascals: value, stepPascals: 1 }, known, plausibleValues),
            )
            .reduce((total, probability) => total + probability, 0)
          expect(sum).toBeCloseTo(1, 9)
        },
      ),
      { seed: 20260112, numRuns: 200 },
    )
  })
})
