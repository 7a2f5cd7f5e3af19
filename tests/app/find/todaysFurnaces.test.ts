import { describe, expect, test } from 'vitest'
import { todaysFurnaces } from '@/app/find/todaysFurnaces'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { fullNotice, of, type Row, recordsOf } from '../cases/end/provenCase'
import {
  beforeRows,
  begunRows,
  cases,
  endedProvenRows,
  someCases,
  waitingRows,
} from '../cases/list/someCases'
import { ids } from '../setup/smallFile'

const on = (rows: readonly Row[] | undefined, today: string) =>
  todaysFurnaces(foldTeamFile(rows === undefined ? someCases : recordsOf(rows)), today).map(
    ({ furnace, open, standing, visitOn }) => [furnace.id, open.id, standing, visitOn],
  )
const id = (index: number) => `01920000-0000-7000-8000-${(0xf000 + index).toString(16).padStart(12, '0')}`

describe('todaysFurnaces(file, today)', () => {
  test('lists furnaces of open cases, the newest visit first, each once with its newest such case', () => {
    expect(on(undefined, '2026-02-01')).toEqual([
      [ids.bareFurnace, cases.begun, 'being worked on', '2026-01-25'],
      [ids.furnace, cases.before, 'repaired, not proven', '2025-12-04'],
    ])
  })

  test('a case that is over is listed on the day of its visit, and not the day after', () => {
    expect(on(endedProvenRows, '2026-01-12')).toEqual([
      [ids.furnace, of.case, 'repaired and proven', '2026-01-12'],
    ])
    expect(on(endedProvenRows, '2026-01-13')).toEqual([])
  })

  test('an ending that lacks what it needs leaves the case open for thirty days', () => {
    const unfinished: Row = [
      of.ending,
      'ending',
      { caseId: of.case, visitId: of.visit, how: 'repair declined' },
      '2026-01-12T17:00:00.000Z',
    ]
    const rows = [...endedProvenRows.slice(0, -1), unfinished]
    expect(on(rows, '2026-02-10')).toEqual([[ids.furnace, of.case, 'not finished', '2026-01-12']])
    expect(on(rows, '2026-02-11')).toEqual([])
  })

  test('a furnace that is left off stays on the list until its notice is lifted', () => {
    const notice: Row = ['01920000-0000-7000-8000-00000000f0f0', 'shut-down notice', { ...fullNotice }]
    const lifting: Row = [
      '01920000-0000-7000-8000-00000000f0f1',
      'lifting',
      { noticeId: notice[0], on: '2026-01-13', because: 'Heat exchanger replaced' },
    ]
    expect(on([...endedProvenRows, notice], '2026-06-01')).toEqual([
      [ids.furnace, of.case, 'left off', '2026-01-12'],
    ])
    expect(on([...endedProvenRows, notice, lifting], '2026-06-01')).toEqual([])
  })

  test('a case that nobody has been to yet counts from the day it was opened', () => {
    const called: Row = [
      id(0),
      'case',
      { furnaceId: ids.furnace, complaint: 'No heat', circuit: 'proving circuit' },
      '2026-01-31T09:00:00.000Z',
    ]
    expect(on([...begunRows, called], '2026-02-01')[0]).toEqual([
      ids.furnace,
      called[0],
      'being worked on',
      undefined,
    ])
  })

  test('never more than eight', () => {
    const many: Row[] = Array.from({ length: 12 }, (_, index): Row[] => [
      [id(2 * index), 'furnace', { siteLabel: `Weir ${index}`, model: 'LF2-060-A', fuel: 'not stated' }],
      [
        id(2 * index + 1),
        'case',
        { furnaceId: id(2 * index), complaint: 'No heat', circuit: 'proving circuit' },
        new Date(Date.UTC(2026, 0, 1 + index)).toISOString(),
      ],
    ]).flat()
    const listed = on(many, '2026-02-01')
    expect(listed).toHaveLength(8)
    expect(listed[0]![0]).toBe(id(22))
  })

  test('a withdrawn case is on no list', () => {
    const withdrawal: Row = [
      id(40),
      'withdrawal',
      { record: cases.begun, reason: 'Typed for the wrong house' },
    ]
    expect(on([...begunRows, withdrawal], '2026-01-25')).toEqual([])
  })

  test('the furnace of two open cases comes with the one whose visit is newer', () => {
    expect(on([...beforeRows, ...waitingRows, ...begunRows], '2026-02-01').map(([, open]) => open)).toEqual([
      cases.begun,
      cases.before,
    ])
  })
})
