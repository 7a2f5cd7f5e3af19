import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Catalogue, type Context, type PastCase, packCases } from '@/lib/core/diagnosis'
import { measureDistances, weighNeighbours } from '@/lib/core/diagnosis/neighbourhood'
import { readObservations } from '@/lib/core/diagnosis/readObservations'
import { type AnyDiagnosis, anyDiagnosis } from './anyDiagnosis'
import { plainDistance, plainWeights } from './plainModel'

const catalogue: Catalogue = {
  causes: [{ id: 'x', prior: 1 }],
  findings: ['f0', 'f1', 'f2', 'f3'].map((id) => ({ id, values: ['seen', 'ruled out'] })),
  context: [
    { id: 'site', weight: 0.2 },
    { id: 'fuel', weight: 0.1 },
  ],
}
const observed = { f0: 'seen', f1: 'seen', f2: 'seen', f3: 'seen' }
const withDisagreements = (id: string, howMany: number): PastCase => ({
  id,
  findings: Object.fromEntries(
    Object.keys(observed).map((f, place) => [f, place < howMany ? 'ruled out' : 'seen']),
  ),
  cause: { main: 'x', status: 'confirmed' },
})

function weigh(asked: Pick<AnyDiagnosis, 'catalogue' | 'cases' | 'observed' | 'context'>, k: number) {
  const packed = packCases(asked.catalogue, asked.cases)
  const distances = measureDistances(
    packed,
    asked.catalogue,
    readObservations(packed, asked.observed),
    asked.context,
  )
  const near = weighNeighbours(packed, distances, k)
  return packed.ids.map((id, at) => ({
    id,
    distance: near.distances[near.classes[at]!]!,
    weight: packed.main[at]! < 0 ? 0 : near.weights[near.classes[at]!]!,
  }))
}

describe('measureDistances', () => {
  test('is (disagreements + 1) / (checked in both + 2): 1/6 in full agreement over four, 1/2 with nothing in common', () => {
    const cases = [withDisagreements('a', 0), withDisagreements('b', 3), { id: 'c', findings: {} }]
    const context = { site: 's', fuel: 'gas' }
    const inContext = cases.map((one) => ({ ...one, context }))
    expect(
      weigh({ catalogue, cases: inContext, observed, context }, 1).map(({ distance }) => distance),
    ).toEqual([expect.closeTo(1 / 6, 12), expect.closeTo(4 / 6, 12), expect.closeTo(1 / 2, 12)])
  })

  test('a context field adds its weight where it differs, half of it where either does not state it', () => {
    const contexts: Context[] = [
      { site: 's', fuel: 'gas' },
      { site: 't', fuel: 'gas' },
      { site: 's', fuel: 'oil' },
      { site: 't', fuel: 'oil' },
      { fuel: 'gas' },
      {},
    ]
    const cases = contexts.map((context, place) => ({ id: `c${place}`, findings: {}, context }))
    const distancesFrom = (context: Record<string, string>) =>
      weigh({ catalogue, cases, observed: {}, context }, 1).map(
        ({ distance }) => Math.round(distance * 1e9) / 1e9,
      )
    expect(distancesFrom({ site: 's', fuel: 'gas' })).toEqual([0.5, 0.7, 0.6, 0.8, 0.6, 0.65])
    expect(distancesFrom({ fuel: 'gas' })).toEqual([0.6, 0.6, 0.7, 0.7, 0.6, 0.65])
    expect(distancesFrom({ site: 'new', fuel: 'new' })).toEqual([0.8, 0.8, 0.8, 0.8, 0.7, 0.65])
  })

  test('agrees with the plain distance on any catalogue', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const plain = new Map(
          asked.cases.map((one) => [
            one.id,
            plainDistance(asked.catalogue, asked.observed, asked.context, one),
          ]),
        )
        for (const { id, distance } of weigh(asked, 1)) expect(distance).toBeCloseTo(plain.get(id)!, 12)
      }),
      { seed: 20260303, numRuns: 150 },
    )
  })
})

describe('weighNeighbours', () => {
  const cases = [0, 1, 1, 2, 3].map((howMany, place) => withDisagreements(`c${place}`, howMany))
  // Distances 1/6, 2/6, 2/6, 3/6, 4/6, plus half of both context weights, 0.15, which nobody states.
  const d = [1 / 6, 2 / 6, 2 / 6, 3 / 6, 4 / 6].map((share) => share + 0.15)

  test('the bandwidth is the first distance beyond the k-th, ties kept, weights rescaled to their number: by hand', () => {
    const weights = weigh({ catalogue, cases, observed, context: {} }, 2).map(({ weight }) => weight)
    const raw = [1 - d[0]! / d[3]!, 1 - d[1]! / d[3]!, 1 - d[2]! / d[3]!]
    const sum = raw.reduce((total, weight) => total + weight, 0)
    expect(weights).toEqual([...raw.map((weight) => expect.closeTo((weight * 3) / sum, 12)), 0, 0])
    // k = 3 ends with the same tie as k = 2.
    expect(weigh({ catalogue, cases, observed, context: {} }, 3).map(({ weight }) => weight)).toEqual(weights)
  })

  test.each([5, 6, Infinity])('with no case beyond the k-th every case weighs 1: k = %d', (k) => {
    const weights = weigh({ catalogue, cases, observed, context: {} }, k).map(({ weight }) => weight)
    expect(weights).toEqual([1, 1, 1, 1, 1])
  })

  test('cases without a listed cause are not counted among the k', () => {
    const without = [{ ...cases[0]!, cause: undefined }, ...cases.slice(1)]
    const weights = weigh({ catalogue, cases: without, observed, context: {} }, 2).map(({ weight }) => weight)
    expect(weights).toEqual([0, expect.closeTo(1, 12), expect.closeTo(1, 12), 0, 0])
  })

  test('leaves out the one case it is told to', () => {
    const packed = packCases(catalogue, cases)
    const distances = measureDistances(packed, catalogue, readObservations(packed, observed), {})
    expect(weighNeighbours(packed, distances, 2, 0)).toMatchObject({ kept: 2 })
    expect(weighNeighbours(packed, distances, 2)).toMatchObject({ kept: 3 })
  })

  test('agrees with the plain weights on any catalogue', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const settings = { ...asked.settings, statusWeights: { presumed: 1, confirmed: 1, durable: 1 } }
        const plain = plainWeights({ ...asked, settings })
        for (const { id, weight } of weigh(asked, settings.neighbours)) {
          expect(weight).toBeCloseTo(plain.get(id) ?? 0, 11)
        }
      }),
      { seed: 20260304, numRuns: 150 },
    )
  })
})
