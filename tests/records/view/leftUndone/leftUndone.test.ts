import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { gaugesDue } from '@/lib/records/view/leftUndone/gaugesDue'
import { leftUndone } from '@/lib/records/view/leftUndone/leftUndone'
import { unsuitableStill } from '@/lib/records/view/swaps/unsuitableStill'
import {
  aCase,
  at,
  aVisit,
  base,
  combustion,
  ending,
  finding,
  hot,
  ids,
  lifting,
  notice,
  ofVisit,
  opened,
  proven,
  reading,
  repair,
  said,
  team,
  withdrawn,
} from '../case/team'

type Records = readonly (HeldRecord | readonly HeldRecord[])[]

const id = (number: number): string => `01940000-0000-7000-8000-${String(600 + number).padStart(12, '0')}`
const undone = (now: string, ...records: Records) => leftUndone(team(...records), now)

/** A case of one visit that ends as told, opened at 08:00 and ended at 13:00 of a day of January. */
const caseOn = (day: number, number: number, how = 'repaired, not proven'): HeldRecord[] => [
  aCase({}, { id: id(number), at: at(day, '08:00') }),
  aVisit({ caseId: id(number) }, { id: id(number + 1), at: at(day, '09:00') }),
  ending({ caseId: id(number), visitId: id(number + 1), how }, { at: at(day, '13:00') }),
]

describe('leftUndone(file, now)', () => {
  test('a team with nothing on record has nothing left undone but ratings that nobody asks for', () => {
    expect(undone(at(20))).toEqual({
      unsuitable: [],
      leftOff: [],
      notEnded: [],
      notProven: [],
      oftenBack: [],
      disputes: [],
      requests: [],
      worthVerifying: [],
      gauges: [],
    })
  })

  test('a visit is never ended until an ending of it stands', () => {
    expect(undone(at(20), opened).notEnded).toMatchObject([{ caseId: ids.case, visit: { id: ids.visit } }])
    const end = ending({ how: 'no fault found' })
    expect(undone(at(20), opened, end).notEnded).toEqual([])
    expect(undone(at(20), opened, end, withdrawn(end, at(13))).notEnded).toHaveLength(1)
    expect(undone(at(20), opened, withdrawn(opened[0]!, at(13))).notEnded).toEqual([])
    expect(undone(at(12, '08:59'), opened).notEnded).toEqual([])
  })

  test('a repair is not proven when it says so, or claims proof and lacks something, and says what', () => {
    expect(undone(at(20), proven, ending()).notProven).toEqual([])
    expect(undone(at(20), proven, ending({ how: 'repaired, not proven' })).notProven).toMatchObject([
      { caseId: ids.case, endedAt: at(12, '13:00'), saidProven: false, lacks: [] },
    ])
    const noCo = [...opened, finding('trap', 'sludge in it'), reading(0.4), repair(), hot(0.65)]
    const [lacking] = undone(at(20), noCo, hot(0.95, { positionId: ids.high }), ending()).notProven
    expect(lacking).toMatchObject({ saidProven: true })
    expect(lacking!.lacks).toContain('CO in the room after the repair.')
  })

  test('a later case on the same furnace and circuit carries on for an earlier one that was not proven', () => {
    const [first, second] = [caseOn(5, 10), caseOn(14, 20)]
    expect(undone(at(20), first, second).notProven.map(({ caseId }) => caseId)).toEqual([id(20)])
    const other = second.map((record) =>
      record.kind === 'case' ? { ...record, body: { ...record.body, circuit: 'something else' } } : record,
    )
    expect(undone(at(20), first, other).notProven.map(({ caseId }) => caseId)).toEqual([id(10), id(20)])
  })

  test('a furnace with two callbacks within 30 days each, the last year, comes often; one callback is not often', () => {
    const [first, second, third] = [caseOn(2, 10), caseOn(12, 20), caseOn(22, 30)]
    expect(undone(at(40), first, second).oftenBack).toEqual([])
    const [often] = undone(at(40), first, second, third).oftenBack
    expect(often).toMatchObject({ furnace: { id: ids.furnace }, lastAt: at(22, '08:00') })
    // Ended on the 2nd at 13:00 and opened on the 12th at 08:00, and ten days later again: 9 days 19 hours.
    expect(often!.repeats.map(({ earlierId, laterId, days }) => [earlierId, laterId, days])).toEqual([
      [id(10), id(20), 9 + 19 / 24],
      [id(20), id(30), 9 + 19 / 24],
    ])
    expect(undone(at(22 + 365), first, second, third).oftenBack).toEqual([])
  })

  test('a furnace is left off until its notice is lifted, first those without a notice', () => {
    const off = notice()
    expect(undone(at(20), opened, off).leftOff).toMatchObject([
      { furnace: { id: ids.furnace }, noticeId: off.id, since: off.saidAt, found: 'Spillage' },
    ])
    expect(undone(at(20), opened, off, lifting(off)).leftOff).toEqual([])
    const [bare] = undone(at(20), opened, ending({ how: 'left off' })).leftOff
    expect(bare).toMatchObject({ caseId: ids.case, since: at(12, '13:00') })
    expect(bare!.noticeId).toBeUndefined()
  })

  test('a rating request is old a week after it was asked, until a report answers it', () => {
    const asked = said(
      'rating request',
      { positionId: ids.low, printed: 'nothing', needs: [] },
      { id: id(1), at: at(2) },
    )
    expect(undone(at(9), asked).requests).toEqual([])
    expect(undone(at(9, '12:01'), asked).requests.map(({ lead }) => lead.id)).toEqual([id(1)])
    const answer = base.find(({ id: report }) => report === ids.lowCloses)!
    const answered = said('report', { ...answer.body, requestId: id(1) }, { at: at(10) })
    expect(undone(at(20), asked, answered).requests).toEqual([])
  })

  test('what was combusted and read on a case leaves nothing undone', () => {
    expect(undone(at(20), proven, combustion(), ending())).toMatchObject({
      notProven: [],
      notEnded: [],
      leftOff: [],
    })
  })
})

