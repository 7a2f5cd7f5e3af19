import { describe, expect, test } from 'vitest'
import { sameWordsElsewhere } from '@/lib/records/view/sameWords'
import { at, equipment, fileOf, id, ids, report, request, type Told } from '../desk/told'

const before: Told[] = [
  ...equipment,
  [id('a1'), 'rating request', request({ positionId: ids.low }), 'ines', at('09:00')],
  [id('a9'), 'organisation', { name: 'Hobb & Lane counter', source: 'distributor', makerIds: [ids.maker] }],
]
const call: Told = [
  id('d1'),
  'call attempt',
  {
    organisationId: id('a9'),
    requestIds: [id('a1')],
    outcome: 'answered',
    person: 'Berrit, engineering',
    reference: 'C-77',
  },
  'bram',
  at('10:00'),
]
const said = (end: string, time: string, over: Record<string, unknown> = {}, by = 'bram'): Told => [
  id(end),
  'report',
  report({
    saidBy: 'Berrit, engineering',
    proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-1' },
    ...over,
  }),
  by,
  at(time),
]
const found = (told: Told[], record = id('d1'), fields: string[] = ['person']) =>
  sameWordsElsewhere(fileOf([...before, call, ...told]), record, fields).map(({ entry, field }) => [
    entry.id,
    field,
  ])

describe('sameWordsElsewhere(file, id, fields)', () => {
  test('names the reports saved with the call, and from a report the call', () => {
    expect(found([said('c1', '10:00')])).toEqual([[id('c1'), 'saidBy']])
    expect(found([said('c1', '10:00')], id('c1'), ['saidBy'])).toEqual([[id('d1'), 'person']])
  })

  test('names a field that holds the words among others, whatever their case and blanks', () => {
    const note = said('c1', '10:00', { saidBy: undefined, note: 'Spoke with BERRIT,  engineering.' })
    expect(found([note])).toEqual([[id('c1'), 'note']])
  })

  test('names what was recorded later under the same reference, and by somebody else', () => {
    const proof = { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-77' }
    expect(found([said('c1', '15:00', { proof }, 'lale')])).toEqual([[id('c1'), 'saidBy']])
  })

  test('leaves out other calls, other words, what is withheld already and fields that nobody chose', () => {
    expect(found([said('c1', '12:00')])).toEqual([])
    expect(found([said('c1', '10:00', { saidBy: 'Odo' })])).toEqual([])
    expect(found([said('c1', '10:00')], id('d1'), ['note'])).toEqual([])
    expect(found([said('c1', '10:00')], id('ff'))).toEqual([])
  })
})
