import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Catalogue,
  defaultRankingSettings,
  type Observations,
  type PastCase,
  packCases,
  type RankedCause,
  rankCauses,
  unlistedCause,
} from '@/lib/core/diagnosis'
import { anyCase, anyCatalogue, anyDiagnosis, deepFreeze } from './anyDiagnosis'
import { plainPosterior } from './plainModel'

const runs = { seed: 20260301, numRuns: 150 }
const probabilityOf = (ranked: readonly RankedCause[], cause: string) =>
  ranked.find((one) => one.cause === cause)!.probability
const probabilities = (ranked: readonly RankedCause[]) =>
  Object.fromEntries(ranked.map(({ cause, probability }) => [cause, probability]))

const pump: Catalogue = deepFreeze({
  causes: [
    { id: 'blocked', prior: 3, likelihoods: { drip: { seen: 0.8, 'ruled out': 0.2 } } },
    { id: 'worn', prior: 1, likelihoods: { drip: { seen: 0.2, 'ruled out': 0.8 } }, danger: true },
  ],
  findings: [
    { id: 'drip', values: ['seen', 'ruled out'] },
    { id: 'door', values: ['open', 'shut', 'ajar'] },
    { id: 'visitor', values: ['seen', 'ruled out'], carries: 'context only' },
  ],
  context: [{ id: 'site', weight: 0.5 }],
})
const plain = { unlistedPrior: 0, neighbours: Infinity }

describe('rankCauses, worked by hand', () => {
  test('with no case and no finding it gives the trade’s base rates, and 0.05 to what is not on the list', () => {
    expect(probabilities(rankCauses({ catalogue: pump, cases: [], observed: {} }))).toEqual({
      blocked: expect.closeTo(0.95 * 0.75, 12),
      worn: expect.closeTo(0.95 * 0.25, 12),
      [unlistedCause]: expect.closeTo(0.05, 12),
    })
  })

  test('with no case a finding is weighed by the trade’s chances: 0.75 · 0.8 against 0.25 · 0.2', () => {
    const ranked = rankCauses({ catalogue: pump, cases: [], observed: { drip: 'seen' }, settings: plain })
    expect(probabilities(ranked)).toEqual({
      blocked: expect.closeTo(0.6 / 0.65, 12),
      worn: expect.closeTo(0.05 / 0.65, 12),
    })
    expect(ranked.map(({ cause, danger }) => [cause, danger])).toEqual([
      ['blocked', false],
      ['worn', true],
    ])
  })

  test('a cause outside the list has the listed causes’ likelihoods, pooled by their base rates', () => {
    // drip seen: 0.75 · 0.8 + 0.25 · 0.2 = 0.65 for the pool; 0.95 · 0.65 for the list together.
    const ranked = rankCauses({ catalogue: pump, cases: [], observed: { drip: 'seen' } })
    expect(probabilityOf(ranked, unlistedCause)).toBeCloseTo(0.05, 12)
    expect(probabilityOf(ranked, 'blocked')).toBeCloseTo((0.95 * 0.6) / 0.65, 12)
  })

  test('cases are added to pseudo-counts: A = 20 and m = 4 by hand', () => {
    // Two worn cases, one with the drip seen. π: blocked 15/22, worn 7/22. θ(drip): 0.8 and (0.8 + 1)/(4 + 2) = 0.3.
    const cases: PastCase[] = [
      { id: 'c1', findings: { drip: 'seen' }, cause: { main: 'worn', status: 'confirmed' } },
      { id: 'c2', findings: { drip: 'ruled out' }, cause: { main: 'worn', status: 'durable' } },
    ]
    const ranked = rankCauses({ catalogue: pump, cases, observed: { drip: 'seen' }, settings: plain })
    expect(probabilityOf(ranked, 'blocked')).toBeCloseTo((15 * 0.8) / (15 * 0.8 + 7 * 0.3), 12)
    expect(ranked[1]).toMatchObject({ cause: 'worn', weightOfCases: 2 })
  })

  test('a presumed cause counts half, and a finding not checked counts for nobody', () => {
    // π: blocked 15/20.5, worn 5.5/20.5. The case was not checked for the drip, so θ stays 0.8 and 0.2.
    const cases: PastCase[] = [
      { id: 'c1', findings: { drip: 'not checked' }, cause: { main: 'worn', status: 'presumed' } },
    ]
    const ranked = rankCauses({ catalogue: pump, cases, observed: { drip: 'seen' }, settings: plain })
    expect(probabilityOf(ranked, 'worn')).toBeCloseTo((5.5 * 0.2) / (5.5 * 0.2 + 15 * 0.8), 12)
  })

  test('a contributing cause gets its share of the case, the main cause the rest', () => {
    const cases: PastCase[] = [
      { id: 'c1', findings: {}, cause: { main: 'worn', contributing: 'blocked', status: 'confirmed' } },
    ]
    const ranked = rankCauses({ catalogue: pump, cases, observed: {}, settings: plain })
    expect(probabilityOf(ranked, 'worn')).toBeCloseTo(5.7 / 21, 12)
    expect(ranked.map(({ weightOfCases }) => weightOfCases)).toEqual([0.3, 0.7])
    expect(ranked.map(({ similarCases }) => similarCases.map(({ id }) => id))).toEqual([['c1'], ['c1']])
  })

  test('a case whose cause is not on the list, or not known, teaches nothing about those that are', () => {
    const cases: PastCase[] = [
      { id: 'c1', findings: { drip: 'seen' }, cause: { main: 'lightning', status: 'confirmed' } },
      { id: 'c2', findings: { drip: 'seen' } },
    ]
    const asked = { catalogue: pump, observed: { drip: 'seen' } }
    expect(rankCauses({ ...asked, cases })).toEqual(rankCauses({ ...asked, cases: [] }))
  })

  test('nearer cases weigh more: the case of the same site outweighs one from elsewhere', () => {
    const from = (site: string, main: string): PastCase => ({
      id: `${site} ${main}`,
      findings: {},
      context: { site },
      cause: { main, status: 'confirmed' },
    })
    const cases = [from('here', 'worn'), from('there', 'blocked')]
    const asked = { catalogue: pump, cases, observed: {}, context: { site: 'here' } }
    // k = 1: the bandwidth is the other site's distance, 1/2 + 0.5, so only the case from here has weight, 1.
    const ranked = rankCauses({ ...asked, settings: { neighbours: 1, unlistedPrior: 0 } })
    expect(probabilityOf(ranked, 'worn')).toBeCloseTo(6 / 21, 12)
    expect(probabilityOf(rankCauses({ ...asked, settings: plain }), 'worn')).toBeCloseTo(6 / 22, 12)
  })

  test('a long history outgrows the trade’s own ranking', () => {
    const cases = Array.from({ length: 2000 }, (_, place): PastCase => {
      return { id: `c${place}`, findings: { drip: 'seen' }, cause: { main: 'worn', status: 'confirmed' } }
    })
    const ranked = rankCauses({ catalogue: pump, cases, observed: { drip: 'seen' } })
    expect(ranked[0]!.cause).toBe('worn')
    expect(ranked[0]!.probability).toBeGreaterThan(0.9)
  })
})

