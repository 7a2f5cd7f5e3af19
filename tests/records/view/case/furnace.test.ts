import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { contextOf } from '@/lib/records/view/case/context'
import { noticesOf, standingNotice } from '@/lib/records/view/case/notices'
import { positionsOf, positionsToProve } from '@/lib/records/view/case/positionsToProve'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { goneSince, putRightBy, unsuitableIn } from '@/lib/records/view/unsuitable'
import {
  aCase,
  at,
  base,
  finding,
  ids,
  lifting,
  notice,
  opened,
  repair,
  riser,
  said,
  team,
  viewOf,
  withdrawn,
} from './team'

const twin = '01940000-0000-7000-8000-000000000060'
const join = said('same as', { kept: ids.furnace, duplicate: twin, reason: 'Entered twice.' })
const twinRecord = said(
  'furnace',
  { siteLabel: 'Mill Row', model: 'LF2-080-B', fuel: 'natural gas' },
  { id: twin },
)

describe('noticesOf and standingNotice', () => {
  const first = notice({}, { at: at(12) })
  const second = notice({}, { at: at(13) })
  const standing = (...records: HeldRecord[]) => standingNotice(team(records), ids.furnace)?.entry.id

  test('the oldest notice that nothing has lifted stands', () => {
    expect(standing(second, first)).toBe(first.id)
    expect(standing(first, second, lifting(first))).toBe(second.id)
    expect(standing(first, lifting(first))).toBeUndefined()
    expect(standing()).toBeUndefined()
  })

  test('each notice is shown with what lifted it, oldest first, withdrawn ones left out', () => {
    const up = lifting(first)
    const notices = noticesOf(team(second, first, up), ids.furnace)
    expect(notices.map(({ entry, lifting }) => [entry.id, lifting?.id])).toEqual([
      [first.id, up.id],
      [second.id, undefined],
    ])
    expect(noticesOf(team(first, withdrawn(first)), ids.furnace)).toEqual([])
  })

  test('a notice on the duplicate of a furnace is one of the furnace', () => {
    const there = notice({ furnaceId: twin, caseId: undefined })
    expect(standing(twinRecord, there)).toBeUndefined()
    expect(standing(twinRecord, there, join)).toBe(there.id)
  })
})

describe('unsuitableIn and putRightBy', () => {
  const found = (more = {}, when = at(12, '09:20')) =>
    said(
      'found fitted',
      {
        furnaceId: ids.furnace,
        positionId: ids.low,
        printed: 'GP-ADJ-1',
        what: 'adjustable or general-purpose switch',
        fittedWhen: 'Last winter',
        fittedBy: 'us',
        foundOn: '2026-01-12',
        ...more,
      },
      { at: when },
    )
  const fitted = (more = {}, when = at(12, '11:00')) =>
    repair({ positionId: ids.low, fittedPart: ids.newPart, switchReplaced: true, ...more }, { at: when })
  const isPutRight = (one: HeldRecord, ...records: HeldRecord[]): boolean => {
    const file = team(opened, one, records)
    return putRightBy(file, file.foundFitted.get(one.id)!) !== undefined
  }

  test('a factory part listed for the position, fitted afterwards, puts it right, in any version of the record', () => {
    expect(isPutRight(found(), fitted())).toBe(true)
    const old = said(
      'repair',
      {
        furnaceId: ids.furnace,
        positionId: ids.low,
        done: 'Switch',
        fittedPart: ids.newPart,
        on: '2026-01-13',
      },
      { version: 1, at: at(13) },
    )
    expect(isPutRight(found(), old)).toBe(true)
  })

  test('what was fitted before it was found does not', () => {
    expect(isPutRight(found(), fitted({}, at(12, '08:00')))).toBe(false)
    expect(isPutRight(found(), fitted({ on: '2026-01-11' }))).toBe(false)
  })

  test('nor a part of another position, nor a repair of no position or without a part', () => {
    expect(isPutRight(found(), fitted({ fittedPart: ids.highPart }))).toBe(false)
    expect(isPutRight(found(), fitted({ positionId: ids.high, fittedPart: ids.highPart }))).toBe(false)
    expect(isPutRight(found(), repair())).toBe(false)
    expect(isPutRight(found(), fitted({ fittedPart: undefined, switchReplaced: false }))).toBe(false)
  })

  describe('a jumper', () => {
    const jumper = found({ what: 'jumper or bypass' })
    const isGone = (...records: HeldRecord[]): boolean => {
      const file = team(opened, jumper, records)
      return goneSince(file, file.foundFitted.get(jumper.id)!) !== undefined
    }

    test('is not out by some repair without a part in its position, only by one that names it', () => {
      const some = repair({ positionId: ids.low, done: 'Hose renewed' })
      expect(isPutRight(jumper, some)).toBe(false)
      expect(isGone(some)).toBe(false)
      expect(isPutRight(jumper, repair({ done: 'Jumper out', putsRight: jumper.id }))).toBe(true)
      const before = repair({ putsRight: jumper.id, on: '2026-01-11' }, { at: at(11) })
      expect(isPutRight(jumper, before)).toBe(false)
    })

    test('nor is a generic switch put right by naming it: the factory part has to be in', () => {
      const generic = found()
      expect(isPutRight(generic, repair({ positionId: ids.low, putsRight: generic.id }))).toBe(false)
    })

    test('is gone when it is ruled out afterwards, until it is seen again', () => {
      const gone = finding('jumper-or-bypass', 'ruled out', '10:00')
      expect(isGone(gone)).toBe(true)
      expect(isGone(finding('jumper-or-bypass', 'ruled out', '09:00'))).toBe(false)
      expect(isGone(gone, finding('jumper-or-bypass', 'seen', '10:30'))).toBe(false)
      const elsewhere = said('furnace', base.find(({ id }) => id === ids.furnace)!.body)
      const other = aCase({ furnaceId: elsewhere.id }, { id: '01940000-0000-7000-8000-000000000046' })
      const there = finding('jumper-or-bypass', 'ruled out', '10:00', { caseId: other.id })
      expect(isGone(elsewhere, other, there)).toBe(false)
    })

    test('ruling it out says nothing of a generic switch', () => {
      const generic = found()
      const file = team(opened, generic, finding('jumper-or-bypass', 'ruled out', '10:00'))
      expect(goneSince(file, file.foundFitted.get(generic.id)!)).toBeUndefined()
    })
  })

  test('a withdrawn repair puts nothing right', () => {
    const one = fitted()
    expect(isPutRight(found(), one, withdrawn(one))).toBe(false)
  })

  test('unsuitableIn lists those of a furnace that are not put right, oldest first', () => {
    const [late, early] = [found({ positionId: ids.high }, at(12, '09:40')), found()]
    const file = team(opened, late, early, found({ furnaceId: undefined }))
    expect(unsuitableIn(file, ids.furnace).map(({ id }) => id)).toEqual([early.id, late.id])
    expect(unsuitableIn(team(opened, late, early, fitted()), ids.furnace).map(({ id }) => id)).toEqual([
      late.id,
    ])
  })
})

