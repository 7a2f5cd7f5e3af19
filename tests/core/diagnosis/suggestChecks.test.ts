import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  type Catalogue,
  type Check,
  entropyBits,
  learnedLikelihoods,
  rankCauses,
  suggestChecks,
  unlistedCause,
} from '@/lib/core/diagnosis'
import { anyDiagnosis, deepFreeze } from './anyDiagnosis'

const chances = (seen: number) => ({ seen, 'ruled out': 1 - seen })
const values = ['seen', 'ruled out']
const catalogue: Catalogue = deepFreeze<Catalogue>({
  causes: [
    { id: 'a', prior: 1, likelihoods: { sharp: chances(0.99), dull: chances(0.6) } },
    { id: 'b', prior: 1, likelihoods: { sharp: chances(0.01), dull: chances(0.4) } },
  ],
  findings: [
    { id: 'sharp', values },
    { id: 'dull', values },
    { id: 'visitor', values, carries: 'context only' },
  ],
  checks: [
    { id: 'open it', reveals: ['sharp'], by: 'taking apart' },
    { id: 'measure', reveals: ['sharp'], by: 'tool' },
    { id: 'glance', reveals: ['dull'], by: 'look' },
    { id: 'stare', reveals: ['sharp'], by: 'look' },
    { id: 'ask', reveals: ['visitor'], by: 'look' },
    { id: 'sniff', reveals: ['dull'], by: 'tool', danger: true },
  ],
})
const costs = { 'open it': 1, measure: 1, glance: 1, stare: 10, ask: 1, sniff: 60 }
const settings = { unlistedPrior: 0 }
const ranked = rankCauses({ catalogue, cases: [], observed: {}, settings })