describe('rankCauses, properties on any catalogue', () => {
  test('agrees with a plain, slow reading of the published formulas', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const expected = plainPosterior(asked)
        const ranked = rankCauses(asked)
        expect(ranked).toHaveLength(expected.size)
        for (const { cause, probability } of ranked) expect(probability).toBeCloseTo(expected.get(cause)!, 11)
      }),
      { ...runs, numRuns: 400 },
    )
  })

  test('probabilities are numbers from 0 to 1, add up to 1, and come in falling order', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const found = rankCauses(asked).map(({ probability }) => probability)
        for (const probability of found) expect(probability >= 0 && probability <= 1).toBe(true)
        expect(found.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1, 12)
        expect(found).toEqual(found.toSorted((a, b) => b - a))
      }),
      runs,
    )
  })

  test('the order of findings, cases and context doesn’t matter, to the last bit', () => {
    fc.assert(
      fc.property(anyDiagnosis, fc.integer({ min: 1, max: 1000 }), (asked, turn) => {
        const turned = <T>(list: readonly T[]) =>
          list.toSorted((a, b) => scatter(list.indexOf(a), turn) - scatter(list.indexOf(b), turn))
        const reordered = (record: Readonly<Record<string, string>>) =>
          Object.fromEntries(turned(Object.entries(record)))
        const cases = turned(asked.cases).map((one) => ({ ...one, findings: reordered(one.findings) }))
        const other = rankCauses({
          ...asked,
          cases,
          observed: reordered(asked.observed),
          context: reordered(asked.context),
        })
        expect(other).toEqual(rankCauses(asked))
      }),
      runs,
    )
  })

  test('an irrelevant finding changes nothing: context only, not checked, or equally likely under every cause', () => {
    fc.assert(
      fc.property(anyDiagnosis, fc.constantFrom('seen', 'ruled out', 'not checked'), (asked, value) => {
        const before = rankCauses(asked)
        const idle = { id: 'idle', values: ['seen', 'ruled out'] }
        const withFinding = (carries?: 'context only') => ({
          ...asked.catalogue,
          findings: [{ ...idle, carries }, ...asked.catalogue.findings],
        })
        const observed = { ...asked.observed, idle: value }
        // Context only: neither seen now nor in every past case does it matter.
        const seenBefore = asked.cases.map((one) => ({ ...one, findings: { ...one.findings, idle: 'seen' } }))
        const contextOnly = rankCauses({
          ...asked,
          catalogue: withFinding('context only'),
          cases: seenBefore,
          observed,
        })
        expect(probabilities(contextOnly)).toEqual(probabilities(before))
        // Evidence that no past case was checked for, and that the trade finds equally likely under every cause.
        const equallyLikely = rankCauses({ ...asked, catalogue: withFinding(), observed })
        for (const { cause, probability } of before) {
          expect(probabilityOf(equallyLikely, cause)).toBeCloseTo(probability, 11)
        }
      }),
      runs,
    )
  })

  test('not checked is never read as ruled out: leaving it away and saying so are the same', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const checkedOnly = (observations: Observations) =>
          Object.fromEntries(Object.entries(observations).filter(([, value]) => value !== 'not checked'))
        const cases = asked.cases.map((one) => ({ ...one, findings: checkedOnly(one.findings) }))
        expect(probabilities(rankCauses({ ...asked, cases, observed: checkedOnly(asked.observed) }))).toEqual(
          probabilities(rankCauses(asked)),
        )
      }),
      runs,
    )
  })

  test('weights held fixed, one more case of a cause with the very findings never lowers that cause', () => {
    const asking = anyDiagnosis.chain((asked) =>
      fc.record({
        asked: fc.constant(asked),
        cause: fc.constantFrom(...asked.catalogue.causes.map(({ id }) => id)),
        status: fc.constantFrom('presumed' as const, 'confirmed' as const, 'durable' as const),
      }),
    )
    fc.assert(
      fc.property(asking, ({ asked, cause, status }) => {
        const settings = { ...asked.settings, neighbours: Infinity }
        const more = { id: 'one more', findings: asked.observed, cause: { main: cause, status } }
        const before = probabilityOf(rankCauses({ ...asked, settings }), cause)
        const after = probabilityOf(rankCauses({ ...asked, settings, cases: [...asked.cases, more] }), cause)
        expect(after).toBeGreaterThanOrEqual(before - 1e-12)
      }),
      { ...runs, numRuns: 400 },
    )
  })

  test('a finding that was looked for and ruled out counts against a cause that would show it', () => {
    const ranked = rankCauses({
      catalogue: pump,
      cases: [],
      observed: { drip: 'ruled out' },
      settings: plain,
    })
    expect(probabilityOf(ranked, 'blocked')).toBeLessThan(0.75)
    expect(ranked.find(({ cause }) => cause === 'blocked')!.againstIt).toEqual([
      { finding: 'drip', value: 'ruled out', bits: expect.closeTo(Math.log2(0.2 / 0.8), 12) },
    ])
  })

  test('packed cases, used again and again, give what a plain list gives', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const packed = packCases(asked.catalogue, asked.cases)
        expect(rankCauses({ ...asked, cases: packed })).toEqual(rankCauses(asked))
        expect(rankCauses({ ...asked, cases: packed })).toEqual(rankCauses(asked))
      }),
      { ...runs, numRuns: 100 },
    )
  })

  test('every interval lies within 0 and 1, its lower end first, and has no width without a case', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        for (const { interval90 } of rankCauses(asked)) {
          expect(interval90[0] >= 0 && interval90[0] <= interval90[1] && interval90[1] <= 1).toBe(true)
        }
        for (const { interval90, probability } of rankCauses({ ...asked, cases: [] })) {
          expect(interval90[0]).toBeCloseTo(probability, 12)
          expect(interval90[1]).toBeCloseTo(probability, 12)
        }
      }),
      runs,
    )
  })
})

