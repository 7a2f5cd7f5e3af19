import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type RankedStanding, worthVerifyingNext } from '@/lib/core/callbacks'
import { deepFreeze } from '../diagnosis/anyDiagnosis'

const standings: RankedStanding[] = deepFreeze([
  { key: 'verified', level: 'Verified', probability: 0.995 },
  { key: 'supported', level: 'Supported', probability: 0.95 },
  { key: 'unverified', level: 'Unverified', probability: 0.75 },
  { key: 'disputed', level: 'In dispute', probability: 0.93 },
  { key: 'none', level: 'Not on file', probability: 0 },
])
const looked = (times: Record<string, number>) =>
  deepFreeze(Object.entries(times).map(([key, count]) => ({ key, times: count })))

// The weighing is common practice, no published source.
describe('worthVerifyingNext(standings, lookups)', () => {
  test('lookups times doubt: 20 · 0.05 = 1, 12 · 0.25 = 3, and every lookup of a dispute or of nothing', () => {
    const ranked = worthVerifyingNext(
      standings,
      looked({ supported: 20, unverified: 12, disputed: 4, none: 2 }),
    )
    expect(ranked.map(({ key, lookupsInDoubt }) => [key, lookupsInDoubt])).toEqual([
      ['disputed', 4],
      ['unverified', 3],
      ['none', 2],
      ['supported', expect.closeTo(1, 12)],
    ])
  })

  test('a verified rating is not listed, however often it is looked up; nor one that nobody looks up', () => {
    expect(worthVerifyingNext(standings, looked({ verified: 1000, unverified: 0 }))).toEqual([])
    expect(worthVerifyingNext(standings, [])).toEqual([])
  })

  test('looked up without any standing is not on file', () => {
    expect(worthVerifyingNext([], looked({ unknown: 3 }))).toEqual([
      { key: 'unknown', level: 'Not on file', lookups: 3, doubt: 1, lookupsInDoubt: 3 },
    ])
  })

  test('more lookups, or less certainty, never lead to a lower place', () => {
    const anyRating = fc.record({
      probability: fc.double({ min: 0, max: 1, noNaN: true }),
      times: fc.integer({ min: 1, max: 50 }),
    })
    fc.assert(
      fc.property(fc.array(anyRating, { minLength: 1, maxLength: 12 }), fc.nat(11), (ratings, chosen) => {
        const key = `${chosen % ratings.length}`
        const place = (more: number, lessCertain: number) =>
          worthVerifyingNext(
            ratings.map(({ probability }, at): RankedStanding => {
              const changed = `${at}` === key ? probability * lessCertain : probability
              return { key: `${at}`, level: 'Unverified', probability: changed }
            }),
            ratings.map(({ times }, at) => ({ key: `${at}`, times: `${at}` === key ? times + more : times })),
          ).findIndex((one) => one.key === key)
        expect(place(5, 1)).toBeLessThanOrEqual(place(0, 1))
        expect(place(0, 0.5)).toBeLessThanOrEqual(place(0, 1))
      }),
      { seed: 20260412, numRuns: 200 },
    )
  })

  test('lookups of one key add up, and the order of anything does not matter', () => {
    const lookups = deepFreeze([...looked({ unverified: 5, disputed: 1 }), ...looked({ unverified: 7 })])
    const ranked = worthVerifyingNext(standings, lookups)
    expect(ranked).toMatchObject([{ key: 'unverified', lookups: 12 }, { key: 'disputed' }])
    expect(worthVerifyingNext(standings.toReversed(), lookups.toReversed())).toEqual(ranked)
  })

  test('two standings of a key, a probability or a number that cannot be: RangeError', () => {
    expect(() => worthVerifyingNext([standings[0]!, standings[0]!], [])).toThrow('one standing for each key')
    expect(() => worthVerifyingNext([{ ...standings[0]!, probability: 1.1 }], [])).toThrow(
      'probabilities from 0 to 1',
    )
    expect(() => worthVerifyingNext([], looked({ a: -1 }))).toThrow(
      new RangeError('worthVerifyingNext requires numbers of lookups, 0 or more'),
    )
  })
})
