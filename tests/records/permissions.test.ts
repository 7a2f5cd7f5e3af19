import { expect, test } from 'vitest'
import { checkRecord } from '@/lib/records/checkRecord'
import { roles } from '@/lib/records/envelope'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { permissionTable } from '@/lib/records/permissions'
import { sampleRecords } from './samples'

const everybody = ['manager', 'dispatcher', 'technician']

/** The whole table, written out: a change of it is a change of the product, and is made here on purpose. */
const written: [kind: string, mayAdd: string[], maySee: string[]][] = [
  ['maker', everybody, everybody],
  ['equipment range', everybody, everybody],
  ['position', everybody, everybody],
  ['part', everybody, everybody],
  ['supersession', everybody, everybody],
  ['furnace', everybody, everybody],
  ['gauge', everybody, everybody],
  ['report', everybody, everybody],
  ['settlement', ['manager', 'dispatcher'], everybody],
  ['withdrawal', everybody, everybody],
  ['withholding', ['manager'], everybody],
  ['same as', everybody, everybody],
  ['rating request', everybody, everybody],
  ['found fitted', everybody, everybody],
  ['repair', everybody, everybody],
  ['preference', everybody, everybody],
  ['case', everybody, everybody],
  ['visit', everybody, everybody],
  ['finding', everybody, everybody],
  ['reading', everybody, everybody],
  ['baseline', everybody, everybody],
  ['combustion test', everybody, everybody],
  ['ending', everybody, everybody],
  ['shut-down notice', everybody, everybody],
  ['lifting', ['manager', 'technician'], everybody],
  ['danger answer', everybody, everybody],
  ['fitted part', everybody, everybody],
  ['switch check', everybody, everybody],
  ['asks too', everybody, everybody],
  ['promise', everybody, everybody],
  ['organisation', everybody, everybody],
  ['call attempt', everybody, everybody],
  ['answer seen', everybody, everybody],
  ['tag', everybody, everybody],
  ['photo', everybody, everybody],
  ['import', ['manager'], everybody],
  ['imported lines', everybody, everybody],
  ['warranty answer', ['manager', 'dispatcher'], everybody],
]

test('permissionTable() says of every kind who may add it and who may see it', () => {
  expect(permissionTable().map(({ kind, mayAdd, maySee }) => [kind, mayAdd, maySee])).toEqual(written)
})

test('whoever may add a kind may see it: nobody writes what they can’t read again', () => {
  for (const { kind, mayAdd, maySee } of permissionTable()) {
    for (const role of mayAdd) expect(maySee, kind).toContain(role)
  }
})

test.each(roles)('checkRecord(…) on the device of a %s allows and refuses as the table says', (role) => {
  const file = foldTeamFile(sampleRecords)
  const allowed = (kind: string): boolean => {
    const { body, saidAt } = sampleRecords.findLast((record) => record.kind === kind)!
    const checked = checkRecord(kind, body, file, { id: 'person-1', role, saidAt })
    if (checked.ok) return true
    expect(checked.refusal?.rule).toBe('who may add what')
    expect(checked.refusal?.sentence).toMatch(/^A \w+ may not add a .+\. Ask a .+\.$/)
    return false
  }
  expect(written.map(([kind]) => [kind, allowed(kind)])).toEqual(
    written.map(([kind, mayAdd]) => [kind, mayAdd.includes(role)]),
  )
})
