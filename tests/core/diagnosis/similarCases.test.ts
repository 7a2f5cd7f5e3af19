import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type Catalogue, type PastCase, packCases, rankCauses, similarCases } from '@/lib/core/diagnosis'
import { anyDiagnosis, deepFreeze } from './anyDiagnosis'
import { plainDistance } from './plainModel'

const catalogue: Catalogue = deepFreeze({
  causes: [
    { id: 'blocked', prior: 1 },
    { id: 'worn', prior: 1 },
  ],
  findings: [
    { id: 'drip', values: ['seen', 'ruled out'] },
    { id: 'sound', values: ['low', 'fair', 'high'] },
    { id: 'visitor', values: ['seen', 'ruled out'], carries: 'context only' },
  ],
  context: [{ id: 'site', weight: 0.1 }],
})
const cases = deepFreeze<PastCase[]>([
  { id: 'far', findings: { drip: 'ruled out', sound: 'low' }, cause: { main: 'worn', status: 'durable' } },
  { id: 'near', findings: { drip: 'seen', sound: 'high', visitor: 'seen' }, context: { site: 'mill' } },
  { id: 'half', findings: { drip: 'seen', sound: 'low' }, context: { site: 'barn' } },
])
const asked = {
  cases: packCases(catalogue, cases),
  observed: { drip: 'seen', sound: 'high', visitor: 'ruled out' },
}

describe('similarCases({ cases, observed, context, k })', () => {
  test('shows agreements, disagreements and the context of the nearest cases, nearest first', () => {
    expect(similarCases({ ...asked, context: { site: 'mill' }, k: 2 })).toEqual([
      {
        id: 'near',
        distance: expect.closeTo(1 / 4, 12),
        agreements: ['drip', 'sound'],
        disagreements: [],
        sameContext: ['site'],
        otherContext: [],
        cause: undefined,
      },
      {
        id: 'half',
        distance: expect.closeTo(2 / 4 + 0.1, 12),
        agreements: ['drip'],
        disagreements: [{ finding: 'sound', now: 'high', before: 'low' }],
        sameContext: [],
        otherContext: [{ field: 'site', now: 'mill', before: 'barn' }],
        cause: undefined,
      },
    ])
  })

  test('gives all cases when asked for more than there are, and none when asked for none', () => {
    expect(similarCases({ ...asked, k: 9 }).map(({ id }) => id)).toEqual(['near', 'half', 'far'])
    expect(similarCases({ ...asked, k: 0 })).toEqual([])
    expect(similarCases({ cases: packCases(catalogue, []), observed: {}, k: 3 })).toEqual([])
  })

  test('are the k nearest by the plain distance, ties in the order of ids, on any catalogue', () => {
    fc.assert(
      fc.property(anyDiagnosis, fc.integer({ min: 0, max: 12 }), (any, k) => {
        const found = similarCases({ ...any, cases: packCases(any.catalogue, any.cases), k })
        const distances = any.cases
          .map((one) => plainDistance(any.catalogue, any.observed, any.context, one))
          .sort((a, b) => a - b)
        expect(found.map(({ distance }) => distance)).toEqual(
          distances.slice(0, k).map((distance) => expect.closeTo(distance, 12)),
        )
        found.slice(1).forEach(({ id, distance }, place) => {
          if (distance === found[place]!.distance) expect(id > found[place]!.id).toBe(true)
        })
      }),
      { seed: 20260307, numRuns: 150 },
    )
  })

  test.each([-1, 1.5, Number.NaN])('throws when asked for %d cases', (k) => {
    expect(() => similarCases({ ...asked, k })).toThrow(RangeError)
  })
})

describe('the similar cases of a ranked cause', () => {
  test('had that cause, carry weight, and are the nearest of them', () => {
    const history = ['a', 'b', 'c', 'd', 'e'].map((id, place): PastCase => {
      return {
        id,
        findings: { drip: place < 2 ? 'ruled out' : 'seen' },
        cause: { main: 'worn', status: 'durable' },
      }
    })
    const [worn] = rankCauses({
      catalogue,
      cases: history,
      observed: { drip: 'seen' },
      settings: { neighbours: 3, similarPerCause: 2 },
    })
    expect(worn!.cause).toBe('worn')
    expect(worn!.similarCases.map(({ id }) => id)).toEqual(['c', 'd'])
    const [again] = rankCauses({
      catalogue,
      cases: history,
      observed: { drip: 'seen' },
      settings: { neighbours: 3, similarPerCause: 9 },
    })
    expect(again!.similarCases.map(({ id }) => id)).toEqual(['c', 'd', 'e'])
  })
})