describe('gaugesDue(file, today)', () => {
  const gauge = base.find(({ id: one }) => one === ids.gauge)!
  const due = (calibrationDue: string | undefined, today: string) => {
    const { calibrationDue: _, ...rest } = gauge.body
    const body = calibrationDue === undefined ? rest : { ...rest, calibrationDue }
    const file = team(said('gauge', body, { id: id(1), at: at(2) }), withdrawn(gauge, at(2)))
    return gaugesDue(file, today).map(({ standing, days }) => [standing, days])
  }

  test.each([
    ['2026-02-19', '2026-01-20', [['soon', 30]]],
    ['2026-02-20', '2026-01-20', []],
    ['2026-01-20', '2026-01-20T18:00:00.000Z', [['soon', 0]]],
    ['2026-01-19', '2026-01-20', [['past', -1]]],
    [undefined, '2026-01-20', [['no date on file', undefined]]],
  ])('due %s on %s', (calibrationDue, today, expected) => {
    expect(due(calibrationDue, today)).toEqual(expected)
  })
})

describe('unsuitableStill(file)', () => {
  const found = (more: Record<string, unknown> = {}, when = at(12, '09:20')) =>
    said(
      'found fitted',
      {
        furnaceId: ids.furnace,
        positionId: ids.low,
        printed: 'ADJ .3-1.2',
        what: 'adjustable or general-purpose switch',
        fittedWhen: 'not known',
        fittedBy: 'another company',
        foundOn: '2026-01-12',
        ...more,
      },
      { at: when },
    )
  const putRight = repair(
    { switchReplaced: true, fittedPart: ids.newPart, positionId: ids.low },
    { at: at(12, '11:00') },
  )
  const read = (printed: string, positionId: string = ids.low) =>
    said('fitted part', { furnaceId: ids.furnace, positionId, printed }, { at: at(12, '09:25') })
  const printedOf = (...records: Records) => unsuitableStill(team(...records)).map(({ printed }) => printed)

  test('stays until the factory part is back', () => {
    expect(unsuitableStill(team(opened, found()))).toMatchObject([
      {
        furnace: { id: ids.furnace },
        what: 'adjustable or general-purpose switch',
        dangers: ['general-purpose-switch-fitted'],
        leftOff: false,
      },
    ])
    expect(printedOf(opened, found(), putRight)).toEqual([])
  })

  test('a general-purpose number read off a switch counts too, once beside what was found there', () => {
    expect(printedOf(opened, read('gp adj 1'))).toEqual(['gp adj 1'])
    expect(printedOf(opened, read('gp adj 1'), putRight)).toEqual([])
    expect(printedOf(opened, found(), read('gp adj 1'))).toEqual(['ADJ .3-1.2'])
    expect(printedOf(opened, found(), read('gp adj 1', ids.high))).toEqual(['ADJ .3-1.2', 'gp adj 1'])
    expect(printedOf(opened, read('OM-7731'))).toEqual([])
  })

  test('one that may be running comes before one that is left off', () => {
    const other = id(90)
    const files = [
      said('furnace', { siteLabel: 'Tarn Gate 3', model: 'LF2', fuel: 'not stated' }, { id: other }),
      found(),
      notice({ caseId: undefined }),
      found({ furnaceId: other, positionId: undefined, printed: 'second' }, at(14)),
    ]
    expect(printedOf(files)).toEqual(['second', 'ADJ .3-1.2'])
  })

  test('a model number alone is listed without a furnace', () => {
    const [one] = unsuitableStill(team(found({ furnaceId: undefined, model: 'LF2-080-B' })))
    expect(one).toMatchObject({ model: 'LF2-080-B' })
    expect(one!.furnace).toBeUndefined()
  })

  test('the visit that it was found on has no part in it', () => {
    expect(printedOf(opened, found(), ending({ ...ofVisit, how: 'no fault found' }))).toEqual(['ADJ .3-1.2'])
  })
})