describe('the furnace of a case', () => {
  test('its positions are those of its range, by name; a repair is proven at those that prove air, on whatever stage', () => {
    const drain = said('position', {
      rangeId: ids.range,
      name: 'Drain',
      stage: 'not stated',
      kind: 'one-port',
      between: 'port and room',
      tap: 'collector box',
      sense: 'suction',
    })
    const gas = said('position', {
      ...drain.body,
      name: 'Gas valve',
      kind: 'gas pressure',
      stage: 'single stage',
    })
    const file = team(opened, drain, gas, riser)
    const { file: ofCase } = viewOf(file)
    const names = (entries: { body: { name: string } }[]) => entries.map(({ body }) => body.name)
    expect(names(positionsOf(file, ofCase))).toEqual([
      'Drain',
      'Gas valve',
      'High fire',
      'Low fire',
      'Vent pressure',
    ])
    expect(names(positionsToProve(file, ofCase))).toEqual(['Drain', 'High fire', 'Low fire', 'Vent pressure'])
  })

  test('without a model range no position of it is known', () => {
    const { rangeId, ...bare } = base.find(({ id }) => id === ids.furnace)!.body
    const alone = said('furnace', bare, { id: twin })
    const theCase = said('case', { furnaceId: twin, complaint: 'No heat', circuit: 'proving circuit' })
    const file = team(alone, theCase)
    expect(rangeId).toBeDefined()
    expect(positionsOf(file, viewOf(file, undefined, theCase.id).file)).toEqual([])
  })

  test('its context is what makes two cases alike, and only what is on record of it', () => {
    const file = team(opened, twinRecord)
    expect(contextOf(file, viewOf(file).file)).toEqual({
      furnace: ids.furnace,
      fuel: 'natural gas',
      'model range': ids.range,
      venting: 'plastic, 2 in.',
    })
    expect(contextOf(file, { furnace: file.furnaces.get(twin)! })).toEqual({
      furnace: twin,
      fuel: 'natural gas',
    })
  })

  test('what the weighing is told of it leaves out what is not recorded', () => {
    const file = team(twinRecord)
    expect(furnaceForRating(file.furnaces.get(ids.furnace)!)).toEqual({
      id: ids.furnace,
      elevationMetres: 300,
      revision: 'B',
      serial: 'S2204-118',
    })
    expect(furnaceForRating(file.furnaces.get(twin)!)).toEqual({ id: twin })
  })
})
