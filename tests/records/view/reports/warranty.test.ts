import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { answersOfRepair } from '@/lib/records/view/answersOfRepair'
import { everythingUntil } from '@/lib/records/view/reports/period'
import { warrantyReport } from '@/lib/records/view/reports/warrantyReport'
import { at, hot, ids, inches, ofFurnace, opened, reading, repair, said, team, withdrawn } from '../case/team'

type Records = readonly (HeldRecord | readonly HeldRecord[])[]

const swapId = '01940000-0000-7000-8000-000000000800'
const inducerId = '01940000-0000-7000-8000-000000000801'
const swap = repair(
  { done: 'Switch replaced', switchReplaced: true, fittedPart: ids.newPart, positionId: ids.low },
  { id: swapId },
)
const inducer = repair(
  { done: 'Inducer replaced', switchReplaced: false, parts: 'Inducer IN-20' },
  { id: inducerId, at: at(12, '11:10') },
)
const answer = (body: Record<string, unknown>, when = at(20)): HeldRecord =>
  said(
    'warranty answer',
    {
      repairId: swapId,
      partReturned: 'OM-7731',
      outcome: 'denied',
      answeredBy: 'Counter',
      on: when.slice(0, 10),
      ...body,
    },
    { at: when },
  )
const usd = (amountMinorUnits: number) => ({ amountMinorUnits, currency: 'USD' })
const pump = (when: string) =>
  said(
    'switch check',
    {
      ...ofFurnace,
      positionId: ids.low,
      what: 'off the furnace',
      pulls: [inches(0.8)],
      gaugeId: ids.gauge,
      heldForTenSeconds: 'held',
      pumpLineProvenTight: true,
    },
    { at: when },
  )
const reportOf = (...records: Records) =>
  warrantyReport(team(opened, swap, inducer, ...records), everythingUntil(at(60)))
const evidenceOf = (...records: Records) => reportOf(...records).open[0]!.evidence

describe('warrantyReport(file, period)', () => {
  test('by hand: two denied of 184.50 and 15.50 USD make 200.00, a euro stands apart, one has no amount', () => {
    const report = reportOf(
      answer({ partReturned: 'A', ...usd(18450) }),
      answer({ partReturned: 'B', ...usd(1550) }, at(21)),
      answer({ partReturned: 'C', amountMinorUnits: 100, currency: 'EUR' }),
      answer({ partReturned: 'D' }),
      answer({ repairId: inducerId, partReturned: 'IN-20', outcome: 'credited', ...usd(30000) }),
      answer({ repairId: inducerId, partReturned: 'IN-20 plug', outcome: 'waiting' }),
    )
    expect(report.counts).toEqual([
      { outcome: 'credited', count: 1, sums: [['USD', 30000]], withoutAmount: 0 },
      {
        outcome: 'denied',
        count: 4,
        sums: [
          ['EUR', 100],
          ['USD', 20000],
        ],
        withoutAmount: 1,
      },
      { outcome: 'waiting', count: 1, sums: [], withoutAmount: 1 },
    ])
    expect(report.open.map(({ answer: { body } }) => body.partReturned)).toEqual([
      'B',
      'D',
      'C',
      'A',
      'IN-20 plug',
    ])
  })

  test('the newest answer about a part counts, by its day, however its number is spelt; both stay readable', () => {
    const waiting = answer({ outcome: 'waiting', partReturned: 'om 7731' })
    const denied = answer({ ...usd(100) }, at(22))
    const late = answer({ outcome: 'waiting', on: '2026-01-19' }, at(23))
    const counted = (...records: Records) =>
      reportOf(...records).counts.flatMap(({ outcome, count }) => (count === 0 ? [] : [outcome]))
    expect(counted(waiting)).toEqual(['waiting'])
    expect(counted(waiting, denied, late)).toEqual(['denied'])
    const [answers] = answersOfRepair(team(opened, swap, waiting, denied, late), swapId)
    expect(answers!.map(({ id }) => id)).toEqual([late.id, waiting.id, denied.id])
    expect(counted(waiting, denied, withdrawn(denied))).toEqual(['waiting'])
    expect(counted(waiting, withdrawn(waiting))).toEqual([])
  })

  test('an answer leaves the report with its repair, and with its period', () => {
    expect(reportOf(answer({}), withdrawn(swap, at(21))).open).toEqual([])
    const file = team(opened, swap, answer({}))
    const from = Date.parse('2026-01-20T00:00:00Z')
    expect(warrantyReport(file, { from, before: from + 1 }).open).toHaveLength(1)
    expect(warrantyReport(file, { from: from + 1, before: from + 2 }).open).toEqual([])
  })

  test('nothing on record is said to be nothing, with what the replacement lacked', () => {
    const [denied] = reportOf(answer({})).open
    expect(denied!.evidence).toEqual({
      readingsBefore: 0,
      contactSeenOpen: false,
      checkedOffTheFurnace: false,
      readAfterwards: false,
    })
    expect(denied!.swap?.missing).toContain('reading-at-the-switch')
    expect(reportOf(answer({})).deniedWithNothingMissing).toBe(0)
  })

  test('what stood before the repair counts as before it; a pump on the bench counts until the answer', () => {
    expect(evidenceOf(reading(0.9), hot(0.7), pump(at(15)), answer({}))).toEqual({
      readingsBefore: 1,
      contactSeenOpen: true,
      checkedOffTheFurnace: true,
      readAfterwards: true,
    })
    expect(
      evidenceOf(
        reading(0.9, { contacts: 'closed', against: undefined }),
        reading(0.9, {}, { at: at(12, '11:05') }),
        pump(at(21)),
        hot(0.7, {}, { at: at(21) }),
        answer({}),
      ),
    ).toEqual({
      readingsBefore: 0,
      contactSeenOpen: false,
      checkedOffTheFurnace: false,
      readAfterwards: false,
    })
  })

  test('a reading at another switch is no evidence for this one, and a part that is no switch has no such list', () => {
    expect(evidenceOf(reading(0.9, { positionId: ids.high }), answer({})).readingsBefore).toBe(0)
    const [other] = reportOf(reading(0.9), answer({ repairId: inducerId, partReturned: 'IN-20' })).open
    expect(other!.swap).toBeUndefined()
    expect(other!.evidence.readingsBefore).toBe(1)
  })
})
