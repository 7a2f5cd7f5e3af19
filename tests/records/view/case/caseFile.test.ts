import { describe, expect, test } from 'vitest'
import { caseFileOf, casesOf } from '@/lib/records/view/case/caseFile'
import {
  aCase,
  at,
  aVisit,
  ending,
  finding,
  ids,
  opened,
  reading,
  repair,
  said,
  team,
  withdrawn,
} from './team'

const otherCase = '01940000-0000-7000-8000-000000000050'
const otherFurnace = '01940000-0000-7000-8000-000000000051'
const idsOf = (entries: readonly { id: string }[] = []) => entries.map(({ id }) => id)

describe('caseFileOf(file, caseId)', () => {
  test('gathers all that was said of the case, each list oldest first by when it was said', () => {
    const late = reading(0.5, {}, { at: at(12, '10:00') })
    const early = reading(0.4, {}, { at: at(12, '09:20') })
    const file = caseFileOf(team(late, aVisit(), early, aCase()), ids.case)
    expect(idsOf(file?.readings)).toEqual([early.id, late.id])
    expect(file?.furnace.id).toBe(ids.furnace)
  })

  test('keeps what was withdrawn out, but a withdrawn case stays readable', () => {
    const one = finding('trap', 'holds water, clear')
    const [theCase] = opened
    const file = team(opened, one, withdrawn(one), withdrawn(theCase!))
    expect(caseFileOf(file, ids.case)?.findings).toEqual([])
    expect(caseFileOf(file, ids.case)?.entry.withdrawn?.reason).toBe('Not so.')
    expect(casesOf(file, ids.furnace)).toEqual([])
  })

  test('keeps what belongs to another case out', () => {
    const other = aCase({}, { id: otherCase, at: at(2) })
    const itsVisit = aVisit({ caseId: otherCase }, { id: '01940000-0000-7000-8000-000000000052', at: at(2) })
    const there = { caseId: otherCase, visitId: itsVisit.id }
    const file = team(
      opened,
      other,
      itsVisit,
      reading(0.3, there),
      finding('trap', 'holds water, clear', '09:10', there),
    )
    expect(caseFileOf(file, ids.case)).toMatchObject({ readings: [], findings: [] })
    expect(caseFileOf(file, otherCase)).toMatchObject({ readings: [{}], findings: [{}] })
  })

  test('shows every visit with its own endings, two of them side by side where two people ended it', () => {
    const first = ending({}, { at: at(12, '13:00') })
    const second = ending({ how: 'repair declined' }, { at: at(12, '12:59'), by: 'person-2' })
    const next = aVisit({ on: '2026-01-13' }, { id: '01940000-0000-7000-8000-000000000053', at: at(13) })
    const { visits = [] } = caseFileOf(team(opened, first, second, next), ids.case) ?? {}
    expect(visits.map(({ entry, endings }) => [entry.id, idsOf(endings)])).toEqual([
      [ids.visit, [second.id, first.id]],
      [next.id, []],
    ])
  })

  test('leads back to earlier cases on the same furnace and circuit, newest first', () => {
    const earlier = (day: number, more = {}) =>
      aCase(more, { id: `01940000-0000-7000-8000-0000000006${String(day).padStart(2, '0')}`, at: at(day) })
    const otherCircuit = earlier(7, { circuit: 'something else' })
    const file = team(opened, earlier(3), earlier(8), otherCircuit, earlier(20), earlier(4))
    const view = caseFileOf(file, ids.case)
    expect(view?.earlier.map(({ at: opened }) => opened)).toEqual([at(8), at(4), at(3)])
    expect(casesOf(file, ids.furnace)).toHaveLength(6)
  })

  test('knows a furnace by either of its records once they are joined', () => {
    const twin = said(
      'furnace',
      { siteLabel: 'Mill Row', model: 'LF2-080-B', fuel: 'natural gas' },
      { id: otherFurnace },
    )
    const earlier = aCase({ furnaceId: otherFurnace }, { id: otherCase, at: at(3) })
    const join = said('same as', { kept: ids.furnace, duplicate: otherFurnace, reason: 'Entered twice.' })
    const fitted = said('fitted part', { furnaceId: otherFurnace, positionId: ids.low, printed: 'OM-7731' })
    expect(caseFileOf(team(opened, twin, earlier, fitted), ids.case)).toMatchObject({
      earlier: [],
      fittedParts: [],
    })
    const file = team(opened, twin, earlier, fitted, join)
    expect(caseFileOf(file, ids.case)).toMatchObject({ earlier: [{ id: otherCase }], fittedParts: [{}] })
    expect(caseFileOf(file, otherCase)?.furnace.id).toBe(ids.furnace)
    expect(idsOf(casesOf(file, otherFurnace))).toEqual([otherCase, ids.case])
  })

  test('takes a repair of the furnace that is on no case for none of this case', () => {
    const alone = said(
      'repair',
      { furnaceId: ids.furnace, done: 'Filter changed', switchReplaced: false, on: '2026-01-12' },
      { at: at(12) },
    )
    const old = said('repair', { furnaceId: ids.furnace, done: 'Cleaned', on: '2025-01-12' }, { version: 1 })
    const of = repair()
    expect(idsOf(caseFileOf(team(opened, alone, old, of), ids.case)?.repairs)).toEqual([of.id])
  })

  test('is undefined for a case that is not on this device, or whose furnace is not', () => {
    expect(caseFileOf(team(), ids.case)).toBeUndefined()
    expect(caseFileOf(team(opened), otherCase)).toBeUndefined()
    expect(caseFileOf(team(aCase({ furnaceId: otherFurnace }), aVisit()), ids.case)).toBeUndefined()
  })

  test('says the same whatever order the records arrived in', () => {
    const records = [...opened, finding('trap', 'holds water, clear'), reading(0.4), repair(), ending()]
    const backwards = records.toReversed().map((record, place) => ({ ...record, seq: 5000 + place }))
    expect(caseFileOf(team(backwards), ids.case)).toEqual(caseFileOf(team(records), ids.case))
  })
})
