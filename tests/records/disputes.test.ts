import { expect, test } from 'vitest'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { disputesIn } from '@/lib/records/view/disputes'
import { held } from '../app/setup/fakeDevice'
import { disputedRecords, equipmentRecords, ids, pascals, settleableRecords } from '../app/setup/smallFile'

const now = '2026-02-02T08:00:00.000Z'
const disputes = (records: Parameters<typeof foldTeamFile>[0]) =>
  disputesIn(foldTeamFile(Object.freeze([...records])), now)
const further = (records: Parameters<typeof held>[0]) =>
  held(records).map((record, at) => ({ ...record, seq: 100 + at }))

test('disputesIn lists a number with both values, since the second of the two was recorded', () => {
  const [dispute, ...others] = disputes(disputedRecords)
  expect(others).toEqual([])
  expect(dispute).toMatchObject({
    position: { id: ids.low },
    action: 'closes',
    furnace: undefined,
    since: '2026-01-06T09:00:00.000Z',
  })
  const { standing } = dispute!
  expect([standing.pascals, ...standing.rivals.map((rival) => rival.pascals)].toSorted()).toEqual(
    [pascals.make, pascals.other].toSorted(),
  )
})

test('disputesIn lists none without reports, with one, and once the dispute is settled', () => {
  expect(disputes(equipmentRecords)).toEqual([])
  expect(disputes(disputedRecords.slice(0, -1))).toEqual([])
  const settled = further([
    [
      '01920000-0000-7000-8000-0000000000d1',
      'settlement',
      {
        positionId: ids.low,
        action: 'closes',
        pascals: pascals.make,
        limit: 'nominal',
        evidenceReportId: ids.support,
        overruledReportIds: [ids.counter],
        reason: 'Read back digit by digit.',
      },
    ],
  ])
  expect(disputes([...settleableRecords, ...settled])).toEqual([])
})

test('disputesIn finds a dispute that is about one elevation by a furnace that stands there', () => {
  const banded = disputedRecords.map((record) =>
    record.kind === 'report'
      ? { ...record, body: { ...record.body, elevationBand: { fromMetres: 1373 } } }
      : record,
  )
  expect(disputes(banded)).toMatchObject([{ action: 'closes', furnace: { id: ids.furnace } }])
  const lower = banded.map((record) =>
    record.id === ids.furnace ? { ...record, body: { ...record.body, elevationMetres: 200 } } : record,
  )
  expect(disputes(lower)).toEqual([])
})

test('disputesIn puts the longest in dispute first, and takes make and break point apart', () => {
  const opens = disputedRecords
    .filter(({ kind }) => kind === 'report')
    .map((record, at) => ({
      ...record,
      id: `01920000-0000-7000-8000-0000000000e${at}`,
      seq: 200 + at,
      saidAt: `2025-11-0${at + 1}T08:00:00.000Z`,
      body: { ...record.body, action: 'opens' },
    }))
  expect(disputes([...disputedRecords, ...opens]).map(({ action, since }) => [action, since])).toEqual([
    ['opens', '2025-11-02T08:00:00.000Z'],
    ['closes', '2026-01-06T09:00:00.000Z'],
  ])
})

test('disputesIn finds reports of one number that contradict each other in what belongs to it', () => {
  const [plate, call] = disputedRecords.slice(-2)
  const same = { ...call!, body: { ...call!.body, pascals: pascals.make, stage: 'high fire' } }
  expect(disputes([...equipmentRecords, plate!, same])).toMatchObject([
    { action: 'closes', since: '2026-01-06T09:00:00.000Z' },
  ])
  expect(
    disputes([...equipmentRecords, plate!, { ...same, body: { ...same.body, stage: 'low fire' } }]),
  ).toEqual([])
})

test('disputesIn lists a dispute once, however many furnaces it is about, and names the furnace it was made on', () => {
  const bodies = disputedRecords.map((record) =>
    record.kind === 'report'
      ? { ...record, body: { ...record.body, elevationBand: { fromMetres: 0 }, furnaceId: ids.bareFurnace } }
      : record.id === ids.bareFurnace
        ? { ...record, body: { ...record.body, rangeId: ids.range, elevationMetres: 900 } }
        : record,
  )
  expect(disputes(bodies)).toHaveLength(1)
  const unstated = bodies.map((record) =>
    record.kind === 'report' ? { ...record, body: { ...record.body, elevationBand: undefined } } : record,
  )
  expect(disputes(unstated)).toMatchObject([{ furnace: { id: ids.bareFurnace } }])
})
