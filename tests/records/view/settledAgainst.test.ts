import { describe, expect, test } from 'vitest'
import { settledAgainst } from '@/lib/records/view/settledAgainst'
import { at, equipment, fileOf, id, ids, report, type Told } from '../desk/told'

const sheet = { kind: 'document', name: 'LF2 sheet', page: '3' }
const line = (over: Record<string, unknown> = {}) =>
  report({
    source: 'older literature',
    readBack: undefined,
    proof: sheet,
    origin: 'LF2 sheet page 3',
    ...over,
  })
const told = (opens: Record<string, unknown>): Told[] => [
  ...equipment,
  [id('c1'), 'report', line()],
  [id('c2'), 'report', opens],
  [
    id('c3'),
    'report',
    report({
      pascals: 0.7 * 249.08891,
      source: 'factory support',
      proof: { kind: 'call reference', organisation: 'Orrinmoor line', reference: 'T-9' },
      origin: 'call T-9',
    }),
  ],
  [
    id('d1'),
    'settlement',
    {
      positionId: ids.low,
      action: 'closes',
      pascals: 0.7 * 249.08891,
      limit: 'nominal',
      evidenceReportId: id('c3'),
      overruledReportIds: [id('c1')],
      reason: 'The sheet is of another size.',
    },
    'mara',
    at('12:00'),
  ],
]
const against = (opens: Record<string, unknown>, more: Told[] = [], of = id('c2')) =>
  settledAgainst(fileOf([...told(opens), ...more]), [of]).map(({ settlement, report: { id } }) => [
    settlement.id,
    id,
  ])
const opens = { action: 'opens', pascals: 0.58 * 249.08891 }

describe('settledAgainst(file, reportIds)', () => {
  test('names the settlement that overruled another number of the same page', () => {
    expect(against(line(opens))).toEqual([[id('d1'), id('c2')]])
    expect(against(line({ ...opens, origin: undefined }))).toEqual([[id('d1'), id('c2')]])
  })

  test('says nothing of another page, another switch, or the number that settled it', () => {
    const other = { proof: { ...sheet, page: '4' }, origin: 'LF2 sheet page 4' }
    expect(against(line({ ...opens, ...other }))).toEqual([])
    expect(against(line({ ...opens, positionId: ids.high }))).toEqual([])
    expect(against(line(opens), [], id('c3'))).toEqual([])
  })

  test('says nothing once the evidence is withdrawn and the dispute is open again', () => {
    const gone: Told = [
      id('e1'),
      'withdrawal',
      { record: id('c3'), reason: 'Misheard.' },
      'ines',
      at('13:00'),
    ]
    expect(against(line(opens), [gone])).toEqual([])
  })
})
