import { expect, test } from 'vitest'
import { levelWords } from '@/app/log/whatItChanged'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { standingChange } from '@/lib/records/view/log/standingChange'
import { ratingAt, ratingSettings } from '@/lib/records/view/setpoint'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { held } from '../../../app/setup/fakeDevice'
import { disputedRecords, ids } from '../../../app/setup/smallFile'

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
const seqOn = (records: HeldRecord[], from: number) =>
  records.map((record, place) => ({ ...record, seq: from + place }))

test('standingChange(file, id) of each report says which level it moved, the first from Not on file', () => {
  const file = foldTeamFile(disputedRecords)
  const reports = disputedRecords.filter(({ kind }) => kind === 'report')
  const first = standingChange(file, reports[0]!.id)
  expect(first).toMatchObject({ positionId: ids.low, changes: [{ action: 'closes', from: 'Not on file' }] })
  expect(standingChange(file, reports.at(-1)!.id)?.changes).toMatchObject([
    { action: 'closes', to: 'In dispute' },
  ])
})

test('standingChange(file, id) of a withdrawal is what its record had changed, turned round; of the withdrawal of that, as before', () => {
  const last = disputedRecords.at(-1)!
  const reason = 'Misread.'
  const withdrawals = seqOn(
    held([
      [id('f1'), 'withdrawal', { record: last.id, reason }, '2026-02-02T08:00:00.000Z'],
      [id('f2'), 'withdrawal', { record: id('f1'), reason }, '2026-02-03T08:00:00.000Z'],
    ]),
    disputedRecords.length + 1,
  )
  const file = foldTeamFile([...disputedRecords, ...withdrawals])
  const [said, taken, back] = [last.id, id('f1'), id('f2')].map(
    (each) => standingChange(file, each)?.changes[0],
  )
  expect(said).toMatchObject({ to: 'In dispute' })
  expect(taken).toMatchObject({ from: 'In dispute', to: said?.from })
  expect(back).toMatchObject({ from: said?.from, to: 'In dispute' })
})

test('standingChange(file, id) of what no rating rests on, or is not there, is nothing', () => {
  const file = foldTeamFile(disputedRecords)
  expect(standingChange(file, ids.furnace)).toBeUndefined()
  expect(standingChange(file, ids.low)).toBeUndefined()
  expect(standingChange(file, id('999'))).toBeUndefined()
})

test('standingChange(file, id) agrees with folding the log up to there and weighing it anew, all over the demo company', () => {
  // A part that is recorded after its reports counts from the start here, so the parts come first; and no later
  // supersession, which would count from the start too.
  const rank = (kind: string) =>
    ['maker', 'equipment range', 'position', 'part', 'supersession'].includes(kind) ? 0 : 1
  const all = demoRecords(demoSeed)
    .filter(
      ({ kind }) =>
        ['maker', 'equipment range', 'position', 'part', 'supersession', 'furnace', 'gauge'].includes(kind) ||
        ['report', 'settlement', 'withdrawal'].includes(kind),
    )
    .toSorted((one, other) => rank(one.kind) - rank(other.kind))
  const here = new Set<string>()
  const records: HeldRecord[] = []
  for (const record of all) {
    if (record.kind === 'withdrawal' && !here.has(String(record.body.record))) continue
    here.add(record.id)
    records.push({ ...record, seq: records.length + 1, clockShiftMs: 0 })
  }
  const whole = foldTeamFile(records)
  const rated = records.filter(({ id: each }) => standingChange(whole, each) !== undefined)
  const sample = rated.filter((record, place) => record.kind !== 'report' || place % 4 === 0)
  expect(sample.length).toBeGreaterThan(30)
  expect(new Set(sample.map(({ kind }) => kind))).toEqual(new Set(['report', 'settlement', 'withdrawal']))
  let moved = 0
  for (const { id: each, seq } of sample) {
    const change = standingChange(whole, each)!
    const levels = [seq! - 1, seq!].map((upTo) => {
      const then = foldTeamFile(records.slice(0, upTo))
      const furnace = change.furnaceId === undefined ? undefined : whole.furnaces.get(change.furnaceId)
      const position = whole.positions.get(change.positionId)!
      const settings = ratingSettings(then, whole.records.get(each)!.entry.at)
      const rating = ratingAt(
        then,
        position,
        furnace === undefined ? {} : furnaceForRating(furnace),
        settings,
      )
      return { closes: rating.closes.level, opens: rating.opens.level, 'not stated': rating.unstated.level }
    })
    const expected = (['closes', 'opens', 'not stated'] as const).filter(
      (action) => levels[0]![action] !== levels[1]![action],
    )
    const found = change.changes.filter(({ from, to }) => from !== to)
    expect(found.map(({ action }) => action)).toEqual(expected)
    for (const { action, from, to } of found)
      expect([from, to]).toEqual([levels[0]![action], levels[1]![action]])
    moved += found.length
  }
  expect(moved).toBeGreaterThan(10)
}, 60_000)

