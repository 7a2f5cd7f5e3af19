import { expect, test } from 'vitest'
import { furnaceOfCase, otherSerialSeen } from '@/lib/records/view/case/furnaceSeen'
import { ids, opened, team, viewOf } from './team'

const seen = (serialSeen: string | undefined) =>
  viewOf(
    team(
      opened.map((record) =>
        record.kind === 'case' ? { ...record, body: { ...record.body, serialSeen } } : record,
      ),
    ),
  ).file

test('another serial on the plate is another furnace; blanks, dashes and case are none', () => {
  expect(otherSerialSeen(seen('WRONG-99'))).toBe('WRONG-99')
  expect(otherSerialSeen(seen('s2204 118'))).toBeUndefined()
  expect(otherSerialSeen(seen(undefined))).toBeUndefined()
})

test('what is on file of the old furnace is not taken for it: neither id, serial nor revision', () => {
  expect(furnaceOfCase(seen('WRONG-99'))).toEqual({ id: ids.case, serial: 'WRONG-99', elevationMetres: 300 })
  expect(furnaceOfCase(seen('S2204-118'))).toEqual({
    id: ids.furnace,
    serial: 'S2204-118',
    revision: 'B',
    elevationMetres: 300,
  })
})