describe('suggestChecks({ ranked, catalogue, observed, costs })', () => {
  test('puts danger first, looks before tools, tools before taking apart, and the most bits per minute first', () => {
    const planned = suggestChecks({ ranked, catalogue, observed: {}, costs })
    expect(planned.map(({ check }) => check)).toEqual([
      'sniff',
      'stare',
      'glance',
      'ask',
      'measure',
      'open it',
    ])
    // 1 − H(0.99) = 0.919207 bits (H(0.99) = 0.080793, from memory of the binary entropy table, recomputed).
    expect(planned[1]).toMatchObject({ minutes: 10, expectedBits: expect.closeTo(0.919207, 6), by: 'look' })
    expect(planned[1]!.expectedBitsPerMinute).toBeCloseTo(0.0919207, 7)
    // 1 − H(0.6) = 1 − 0.970951 bits.
    expect(planned[2]!.expectedBits).toBeCloseTo(0.029049, 6)
    expect(planned[3]).toMatchObject({ expectedBits: 0, why: [] })
  })

  test('keeps danger checks in the catalogue’s own order, whatever they tell and cost', () => {
    const dangers = deepFreeze({
      ...catalogue,
      checks: [
        { id: 'ask first', reveals: ['visitor'], by: 'look', danger: true },
        { id: 'tool then', reveals: ['dull'], by: 'tool', danger: true },
        { id: 'look last', reveals: ['sharp'], by: 'look', danger: true },
      ],
    } as const)
    const minutes = { 'ask first': 9, 'tool then': 5, 'look last': 1 }
    expect(
      suggestChecks({ ranked, catalogue: dangers, observed: {}, costs: minutes }).map(({ check }) => check),
    ).toEqual(['ask first', 'tool then', 'look last'])
  })

  test('says of each value how likely it is and what would then lead', () => {
    const [stare] = suggestChecks({ ranked, catalogue, observed: { dull: 'seen', visitor: 'seen' }, costs })
    expect(stare).toMatchObject({
      check: 'stare',
      why: [
        { finding: 'sharp', value: 'seen', chance: 0.5, cause: 'a', before: 0.5, after: 0.99 },
        { finding: 'sharp', value: 'ruled out', chance: 0.5, cause: 'b', before: 0.5, after: 0.99 },
      ],
    })
  })

  test('leaves a check out once all it reveals is observed, and keeps it while something is not checked', () => {
    const left = (observed: Record<string, string>) =>
      suggestChecks({ ranked, catalogue, observed, costs }).map(({ check }) => check)
    expect(left({ sharp: 'seen' })).toEqual(['sniff', 'glance', 'ask'])
    expect(left({ sharp: 'not checked' })).toHaveLength(6)
    expect(left({ sharp: 'seen', dull: 'ruled out', visitor: 'seen' })).toEqual([])
  })

  test('two findings of one check together tell what ranking with each of their outcomes shows', () => {
    fc.assert(
      fc.property(anyDiagnosis, (asked) => {
        const open = asked.catalogue.findings.filter(({ id, carries }) => {
          return carries !== 'context only' && (asked.observed[id] ?? 'not checked') === 'not checked'
        })
        const pair = open.slice(0, 2)
        fc.pre(pair.length === 2)
        const both: Check = { id: 'both', reveals: pair.map(({ id }) => id), by: 'look' }
        const fixed = { ...asked, settings: { ...asked.settings, neighbours: Infinity, replicates: 0 } }
        const before = rankCauses(fixed)
        const [planned] = suggestChecks({
          ranked: before,
          catalogue: { ...asked.catalogue, checks: [both] },
          observed: asked.observed,
          costs: { both: 5 },
          likelihoods: learnedLikelihoods(fixed),
        })
        // Brute force: the entropy now, less the mean entropy after each outcome, ranked anew.
        const table = learnedLikelihoods(fixed)
        let left = 0
        for (const first of pair[0]!.values) {
          for (const second of pair[1]!.values) {
            const chance = before.reduce((sum, { cause, probability }) => {
              return (
                sum + probability * table[cause]![pair[0]!.id]![first]! * table[cause]![pair[1]!.id]![second]!
              )
            }, 0)
            const observed = { ...asked.observed, [pair[0]!.id]: first, [pair[1]!.id]: second }
            left +=
              chance * entropyBits(rankCauses({ ...fixed, observed }).map(({ probability }) => probability))
          }
        }
        const bits = entropyBits(before.map(({ probability }) => probability)) - left
        expect(planned!.expectedBits).toBeCloseTo(bits, 9)
        expect(planned!.expectedBitsPerMinute).toBeCloseTo(bits / 5, 9)
      }),
      { seed: 20260313, numRuns: 60 },
    )
  })

  test('the unlisted cause takes part, and learned chances are used when given', () => {
    const withUnlisted = rankCauses({ catalogue, cases: [], observed: {} })
    expect(withUnlisted.some(({ cause }) => cause === unlistedCause)).toBe(true)
    const trade = suggestChecks({ ranked: withUnlisted, catalogue, observed: {}, costs })
    const cases = Array.from({ length: 40 }, (_, place) => ({
      id: `c${place}`,
      findings: { dull: place % 2 ? 'seen' : 'ruled out' },
      cause: { main: place % 2 ? 'a' : 'b', status: 'confirmed' as const },
    }))
    const likelihoods = learnedLikelihoods({ catalogue, cases, observed: {} })
    const learned = suggestChecks({ ranked: withUnlisted, catalogue, observed: {}, costs, likelihoods })
    const glance = (planned: typeof trade) => planned.find(({ check }) => check === 'glance')!.expectedBits
    expect(glance(learned)).toBeGreaterThan(10 * glance(trade))
  })

  test.each([
    ['no cost', { ...costs, measure: undefined as unknown as number }, 'measure needs a cost'],
    ['a cost of 0', { ...costs, measure: 0 }, 'measure needs a cost'],
    ['a cost that is no number', { ...costs, measure: Number.NaN }, 'measure needs a cost'],
  ])('throws at a check with %s', (_, wrong, message) => {
    expect(() => suggestChecks({ ranked, catalogue, observed: {}, costs: wrong })).toThrow(RangeError)
    expect(() => suggestChecks({ ranked, catalogue, observed: {}, costs: wrong })).toThrow(message)
  })

  test('throws at a ranked cause without chances, and at a check that can end in too many ways', () => {
    const stranger = [{ cause: 'z', probability: 1 }]
    expect(() => suggestChecks({ ranked: stranger, catalogue, observed: {}, costs })).toThrow('under z')
    const findings = Array.from({ length: 13 }, (_, place) => ({ id: `f${place}`, values }))
    const many: Catalogue = {
      causes: [{ id: 'a', prior: 1 }],
      findings,
      checks: [{ id: 'all', reveals: findings.map(({ id }) => id), by: 'look' }],
    }
    const one = [{ cause: 'a', probability: 1 }]
    expect(() => suggestChecks({ ranked: one, catalogue: many, observed: {}, costs: { all: 1 } })).toThrow(
      'several checks',
    )
  })
})
