import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { type HeldRecord, saidAtCorrected } from '@/lib/records/fold/entry'
import { counting, foldTeamFile } from '@/lib/records/fold/teamFile'
import { sampleIds as ids, sampleRecords } from './samples'

const deepFreeze = <T>(value: T): T => {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    Object.values(value).forEach(deepFreeze)
  }
  return value
}

const record = (seq: number | undefined, kind: string, body: Record<string, unknown>): HeldRecord => ({
  id: `01930000-0000-7000-8000-${String(seq ?? 999).padStart(12, '0')}`,
  kind,
  version: 1,
  body,
  saidAt: '2026-02-01T10:00:00.000Z',
  author: 'person-2',
  device: 'device-2',
  ...(seq === undefined ? {} : { seq, clockShiftMs: 0, receivedAt: '2026-02-01T10:00:00.000Z' }),
})

describe('foldTeamFile(records) is a union: the same records give the same file everywhere', () => {
  test('in whatever order they arrive, and without changing them', () => {
    const frozen = deepFreeze(structuredClone(sampleRecords))
    const { keptId, ...inOrder } = foldTeamFile(frozen)
    fc.assert(
      fc.property(fc.shuffledSubarray(frozen, { minLength: frozen.length }), (shuffled) => {
        const { keptId: keptIdShuffled, ...file } = foldTeamFile(shuffled)
        expect(file).toEqual(inOrder)
        expect(keptIdShuffled(ids.secondGauge)).toBe(keptId(ids.secondGauge))
      }),
      { seed: 20260112, numRuns: 50 },
    )
  })

  test('a withdrawn report stays readable, marked with who, when and why', () => {
    const report = foldTeamFile(sampleRecords).reports.get(ids.labelReport)
    expect(report?.withdrawn).toMatchObject({ by: 'person-1', reason: 'The label was on another furnace.' })
    expect(report?.body.asWritten).toBe('-.58±.05 WC CLOSE')
  })

  test('withdrawing the withdrawal brings the report back', () => {
    const back = record(100, 'withdrawal', { record: ids.withdrawal, reason: 'It was the right furnace.' })
    const file = foldTeamFile([...sampleRecords, back])
    expect(file.reports.get(ids.labelReport)?.withdrawn).toBeUndefined()
    expect(counting(file.reports).map((entry) => entry.id)).toContain(ids.labelReport)
  })

  test('a duplicate leaves the counting entries and leads to the one that is kept', () => {
    const file = foldTeamFile(sampleRecords)
    expect(file.keptId(ids.secondGauge)).toBe(ids.gauge)
    expect(counting(file.gauges).map((entry) => entry.id)).toEqual([ids.gauge])
  })

  test('two people who joined the same pair crosswise agree on the smaller id', () => {
    const crosswise = record(101, 'same as', { kept: ids.secondGauge, duplicate: ids.gauge, reason: 'x' })
    const file = foldTeamFile([...sampleRecords, crosswise])
    expect(file.keptId(ids.gauge)).toBe(ids.gauge)
    expect(file.keptId(ids.secondGauge)).toBe(ids.gauge)
  })

  test('a withdrawn join parts the two again', () => {
    const parted = record(102, 'withdrawal', { record: ids.sameAs, reason: 'Two gauges after all.' })
    expect(counting(foldTeamFile([...sampleRecords, parted]).gauges)).toHaveLength(2)
  })

  test('the newest preference of a person counts', () => {
    const newer = { ...record(103, 'preference', { unit: 'mbar', theme: 'light' }), author: 'person-1' }
    expect(foldTeamFile([newer, ...sampleRecords]).preferences.get('person-1')?.unit).toBe('mbar')
  })

  test('what waits on the device is folded last and marked as waiting', () => {
    const waiting = record(undefined, 'maker', { name: 'Tessenby' })
    const file = foldTeamFile([waiting, ...sampleRecords])
    expect(file.makers.get(waiting.id)).toMatchObject({ waiting: true, body: { name: 'Tessenby' } })
    expect(file.makers.get(ids.maker)?.waiting).toBe(false)
  })

  test('repairs of every version stand side by side, each as it was said', () => {
    const { repairs } = foldTeamFile(sampleRecords)
    expect([...repairs.keys()]).toEqual([ids.repair, ids.caseRepair, ids.laterRepair])
    expect(repairs.get(ids.repair)?.body).not.toHaveProperty('switchReplaced')
    expect(repairs.get(ids.caseRepair)?.body).toMatchObject({ switchReplaced: true, visitId: ids.visit })
    expect(repairs.get(ids.caseRepair)?.body).not.toHaveProperty('partFrom')
    expect(repairs.get(ids.laterRepair)?.body).toMatchObject({ partFrom: 'Van stock' })
  })

  test.each([
    ['cases', ids.case],
    ['visits', ids.visit],
    ['findings', ids.finding],
    ['readings', ids.reading],
    ['baselines', ids.baseline],
    ['combustionTests', ids.combustionTest],
    ['endings', ids.ending],
    ['shutDownNotices', ids.notice],
    ['liftings', ids.lifting],
    ['dangerAnswers', ids.dangerAnswer],
    ['fittedParts', ids.fittedPart],
    ['switchChecks', ids.restCheck],
  ] as const)('%s hold theirs by its id', (kind, id) => {
    const held: ReadonlyMap<string, { body: unknown }> = foldTeamFile(sampleRecords)[kind]
    expect(held.get(id)?.body).toEqual(sampleRecords.find((record) => record.id === id)?.body)
  })

  test('a kind or version from a newer program is named, not lost in silence', () => {
    const file = foldTeamFile([record(1, 'weather note', {}), { ...record(2, 'maker', {}), version: 7 }])
    expect(file.unknown).toEqual(['maker, version 7', 'weather note, version 1'])
  })
})

describe('saidAtCorrected(record)', () => {
  test('a phone two hours behind is put right by what the server measured', () => {
    const late = { ...record(1, 'maker', {}), saidAt: '2026-02-01T08:00:00.000Z', clockShiftMs: 7_200_000 }
    expect(saidAtCorrected(late)).toBe('2026-02-01T10:00:00.000Z')
  })

  test('the file says by how much each device was put right last', () => {
    const from = (seq: number, device: string, clockShiftMs: number) => ({
      ...record(seq, 'maker', {}),
      device,
      clockShiftMs,
    })
    const { clockShifts } = foldTeamFile([from(3, 'd1', 0), from(1, 'd1', 7_200_000), from(2, 'd2', -4_000)])
    expect([...clockShifts].sort()).toEqual([
      ['d1', 0],
      ['d2', -4_000],
    ])
  })

  test('a slow network is not taken for a wrong clock', () => {
    expect(saidAtCorrected({ ...record(1, 'maker', {}), clockShiftMs: 4_000 })).toBe(
      '2026-02-01T10:00:00.000Z',
    )
  })

  test('an offset is turned into UTC', () => {
    expect(saidAtCorrected({ ...record(1, 'maker', {}), saidAt: '2026-02-01T12:00:00+02:00' })).toBe(
      '2026-02-01T10:00:00.000Z',
    )
  })
})