describe('rankCauses, edges', () => {
  const everything = anyCatalogue.chain((catalogue) =>
    fc.record({
      catalogue: fc.constant(catalogue),
      observed: fc
        .tuple(...catalogue.findings.map(({ values }) => fc.constantFrom(...values)))
        .map((values) => Object.fromEntries(catalogue.findings.map(({ id }, place) => [id, values[place]!]))),
      cases: fc.array(anyCase(catalogue), { maxLength: 1 }),
    }),
  )

  test('no case, one case, and every finding observed at once give numbers', () => {
    fc.assert(
      fc.property(everything, ({ catalogue, observed, cases }) => {
        const ranked = rankCauses({
          catalogue,
          observed,
          cases: cases.map((one) => ({ id: 'only', ...one })),
        })
        const sum = ranked.reduce((total, { probability }) => total + probability, 0)
        expect(sum).toBeCloseTo(1, 12)
      }),
      runs,
    )
  })

  test('findings that contradict every cause and every case still give numbers: 200 of them at one in a million', () => {
    const findings = Array.from({ length: 200 }, (_, place) => ({
      id: `f${place}`,
      values: ['seen', 'ruled out'],
    }))
    const against = { seen: 1e-6, 'ruled out': 1 - 1e-6 }
    const likelihoods = Object.fromEntries(findings.map(({ id }) => [id, against]))
    const catalogue: Catalogue = {
      causes: [
        { id: 'a', prior: 1, likelihoods },
        { id: 'b', prior: 2, likelihoods },
      ],
      findings,
    }
    const observed = Object.fromEntries(findings.map(({ id }) => [id, 'seen']))
    const ruledOut = Object.fromEntries(findings.map(({ id }) => [id, 'ruled out']))
    const cases = Array.from({ length: 300 }, (_, place): PastCase => {
      return { id: `c${place}`, findings: ruledOut, cause: { main: 'a', status: 'durable' } }
    })
    for (const history of [[], cases]) {
      const ranked = rankCauses({ catalogue, cases: history, observed, settings: { neighbours: Infinity } })
      expect(ranked.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 12)
      expect(ranked.every(({ interval90 }) => interval90.every(Number.isFinite))).toBe(true)
    }
    const [first] = rankCauses({ catalogue, cases: [], observed, settings: { unlistedPrior: 0 } })
    expect(first).toMatchObject({ cause: 'b', probability: expect.closeTo(2 / 3, 9) })
  })

  test('a catalogue of one cause is certain of it', () => {
    const catalogue = { causes: [{ id: 'only', prior: 1 }], findings: pump.findings }
    const [only] = rankCauses({
      catalogue,
      cases: [],
      observed: { drip: 'seen' },
      settings: { unlistedPrior: 0 },
    })
    expect(only).toMatchObject({ probability: 1, forIt: [], againstIt: [] })
  })

  test('without repetitions the interval is the probability itself', () => {
    for (const { interval90, probability } of rankCauses({
      catalogue: pump,
      cases: [],
      observed: {},
      settings: { replicates: 0 },
    })) {
      expect(interval90).toEqual([probability, probability])
    }
  })
})

