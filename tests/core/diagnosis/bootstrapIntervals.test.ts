import betaQuantile from '@stdlib/stats-base-dists-beta-quantile'
import { describe, expect, test } from 'vitest'
import { type Catalogue, type PastCase, rankCauses } from '@/lib/core/diagnosis'
import { seededRandom } from '@/lib/core/seeded'

const catalogue: Catalogue = {
  causes: [
    { id: 'a', prior: 1 },
    { id: 'b', prior: 1 },
  ],
  findings: [{ id: 'drip', values: ['seen', 'ruled out'] }],
}
const casesOf = (main: string, howMany: number, seen: number): PastCase[] =>
  Array.from({ length: howMany }, (_, place) => ({
    id: `${main}${place}`,
    findings: { drip: place < seen ? 'seen' : 'ruled out' },
    cause: { main, status: 'confirmed' },
  }))
// The trade's figures weigh next to nothing, so that only the cases speak.
const settings = {
  priorStrength: 1e-9,
  findingStrength: 1e-9,
  unlistedPrior: 0,
  neighbours: Infinity,
  replicates: 4000,
}
const intervalOf = (cases: PastCase[], observed: Record<string, string>, more = {}) =>
  rankCauses({ catalogue, cases, observed, settings: { ...settings, ...more } }).find(
    ({ cause }) => cause === 'a',
  )!.interval90

describe('interval90', () => {
  test.each([
    [3, 2],
    [30, 10],
    [300, 100],
    [3000, 1000],
  ])('with %i cases of one cause and %i of the other it is the beta interval (Rubin 1981)', (a, b) => {
    // The share of a under Dirichlet(1, …, 1) over the cases is Beta(a, b); quantiles from @stdlib.
    const [low, high] = intervalOf([...casesOf('a', a, 0), ...casesOf('b', b, 0)], {})
    const width = betaQuantile(0.95, a, b) - betaQuantile(0.05, a, b)
    expect(Math.abs(low - betaQuantile(0.05, a, b))).toBeLessThan(0.06 * width)
    expect(Math.abs(high - betaQuantile(0.95, a, b))).toBeLessThan(0.06 * width)
  })

  test.each([20, 2000])(
    'with a finding it is what a plain bootstrap of %i single cases gives, groups or not',
    (each) => {
      const cases = [...casesOf('a', each, 0.8 * each), ...casesOf('b', each, 0.3 * each)]
      const random = seededRandom(77)
      const drawn = Array.from({ length: 1000 }, () => {
        const seen = { a: 0, b: 0 }
        for (const one of cases) {
          const weight = -Math.log(1 - random())
          if (one.findings.drip === 'seen') seen[one.cause!.main as 'a' | 'b'] += weight
        }
        // π(a)·θ(seen | a) is in proportion to the weight of the cases of a in which it was seen.
        return seen.a / (seen.a + seen.b)
      }).sort((x, y) => x - y)
      const [low, high] = intervalOf(cases, { drip: 'seen' })
      const width = drawn[949]! - drawn[50]!
      expect(Math.abs(low - drawn[50]!)).toBeLessThan(0.15 * width)
      expect(Math.abs(high - drawn[949]!)).toBeLessThan(0.15 * width)
    },
  )

  test('is the same for the same seed and moves with another', () => {
    const cases = [...casesOf('a', 7, 3), ...casesOf('b', 5, 1)]
    const once = intervalOf(cases, { drip: 'seen' }, { replicates: 200 })
    expect(intervalOf(cases, { drip: 'seen' }, { replicates: 200 })).toEqual(once)
    expect(intervalOf(cases, { drip: 'seen' }, { replicates: 200, seed: 2 })).not.toEqual(once)
  })

  test('narrows as the same history is lived through again and again', () => {
    const width = ([low, high]: readonly [number, number]) => high - low
    const histories = [10, 100, 1000].map((each) => [
      ...casesOf('a', each, each / 2),
      ...casesOf('b', each, each / 5),
    ])
    const [few, some, many] = histories.map((cases) => width(intervalOf(cases, { drip: 'seen' })))
    expect(few).toBeGreaterThan(2 * some!)
    expect(some).toBeGreaterThan(2 * many!)
  })
})
