import { describe, expect, test } from 'vitest'
import type { Lookup, Refusal } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { sampleIds as ids, sampleRecords } from './samples'

const stored = new Map(sampleRecords.map((record) => [record.id, record]))
const asLookup = (find: (id: string) => ReturnType<Lookup>): Lookup =>
  Object.assign(find, { endedAt: () => undefined, keptId: (id: string) => id })
const lookup = asLookup((id) => stored.get(id))
const technician = { id: 'person-1', role: 'technician', saidAt: '2026-02-01T08:00:00Z' } as const

const bodyOf = (id: string) => structuredClone(stored.get(id)!.body)
const refusalOf = (kind: string, body: Record<string, unknown>): Refusal | undefined =>
  recordKinds[kind]!.refusedBy?.(body, lookup, technician)

describe('no general-purpose switch, ever', () => {
  test('a repair that fits a general-purpose part is refused, and told what to do instead', () => {
    const refusal = refusalOf('repair', { ...bodyOf(ids.repair), fittedPart: ids.generic })
    expect(refusal?.rule).toBe('no general-purpose switch')
    expect(refusal?.sentence).toContain('Record it as found fitted, when and by whom')
  })

  test('a repair that fits a part of unknown class is refused as well', () => {
    const unknownPart = { ...stored.get(ids.oldPart)!, body: { ...bodyOf(ids.oldPart), class: 'not known' } }
    const refusal = recordKinds.repair!.refusedBy!(
      { ...bodyOf(ids.repair), fittedPart: ids.oldPart },
      asLookup((id) => (id === ids.oldPart ? unknownPart : lookup(id))),
      technician,
    )
    expect(refusal?.rule).toBe('no general-purpose switch')
  })

  test('a repair with a factory part, or with no part, is accepted', () => {
    expect(refusalOf('repair', bodyOf(ids.repair))).toBeUndefined()
    expect(refusalOf('repair', { ...bodyOf(ids.repair), fittedPart: undefined })).toBeUndefined()
  })

  test.each([
    [{ parts: 'universal adjustable switch, set to 0.30' }, 'no general-purpose switch'],
    [{ done: 'fitted a universal switch' }, 'no general-purpose switch'],
    [{ done: 'put a jumper across it' }, 'no bypass'],
    [{ done: 'removed the jumper' }, undefined],
    [{ done: 'took the universal switch out, factory one in' }, undefined],
  ])('a repair whose words are %o is judged by them: %s', (words, rule) => {
    const refusal = refusalOf('repair', { ...bodyOf(ids.repair), fittedPart: undefined, ...words })
    expect(refusal?.rule).toBe(rule)
    if (rule !== undefined) {
      expect(refusal?.sentence).toContain('ask for its rating')
      expect(refusal?.sentence).toContain('Record it as found fitted, when and by whom')
    }
  })

  test('an ending does not wait for a switch that is called universal or adjustable', () => {
    const waiting = { ...bodyOf(ids.ending), how: 'waiting for part', repairIds: undefined }
    const named = (partNumber: string) => refusalOf('ending', { ...waiting, partNumber })?.rule
    expect(named('UNIVERSAL ADJUSTABLE SWITCH')).toBe('no general-purpose switch')
    expect(named('jumper')).toBe('no bypass')
    expect(named('OM-8802')).toBeUndefined()
  })

  test('a report read off a general-purpose switch is refused, whatever source it claims', () => {
    for (const source of ['factory switch label', 'unknown switch label', 'bench check']) {
      const refusal = refusalOf('report', { ...bodyOf(ids.labelReport), source, readOffPart: ids.generic })
      expect(refusal?.rule).toBe('no general-purpose switch')
      expect(refusal?.sentence).toContain('found fitted')
    }
  })

  test('a general-purpose part does not supersede a factory part', () => {
    const refusal = refusalOf('supersession', { ...bodyOf(ids.supersession), newPartId: ids.generic })
    expect(refusal?.rule).toBe('no general-purpose switch')
  })

  test('an adjustable switch of unknown class is no evidence either', () => {
    const adjustable = { ...stored.get(ids.generic)!, body: { ...bodyOf(ids.generic), class: 'not known' } }
    const refusal = recordKinds.report!.refusedBy!(
      { ...bodyOf(ids.labelReport), readOffPart: ids.generic },
      asLookup((id) => (id === ids.generic ? adjustable : lookup(id))),
      technician,
    )
    expect(refusal?.rule).toBe('no general-purpose switch')
  })

  test('a part that is adjustable in the field cannot be recorded as a factory part', () => {
    const parsed = recordKinds.part!.versions[1]!.safeParse({ ...bodyOf(ids.oldPart), fieldAdjustable: true })
    expect(parsed.error?.issues[0]?.message).toContain('general-purpose')
  })

  test('found fitted is accepted without any condition, also when it was us', () => {
    expect(recordKinds['found fitted']!.refusedBy).toBeUndefined()
    expect([...recordKinds['found fitted']!.mayAdd].sort()).toEqual(['dispatcher', 'manager', 'technician'])
  })
})

