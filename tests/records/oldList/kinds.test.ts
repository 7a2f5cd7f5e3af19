import { v7 as uuidv7 } from 'uuid'
import { expect, test } from 'vitest'
import { checkRecord } from '@/lib/records/checkRecord'
import { roles } from '@/lib/records/envelope'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { held, someEquipment } from './someList'

const body = {
  fileName: 'a.csv',
  sha256: 'a'.repeat(64),
  encoding: 'utf-8',
  separator: 'comma',
  rows: 1,
  taken: 1,
}
const equipment = someEquipment()
const imported = held('import', body)
const lines = held('imported lines', { importId: imported.id, lines: [{ row: 2, record: uuidv7() }] })
const file = foldTeamFile([...equipment.all, imported, lines])
const said = (role: (typeof roles)[number]) => ({ id: 'person-1', role, saidAt: '2026-01-12T12:00:00.000Z' })
const withdraw = (record: string, role: (typeof roles)[number]) =>
  checkRecord('withdrawal', { record, reason: 'The wrong list.' }, file, said(role))

test('a whole import is withdrawn by a manager only, and the others are told what they can do', () => {
  expect(withdraw(imported.id, 'manager').ok).toBe(true)
  for (const role of ['dispatcher', 'technician'] as const)
    expect(withdraw(imported.id, role)).toMatchObject({
      ok: false,
      refusal: {
        rule: 'an import is undone by a manager',
        sentence: expect.stringContaining('Ask a manager'),
      },
    })
})

test('what says which rows an import has is not withdrawn by itself: its rows would stand without it', () => {
  for (const role of roles)
    expect(withdraw(lines.id, role)).toMatchObject({ refusal: { rule: 'an import is undone as a whole' } })
})

test('the rows of an import name an import, and records that are not in the log yet', () => {
  const check = (body: Record<string, unknown>) => checkRecord('imported lines', body, file, said('manager'))
  expect(check({ importId: imported.id, lines: [{ row: 2, record: uuidv7() }] }).ok).toBe(true)
  expect(check({ importId: equipment.maker.id, lines: [{ row: 2, record: uuidv7() }] })).toMatchObject({
    refusal: { rule: 'it belongs to an import' },
  })
  expect(check({ importId: imported.id, lines: [{ row: 2, record: equipment.low.id }] })).toMatchObject({
    refusal: { rule: 'an import names new records only' },
  })
})
