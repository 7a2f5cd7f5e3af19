import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { callbackFigures } from '@/lib/records/view/callbacks/callbackFigures'
import { letterFigures } from '@/lib/records/view/letter/letterFigures'
import {
  aCase,
  at,
  aVisit,
  base,
  combustion,
  ending,
  hot,
  ids,
  notice,
  opened,
  reading,
  repair,
  said,
  team,
} from '../case/team'

const id = (number: number): string => `01940000-0000-7000-8000-${String(700 + number).padStart(12, '0')}`
const request = said(
  'rating request',
  { positionId: ids.low, printed: 'nothing', needs: [] },
  { id: id(90), at: at(3) },
)
const report = base.find(({ id: one }) => one === ids.lowCloses)!
/** January: a switch replaced on a reading below make, back after a week; left off then. February: nothing yet. */
const told: HeldRecord[] = [
  ...opened,
  reading(0.4),
  repair({ switchReplaced: true, fittedPart: ids.newPart, positionId: ids.low }),
  hot(0.7),
  combustion(),
  ending({ how: 'repaired, not proven' }),
  aCase({}, { id: id(1), at: at(20, '08:00') }),
  aVisit({ caseId: id(1) }, { id: id(2), at: at(20, '09:00') }),
  notice({ caseId: id(1) }, { at: at(20, '12:00') }),
  ending({ caseId: id(1), visitId: id(2), how: 'left off' }, { at: at(20, '13:00') }),
  request,
  said('report', { ...report.body, requestId: request.id }, { at: at(5) }),
]

describe('letterFigures(file, month, now)', () => {
  test('counts what happened in the month, worked by hand', () => {
    const { month, before } = letterFigures(team(told), '2026-01', at(100))
    expect(month).toMatchObject({
      month: '2026-01',
      standing: 'settled',
      // The window of a job done at the very end of January: 30 days, the whole of 2 March.
      settlesAt: Date.UTC(2026, 2, 3),
      cameBack: { count: 1, of: 1, countedIds: [ids.case] },
      fixesThatCameBack: { count: 0, of: 0 },
      opened: 2,
      endedAs: {
        'repaired and proven': 0,
        'repaired, not proven': 1,
        'waiting for part': 0,
        'no fault found': 0,
        'repair declined': 0,
        'left off': 1,
      },
      readings: { count: 1, of: 1 },
      coTests: { count: 1, of: 1 },
      swaps: 1,
      swapsMissing: { count: 1, of: 1 },
      events: { 'left off and tagged': 1, 'jumper or bypass': 0, 'CO in the flue': 0 },
      answered: 1,
    })
    // Six of the base, said on the 1st, and the answer.
    expect(month.reports).toBe(7)
    expect(before).toMatchObject({ month: '2025-12', opened: 0, reports: 0, cameBack: { count: 0, of: 0 } })
  })

  test('a month is open until the last of its jobs can no longer come back', () => {
    const standing = (now: number) =>
      letterFigures(team(told), '2026-01', new Date(now).toISOString()).month.standing
    expect(standing(Date.UTC(2026, 2, 3) - 1)).toBe('open')
    expect(standing(Date.UTC(2026, 2, 3))).toBe('settled')
  })

  test('what happens later than now is in no figure, and what waits is as it stands now', () => {
    const early = letterFigures(team(told), '2026-01', at(13))
    expect(early.month).toMatchObject({ opened: 1, cameBack: { count: 0, of: 1 }, standing: 'open' })
    expect(early.month.events['left off and tagged']).toBe(0)
    const { undone } = letterFigures(team(told), '2025-12', at(100))
    expect(undone.leftOff).toHaveLength(1)
  })

  test('callbacks are those of the callbacks screen, month by month, from its own function', () => {
    const file = team(told)
    const now = at(100)
    const { month, before, question } = letterFigures(file, '2026-02', now)
    const { months } = callbackFigures(file, { ...question, fromMonth: '2020-01', toMonth: '2026-12' }, now)
    const of = (name: string) => months.find((one) => one.month === name)
    expect(before.cameBack).toEqual(of('2026-01')?.cameBack)
    expect(before.standing).toBe(of('2026-01')?.standing)
    expect(before.settlesAt).toBe(of('2026-01')?.settlesAt)
    expect(month.cameBack).toEqual(of('2026-02')?.cameBack)
  })

  test('what is no month is refused', () => {
    expect(() => letterFigures(team(), '2026-13', at(1))).toThrow(RangeError)
  })
})
