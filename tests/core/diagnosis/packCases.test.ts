import { describe, expect, test } from 'vitest'
import { type Catalogue, checkCatalogue, type PastCase, packCases } from '@/lib/core/diagnosis'
import { deepFreeze } from './anyDiagnosis'

const drip = { id: 'drip', values: ['seen', 'ruled out'] }
const catalogue: Catalogue = deepFreeze({ causes: [{ id: 'blocked', prior: 1 }], findings: [drip] })

describe('packCases(catalogue, cases)', () => {
  test('keeps the cases, by id, and changes none of its inputs', () => {
    const cases = deepFreeze<PastCase[]>([
      { id: 'b', findings: { drip: 'seen' } },
      { id: 'a', findings: {}, cause: { main: 'blocked', status: 'presumed' } },
    ])
    const packed = packCases(catalogue, cases)
    expect(packed.ids).toEqual(['a', 'b'])
    expect(packed.cases).toEqual([cases[1], cases[0]])
  })

  test.each<[string, PastCase[], string]>([
    [
      'an id that comes twice',
      [
        { id: 'a', findings: {} },
        { id: 'a', findings: {} },
      ],
      'same id',
    ],
    ['a finding that is not there', [{ id: 'a', findings: { smell: 'seen' } }], 'no finding smell'],
    ['a value that is not there', [{ id: 'a', findings: { drip: 'wet' } }], "'wet' is no value"],
    [
      'a cause that contributes to itself',
      [{ id: 'a', findings: {}, cause: { main: 'blocked', contributing: 'blocked', status: 'presumed' } }],
      'Case a: a cause cannot contribute to itself',
    ],
  ])('throws at %s', (_, cases, message) => {
    expect(() => packCases(catalogue, cases)).toThrow(RangeError)
    expect(() => packCases(catalogue, cases)).toThrow(message)
  })
})

describe('checkCatalogue(catalogue)', () => {
  const cause = { id: 'blocked', prior: 1 }
  const chances = (seen: number, ruledOut: number) => ({ drip: { seen, 'ruled out': ruledOut } })
  test.each<[string, Catalogue, string]>([
    ['no cause', { causes: [], findings: [] }, 'at least one cause'],
    ['two causes of one id', { causes: [cause, cause], findings: [] }, 'same id'],
    ['two findings of one id', { causes: [cause], findings: [drip, drip] }, 'same id'],
    [
      'the reserved cause',
      { causes: [{ id: 'not on the list', prior: 1 }], findings: [] },
      'No cause may be called',
    ],
    ['a prior of 0', { causes: [{ id: 'x', prior: 0 }], findings: [] }, 'prior above 0'],
    [
      'a prior that is no number',
      { causes: [{ id: 'x', prior: Number.NaN }], findings: [] },
      'prior above 0',
    ],
    ['a single value', { causes: [cause], findings: [{ id: 'f', values: ['seen'] }] }, 'at least two values'],
    ['a value twice', { causes: [cause], findings: [{ id: 'f', values: ['a', 'a'] }] }, 'all different'],
    [
      'not checked as a value',
      { causes: [cause], findings: [{ id: 'f', values: ['a', 'not checked'] }] },
      'is no value',
    ],
    ['a strength of 0', { causes: [cause], findings: [{ ...drip, strength: 0 }] }, 'strength of drip'],
    [
      'a chance of 0',
      { causes: [{ ...cause, likelihoods: chances(0, 1) }], findings: [drip] },
      'above 0 and below 1',
    ],
    [
      'chances beyond 1',
      { causes: [{ ...cause, likelihoods: chances(0.6, 0.6) }], findings: [drip] },
      'add up to 1',
    ],
    [
      'a value without a chance',
      { causes: [cause], findings: [{ ...drip, usual: { seen: 0.5 } }] },
      "drip usually: the chance of 'ruled out'",
    ],
    [
      'chances of no finding',
      { causes: [{ ...cause, likelihoods: chances(0.5, 0.5) }], findings: [] },
      'is no finding',
    ],
    [
      'a check of no finding',
      { causes: [cause], findings: [], checks: [{ id: 'k', reveals: ['drip'], by: 'look' }] },
      'reveals drip',
    ],
    [
      'a context weight below 0',
      { causes: [cause], findings: [], context: [{ id: 'c', weight: -1 }] },
      'context field c',
    ],
    [
      'nine context fields',
      {
        causes: [cause],
        findings: [],
        context: Array.from({ length: 9 }, (_, at) => ({ id: `${at}`, weight: 1 })),
      },
      'At most 8 context fields',
    ],
    ['a checklist of strangers', { causes: [cause], findings: [], checklist: ['x'] }, 'names x'],
    [
      'a checklist that repeats',
      { causes: [cause], findings: [], checklist: ['blocked', 'blocked'] },
      'twice',
    ],
  ])('throws at %s', (_, wrong, message) => {
    expect(() => checkCatalogue(wrong)).toThrow(RangeError)
    expect(() => checkCatalogue(wrong)).toThrow(message)
  })
})
