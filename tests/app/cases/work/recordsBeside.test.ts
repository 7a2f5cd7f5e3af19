import { expect, test } from 'vitest'
import { recordsBeside } from '@/app/cases/work/recordsBeside'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { held } from '../../setup/fakeDevice'
import { ids as on, settleableRecords } from '../../setup/smallFile'

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
const opened = (of: string): [string, string, Record<string, unknown>] => [
  of,
  'case',
  { furnaceId: on.furnace, complaint: 'No heat', circuit: 'proving circuit' },
]
const tapped = (of: string, caseId: string): [string, string, Record<string, unknown>] => [
  of,
  'finding',
  { caseId, visitId: id('c2'), finding: 'trap', value: 'dry' },
]
const beside = (...records: [string, string, Record<string, unknown>][]): number =>
  recordsBeside(
    foldTeamFile([
      ...settleableRecords,
      ...held(records).map((record, place) => ({ ...record, seq: 200 + place })),
    ]),
    id('c1'),
  )

test('recordsBeside(file, case) stays as it is whatever is said of the case, and taken back of it', () => {
  const before = beside(opened(id('c1')))
  expect(beside(opened(id('c1')), tapped(id('f1'), id('c1')))).toBe(before)
  const takenBack: [string, string, Record<string, unknown>] = [
    id('f2'),
    'withdrawal',
    { record: id('f1'), reason: 'Tapped by mistake' },
  ]
  expect(beside(opened(id('c1')), tapped(id('f1'), id('c1')), takenBack)).toBe(before)
})

test('it changes with whatever is said of another case, or of anything else', () => {
  const before = beside(opened(id('c1')))
  expect(beside(opened(id('c1')), opened(id('c9')))).toBe(before + 1)
  expect(beside(opened(id('c1')), opened(id('c9')), tapped(id('f1'), id('c9')))).toBe(before + 2)
})