test('the change of a report made on one furnace is weighed for that furnace', () => {
  const body = { ...(disputedRecords.at(-1)!.body as ReportBody), furnaceId: ids.furnace }
  const bound: Partial<ReportBody> = { ...body }
  delete bound.revisionRange
  const [record] = seqOn(held([[id('f1'), 'report', bound]]), disputedRecords.length + 1)
  const file = foldTeamFile([...disputedRecords.slice(0, -1), record!])
  expect(standingChange(file, id('f1'))?.furnaceId).toBe(ids.furnace)
})

test('a settlement that leaves the level of an unknown furnace says for which others it ended the dispute', () => {
  const said = disputedRecords.find(({ kind }) => kind === 'report')!.body
  const other = (disputedRecords.at(-1)!.body as ReportBody).pascals
  const high = { ...said, elevationBand: { fromMetres: 1500 } }
  const call = { kind: 'call reference', organisation: 'Orrinmoor technical line', reference: 'T-5512' }
  const reports = seqOn(
    held([
      [id('f1'), 'report', { ...high, source: 'current literature' }],
      [id('f2'), 'report', { ...high, pascals: other }],
      [id('f3'), 'report', { ...high, source: 'factory support', proof: call, saidOn: '2026-01-12' }],
      [
        id('f4'),
        'settlement',
        {
          positionId: ids.low,
          action: 'closes',
          pascals: said.pascals,
          limit: 'nominal',
          evidenceReportId: id('f3'),
          overruledReportIds: [id('f2')],
          reason: 'They named the part.',
        },
        '2026-01-13T09:00:00.000Z',
      ],
    ]),
    disputedRecords.length + 1,
  )
  const file = foldTeamFile([...disputedRecords.filter(({ kind }) => kind !== 'report'), ...reports])
  const { changes, elsewhere } = standingChange(file, id('f4'))!
  expect(changes).toEqual([])
  expect(elsewhere).toMatchObject([
    {
      holdsFor: expect.arrayContaining(['elevation 4,921 ft (1,500 m)']),
      changes: [
        { action: 'closes', from: 'In dispute', to: expect.stringMatching(/^(Verified|Supported)$/) },
      ],
    },
  ])
  expect(levelWords(file, id('f4'))).toMatch(/^For .*4,921 ft.*: .*In dispute → /)
})

test('the withdrawal of an import says where to see what it changed, as it lists nothing', () => {
  const records = held([
    [id('e1'), 'import', { fileName: 'list.csv' }],
    [id('e2'), 'withdrawal', { record: id('e1'), reason: 'The wrong list.' }, '2026-02-02T08:00:00.000Z'],
  ])
  const file = foldTeamFile([...disputedRecords, ...seqOn(records, disputedRecords.length + 1)])
  expect(levelWords(file, id('e2'))).toContain('Withdrawn, still readable')
  expect(levelWords(file, id('e1'))).toBeUndefined()
})