describe('rankCauses, refusals', () => {
  const asked = { catalogue: pump, cases: [] as PastCase[] }
  test.each([
    ['a finding that is not there', { ...asked, observed: { smell: 'seen' } }, 'no finding smell'],
    [
      'a value that is not there',
      { ...asked, observed: { drip: 'wet' } },
      "'wet' is no value of finding drip",
    ],
    ['k below 1', { ...asked, observed: {}, settings: { neighbours: 0 } }, 'neighbours'],
    ['A of 0', { ...asked, observed: {}, settings: { priorStrength: 0 } }, 'priorStrength'],
    ['m of 0', { ...asked, observed: {}, settings: { findingStrength: 0 } }, 'findingStrength'],
    ['no room for the list', { ...asked, observed: {}, settings: { unlistedPrior: 1 } }, 'unlistedPrior'],
    ['NaN', { ...asked, observed: {}, settings: { contributingShare: Number.NaN } }, 'contributingShare'],
    ['half a repetition', { ...asked, observed: {}, settings: { replicates: 0.5 } }, 'replicates'],
    ['half a seed', { ...asked, observed: {}, settings: { seed: 0.5 } }, 'seed'],
    [
      'a weight below 0',
      {
        ...asked,
        observed: {},
        settings: { statusWeights: { ...defaultRankingSettings.statusWeights, presumed: -1 } },
      },
      'statusWeights',
    ],
  ])('throws at %s', (_, wrong, message) => {
    expect(() => rankCauses(wrong)).toThrow(RangeError)
    expect(() => rankCauses(wrong)).toThrow(message)
  })

  test('throws when the cases were packed for another catalogue', () => {
    const packed = packCases(
      { ...pump, findings: pump.findings.slice(1), causes: [{ id: 'x', prior: 1 }] },
      [],
    )
    expect(() => rankCauses({ ...asked, cases: packed, observed: {} })).toThrow(
      'packed for another catalogue',
    )
  })
})

const scatter = (place: number, turn: number) => (place * 7919 * turn + turn) % 101
