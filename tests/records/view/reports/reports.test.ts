import { describe, expect, test } from 'vitest'
import { usualCallbackWindow } from '@/lib/core/callbacks'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { causesOverturned } from '@/lib/records/view/reports/causesOverturned'
import { completeness } from '@/lib/records/view/reports/completeness'
import { everythingUntil } from '@/lib/records/view/reports/period'
import { ratingHealth } from '@/lib/records/view/reports/ratingHealth'
import { safetyEvents } from '@/lib/records/view/reports/safetyEvents'
import { seasons } from '@/lib/records/view/reports/seasons'
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
  notice,
  opened,
  proven,
  reading,
  repair,
  said,
  team,
  withdrawn,
} from '../case/team'

const id = (number: number): string => `01940000-0000-7000-8000-${String(600 + number).padStart(12, '0')}`
const all = everythingUntil(at(400))

describe('causesOverturned(file, window, period)', () => {
  const caseOn = (day: number, number: number, mainCause?: string) => [
    aCase({}, { id: id(number), at: at(day, '08:00') }),
    aVisit({ caseId: id(number) }, { id: id(number + 1), at: at(day, '09:00') }),
    ending(
      { caseId: id(number), visitId: id(number + 1), how: 'repaired, not proven', mainCause },
      { at: at(day, '13:00') },
    ),
  ]
  const told = team(
    caseOn(2, 10, 'trap-plugged'),
    caseOn(12, 20, 'vent-sag'),
    caseOn(22, 30, 'vent-sag'),
    caseOn(32, 40),
  )

  test('another cause, the same again, and one that nobody named, each with its two cases', () => {
    const { overturned, sameAgain, notKnown } = causesOverturned(told, usualCallbackWindow, all)
    const pairs = (repeats: typeof overturned) =>
      repeats.map(({ earlierId, laterId }) => [earlierId, laterId])
    expect(pairs(overturned)).toEqual([[id(10), id(20)]])
    expect(overturned[0]).toMatchObject({ earlierCause: 'trap-plugged', laterCause: 'vent-sag' })
    expect(pairs(sameAgain)).toEqual([[id(20), id(30)]])
    expect(pairs(notKnown)).toEqual([[id(30), id(40)]])
  })

  test('a period takes the callbacks that were opened in it', () => {
    const period = { from: Date.parse(at(20)), before: Date.parse(at(30)) }
    const { overturned, sameAgain, notKnown } = causesOverturned(told, usualCallbackWindow, period)
    expect([overturned.length, sameAgain.length, notKnown.length]).toEqual([0, 1, 0])
  })
})

describe('ratingHealth(file, now)', () => {
  const low = (records = base, now = at(20)) =>
    ratingHealth(foldTeamFile([...records]), now)
      .flatMap(({ ratings }) => ratings)
      .find(({ position }) => position.id === ids.low)!

  test('by range and level: the manual and the technical line make one Verified, the other has no make point', () => {
    const [family, ...others] = ratingHealth(team(), at(20))
    expect(others).toEqual([])
    expect(family).toMatchObject({
      range: { id: ids.range },
      byLevel: { Verified: 1, Supported: 0, Unverified: 0, 'In dispute': 0, 'Not on file': 1 },
    })
    expect(family!.ratings.map(({ position, level }) => [position.body.name, level])).toEqual([
      ['High fire', 'Not on file'],
      ['Low fire', 'Verified'],
    ])
  })

  test('resting on one report is said, and what would raise the level', () => {
    expect(low()).toMatchObject({ level: 'Verified', single: false, heldDownBy: [] })
    const callOnly = base.filter(({ id: one }) => one !== ids.lowCloses)
    expect(low(callOnly)).toMatchObject({ level: 'Supported', single: true, heldDownBy: [] })
    // Three years later the call is older than the usual two, and takes it one step down.
    expect(low(callOnly, at(3 * 366))).toMatchObject({ level: 'Unverified', heldDownBy: ['old calls'] })
    const numbered = base.map((record) =>
      [ids.lowCloses, ids.lowClosesSaid].includes(record.id as never)
        ? { ...record, body: { ...record.body, partNumber: 'OM-7731' } }
        : record,
    )
    expect(low(numbered)).toMatchObject({ level: 'Supported', heldDownBy: ['superseded part number'] })
  })
})

