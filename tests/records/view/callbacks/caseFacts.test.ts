import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { type CaseFacts, gatherFacts, teamFacts } from '@/lib/records/view/callbacks/caseFacts'
import {
  aCase,
  at,
  aVisit,
  combustion,
  ending,
  hot,
  ids,
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
const facts = (...records: Records) => teamFacts(team(...records)).flatMap(({ cases }) => cases)
const only = (...records: Records): CaseFacts => {
  const [one, other] = facts(...records)
  if (one === undefined || other !== undefined) throw new Error('The team file has one case')
  return one
}
const next = aVisit({ on: '2026-01-14' }, { id: '01940000-0000-7000-8000-000000000080', at: at(14, '09:00') })
const onNext = { ...ofVisit, visitId: next.id }

describe('the facts of a case', () => {
  test('a proven case: when, how and by whom it ended, its cause, and both readings', () => {
    expect(only(proven, ending({}, { by: 'person-3' }))).toEqual({
      id: ids.case,
      furnaceId: ids.furnace,
      rangeId: ids.range,
      circuit: 'proving circuit',
      openedAt: Date.parse(at(12, '08:00')),
      ended: { at: Date.parse(at(12, '13:00')), how: 'repaired and proven', by: 'person-3' },
      cause: 'trap-plugged',
      remedy: 'put right without a part',
      readBefore: true,
      readAfter: true,
      minutes: 90,
      parts: [],
    })
  })

  test('what claims proof and lacks something is no fix', () => {
    expect(only(proven, ending({ thermostatCycles: 2 }))).toMatchObject({
      ended: { how: 'repaired, not proven' },
      trouble: 'proof lacks something',
    })
    expect(only(opened, repair(), ending())).toMatchObject({ trouble: 'proof lacks something' })
  })

  test('two endings of the last visit side by side: not ended, until one is withdrawn', () => {
    const other = ending({ how: 'no fault found' }, { by: 'person-2' })
    expect(only(proven, ending(), other)).toMatchObject({ trouble: 'endings disagree' })
    expect(only(proven, ending(), other)).not.toHaveProperty('ended')
    expect(only(proven, ending(), other, withdrawn(other)).ended?.how).toBe('repaired and proven')
  })

  test('its last visit says how it ended: not yet, while somebody is there', () => {
    expect(only(proven, ending(), next)).not.toHaveProperty('ended')
    expect(
      only(proven, ending(), next, ending({ ...onNext, how: 'left off' }, { at: at(14) })).ended,
    ).toEqual({
      at: Date.parse(at(14)),
      how: 'left off',
      by: 'person-1',
    })
  })

  test('minutes over all visits: an ending’s own, else those of its repairs; none where nobody said any', () => {
    const second = ending({ ...onNext, how: 'repaired, not proven', minutes: undefined }, { at: at(14) })
    const later = [next, repair({ ...onNext, minutes: 25 }, { at: at(14, '10:00') })]
    expect(only(opened, repair({ minutes: 40 }), ending(), later, second).minutes).toBe(90 + 25)
    expect(only(opened)).not.toHaveProperty('minutes')
  })

  test('what the repairs used: the number of a factory part, and material as it was typed, each thing once', () => {
    const fitted = { switchReplaced: true, positionId: ids.low, fittedPart: ids.newPart }
    const used = only(opened, repair({ parts: 'Trap kit' }), repair({ parts: 'trap kit ' }), repair(fitted))
    expect(used.parts.map(({ words }) => words)).toEqual(['Trap kit', 'OM-7731K'])
    expect(used.remedy).toBe('switch replaced')
  })

  test.each([
    ['no repair on record', []],
    ['put right without a part', [repair()]],
    ['another part fitted', [repair(), repair({ parts: 'a metre of hose' })]],
  ] as const)('what was done: %s', (remedy, repairs) => {
    expect(only(opened, [...repairs]).remedy).toBe(remedy)
  })

  test('readings before and after are told apart', () => {
    expect(only(opened, reading(0.4))).toMatchObject({ readBefore: true, readAfter: false })
    expect(only(opened, hot(0.6), combustion())).toMatchObject({ readBefore: false, readAfter: true })
  })

  test('a withdrawn case is in no figure, and one that was joined to another counts once', () => {
    expect(facts(opened, withdrawn(opened[0]!))).toEqual([])
    const twin = aCase({}, { id: '01940000-0000-7000-8000-000000000070', at: at(12, '08:05') })
    const join = said('same as', { duplicate: twin.id, kept: ids.case, reason: 'Filed twice.' })
    expect(facts(opened, twin, join)).toHaveLength(1)
  })

  test('a furnace that another replaced, and a shut-down notice of no case, end its watching', () => {
    const successor = said(
      'furnace',
      { siteLabel: 'Mill Row 12', model: 'LF2-080-C', fuel: 'natural gas', replaces: ids.furnace },
      { at: at(20) },
    )
    const off = notice({ caseId: undefined }, { at: at(18) })
    expect(teamFacts(team(opened, successor, off))[0]!.watchEnds).toEqual([
      { furnaceId: ids.furnace, at: Date.parse(at(20)), endedBy: 'furnace replaced' },
      { furnaceId: ids.furnace, at: Date.parse(at(18)), endedBy: 'left off' },
    ])
  })

  test('gathered a case a step, and once for a team file', () => {
    const file = team(opened)
    const steps = gatherFacts(file)
    expect(steps.next().value).toEqual({ through: 0, of: 1 })
    const last = steps.next()
    expect(last.done && last.value).toBe(teamFacts(file))
    expect(gatherFacts(file).next()).toEqual({ done: true, value: teamFacts(file) })
  })
})