describe('reports', () => {
  test('a label is the factory switch’s only when the part is recorded as a factory part', () => {
    const unknownPart = { ...stored.get(ids.oldPart)!, body: { ...bodyOf(ids.oldPart), class: 'not known' } }
    const refusal = recordKinds.report!.refusedBy!(
      bodyOf(ids.labelReport),
      asLookup((id) => (id === ids.oldPart ? unknownPart : lookup(id))),
      technician,
    )
    expect(refusal?.rule).toBe('a factory label needs a factory part')
  })

  test('a factory label without its part is refused by the schema, in a sentence', () => {
    const { readOffPart, ...body } = bodyOf(ids.labelReport)
    expect(readOffPart).toBeDefined()
    expect(recordKinds.report!.versions[1]!.safeParse(body).error?.issues[0]?.message).toContain(
      'Name the part',
    )
  })
})

describe('settling a dispute', () => {
  test('factory support with a reference settles', () => {
    expect(refusalOf('settlement', bodyOf(ids.settlement))).toBeUndefined()
  })

  test('a label, or anything without a reference, does not', () => {
    const body = {
      ...bodyOf(ids.settlement),
      evidenceReportId: ids.labelReport,
      overruledReportIds: [ids.supportReport],
    }
    expect(refusalOf('settlement', body)?.rule).toBe('a dispute needs new evidence')
  })

  test('the evidence cannot be overruled by itself', () => {
    const body = { ...bodyOf(ids.settlement), overruledReportIds: [ids.supportReport] }
    expect(refusalOf('settlement', body)?.sentence).toContain('Take it off that list')
  })
})

describe('withholding and joining', () => {
  test('a number, its source or its date cannot be withheld', () => {
    for (const field of ['pascals', 'source', 'saidOn', 'asWritten']) {
      const body = { record: ids.labelReport, fields: [field], reason: 'no' }
      expect(refusalOf('withholding', body)?.rule).toBe('only personal data can be withheld')
    }
  })

  test('a site label can be withheld', () => {
    expect(refusalOf('withholding', bodyOf(ids.withholding))).toBeUndefined()
  })

  test('a withholding cannot be withdrawn', () => {
    expect(refusalOf('withdrawal', { record: ids.withholding, reason: 'no' })?.rule).toBe(
      'a withholding stands',
    )
  })

  test('positions of different stages, unlike kinds, and unlike parts are never joined', () => {
    for (const [kept, duplicate] of [
      [ids.low, ids.high],
      [ids.maker, ids.range],
      [ids.oldPart, ids.generic],
      [ids.request, ids.request.replace('b', 'e')],
    ]) {
      expect(refusalOf('same as', { kept, duplicate, reason: 'x' })?.rule).toBe('only like joins like')
    }
  })
})

describe('who may add', () => {
  test('only a manager withholds or imports, a dispatcher lifts no notice, a technician settles no dispute and takes no warranty answer; everything else is open to all three', () => {
    const restricted = Object.values(recordKinds)
      .filter((kind) => kind.mayAdd.length < 3)
      .map((kind) => [kind.kind, [...kind.mayAdd].sort()])
    expect(restricted).toEqual([
      ['settlement', ['dispatcher', 'manager']],
      ['withholding', ['manager']],
      ['lifting', ['manager', 'technician']],
      ['import', ['manager']],
      ['warranty answer', ['dispatcher', 'manager']],
    ])
  })
})