describe('seasons(file, period)', () => {
  test('cases by month of the year, weather by what was seen of those that said anything', () => {
    const other = [
      aCase({}, { id: id(10), at: at(14, '08:00') }),
      aVisit({ caseId: id(10), weather: 'wind, -8 °C' }, { id: id(11), at: at(14, '09:00') }),
    ]
    const february = aCase({}, { id: id(20), at: at(40) })
    const elsewhere = aCase({ circuit: 'something else' }, { id: id(30), at: at(41) })
    const file = team(
      opened,
      finding('in-high-wind', 'ruled out'),
      other,
      finding('in-high-wind', 'seen', at(14, '09:10'), { caseId: id(10), visitId: id(11) }),
      february,
      elsewhere,
    )
    const { months, weather, writtenIds, cases } = seasons(file, all)
    expect(months.map(({ caseIds }) => caseIds.length)).toEqual([2, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0])
    expect(weather.find(({ finding: of }) => of === 'in-high-wind')).toEqual({
      finding: 'in-high-wind',
      seenIds: [id(10)],
      asked: 2,
    })
    expect(weather.filter(({ asked }) => asked > 0)).toHaveLength(1)
    expect(writtenIds).toEqual([id(10)])
    expect(cases).toBe(3)
  })
})

describe('completeness(file, period)', () => {
  const measured = (...records: readonly (HeldRecord | readonly HeldRecord[])[]) =>
    completeness(team(...records), all)

  test('a repair read before and after, with CO in room and flue, is complete in its month', () => {
    expect(measured(proven, ending())).toMatchObject([
      { month: '2026-01', readings: { count: 1, of: 1 }, coTests: { count: 1, of: 1 } },
    ])
  })

  test('a reading on one side only, and CO in the room only, are not', () => {
    const half = [
      ...opened,
      repair(),
      hot(0.65),
      combustion({ flueCoPpm: [] }),
      ending({ how: 'repaired, not proven' }),
    ]
    expect(measured(half)).toMatchObject([{ readings: { count: 0, of: 1 }, coTests: { count: 0, of: 1 } }])
    const found = combustion({ when: 'as found' }, { at: at(12, '09:40') })
    const before = [...opened, reading(0.4), repair(), found, ending({ how: 'repaired, not proven' })]
    expect(measured(before)).toMatchObject([{ readings: { count: 0, of: 1 }, coTests: { count: 0, of: 1 } }])
  })

  test('where nothing was repaired there is nothing to measure afterwards', () => {
    expect(measured(opened, reading(0.4), ending({ how: 'no fault found' }))).toEqual([])
  })
})

describe('safetyEvents(file, period)', () => {
  const whats = (...records: readonly (HeldRecord | readonly HeldRecord[])[]) =>
    safetyEvents(team(...records), all).map(({ what, at: when }) => [what, when])

  test('notices with and without a tag, the newest first; a withdrawn one is none', () => {
    const bare = notice({ tagged: false }, { at: at(14) })
    expect(whats(opened, notice(), bare)).toEqual([
      ['left off, no tag on record', at(14)],
      ['left off and tagged', at(12, '12:40')],
    ])
    expect(whats(opened, bare, withdrawn(bare))).toEqual([])
  })

  test('CO above the limit typed with it, in the room or air-free in the flue', () => {
    expect(whats(opened, combustion())).toEqual([])
    expect(whats(opened, combustion({ roomCoPpm: 10 }))).toEqual([['CO in the room', at(12, '11:40')]])
    // 70 ppm at 8 % oxygen is 70 · 20.9 / 12.9 = 113 ppm air-free, above 100.
    expect(whats(opened, combustion({ flueCoPpm: [70, 70] }))).toEqual([['CO in the flue', at(12, '11:40')]])
  })

  test('a jumper tapped as seen and recorded as found fitted on one day is one; on another day it is another', () => {
    const fitted = (day: number) =>
      said(
        'found fitted',
        {
          furnaceId: ids.furnace,
          printed: 'nothing',
          what: 'jumper or bypass',
          fittedWhen: 'not known',
          fittedBy: 'not known',
          foundOn: '2026-01-12',
        },
        { at: at(day, '09:20') },
      )
    const seen = finding('jumper-or-bypass', 'seen')
    expect(whats(opened, seen, fitted(12))).toEqual([['jumper or bypass', at(12, '09:10')]])
    expect(whats(opened, seen, fitted(13))).toHaveLength(2)
    expect(whats(opened, finding('jumper-or-bypass', 'ruled out'))).toEqual([])
  })

  test('a period takes what was recorded in it', () => {
    const file = team(opened, notice())
    const [from, before] = [Date.parse(at(12, '12:40')), Date.parse(at(12, '12:41'))]
    expect(safetyEvents(file, { from, before })).toHaveLength(1)
    expect(safetyEvents(file, { from: before, before: before + 1 })).toEqual([])
  })
})
