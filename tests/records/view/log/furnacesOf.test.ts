import { expect, test } from 'vitest'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'
import { furnacesOf } from '@/lib/records/view/log/furnacesOf'
import { demoRecords, demoSeed } from '@/seed-demo/company'
import { held } from '../../../app/setup/fakeDevice'
import { equipmentRecords, ids } from '../../../app/setup/smallFile'

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
const last = equipmentRecords.length
const after = (...records: Parameters<typeof held>[0]) =>
  held(records).map((record, place) => ({ ...record, seq: last + place + 1 }))

const records = [
  ...equipmentRecords,
  ...after(
    [id('c1'), 'case', { furnaceId: ids.furnace, complaint: 'No heat', circuit: 'proving circuit' }],
    [id('c2'), 'visit', { caseId: id('c1'), on: '2026-02-01' }],
    [id('c3'), 'finding', { caseId: id('c1'), visitId: id('c2'), finding: 'gas-smell', value: 'no' }],
    [id('c4'), 'withdrawal', { record: id('c3'), reason: 'Other house.' }],
    [
      id('c5'),
      'furnace',
      { siteLabel: 'Mill Row 12', model: 'QX', fuel: 'not stated', replaces: ids.furnace },
    ],
  ),
]

test('furnacesOf(file) leads from a record by what it names to its furnace, however far', () => {
  const about = furnacesOf(foldTeamFile(records))
  for (const each of [ids.furnace, id('c1'), id('c2'), id('c3'), id('c4')])
    expect([...about(each)]).toEqual([ids.furnace])
  expect([...about(id('c5'))]).toEqual([id('c5')])
  expect([...about(ids.low)]).toEqual([])
  expect([...about(id('999'))]).toEqual([])
})

test('furnacesOf(file) takes joined furnaces for one', () => {
  const joined = after([id('d1'), 'same as', { kept: ids.bareFurnace, duplicate: ids.furnace }])
  const about = furnacesOf(foldTeamFile([...records, ...joined.map((one) => ({ ...one, seq: 999 }))]))
  expect([...about(id('c3'))]).toEqual([ids.bareFurnace])
  expect([...about(id('d1'))]).toEqual([ids.bareFurnace])
})

test('furnacesOf(file) finds what a walk along every reference finds, for every record of the demo company', () => {
  const file = foldTeamFile(demoRecords(demoSeed).map((record, at) => ({ ...record, seq: at + 1 })))
  const about = furnacesOf(file)
  for (const [each] of [...file.records].filter((_, place) => place % 7 === 0)) {
    const found = new Set<string>()
    const queue = [each]
    for (const one of queue) {
      const record = file.records.get(one)!
      if (record.kind === 'furnace') found.add(file.keptId(one))
      else queue.push(...recordKinds[record.kind]!.refersTo(record.entry.body))
    }
    expect(about(each)).toEqual(found)
  }
})
