import { describe, expect, test } from 'vitest'
import type { HeldRecord } from '@/lib/records/fold/entry'
import {
  at,
  aVisit,
  combustion,
  ending,
  hot,
  ids,
  opened,
  proven,
  reading,
  repair,
  team,
  viewOf,
} from './team'

/** A second visit, two days after the first. */
const second = aVisit(
  { on: '2026-01-14' },
  { id: '01940000-0000-7000-8000-000000000051', at: at(14, '08:00') },
)
const onSecond = { visitId: second.id }
const on = (time: string) => ({ at: at(14, time) })
const endSecond = ending(onSecond, on('15:00'))
const missing = (...records: readonly (HeldRecord | readonly HeldRecord[])[]): string[] =>
  viewOf(team(...records)).missing

/** Both stages and CO, measured anew on the second visit. */
const measuredAnew = [
  hot(0.65, onSecond, on('13:00')),
  hot(0.95, { positionId: ids.high, ...onSecond }, on('13:10')),
  combustion(onSecond, on('13:20')),
]
const notProven = ending({ how: 'repaired, not proven' })
const measurements = proven.filter(
  ({ kind, body }) => kind === 'combustion test' || body.phase === 'steady hot',
)

// What proves a repair is common practice, no published source.
describe('the newest hot reading has to be the proof', () => {
  const trouble = reading(0.2, { phase: 'steady hot', contacts: 'open', ...onSecond }, on('09:00'))

  test('a later visit that reads the fault again has to prove it again', () => {
    expect(missing(proven, notProven, second, trouble, endSecond)).toEqual([
      'Low fire: it was read hot as found since. Read it again, after the repair.',
      'CO in the room after the repair.',
      'CO in the flue after the repair, air-free.',
    ])
    expect(
      missing(proven, notProven, second, trouble, repair(onSecond, on('11:00')), measuredAnew, endSecond),
    ).toEqual([])
  })

  test('so does one in gusts or in calm, and one that was called after the repair', () => {
    const worse = hot(0.2, { contacts: 'open', situation: 'in gusts' }, { at: at(12, '12:00') })
    expect(missing(proven, worse, ending())).toEqual([
      'Low fire: the contact was open at the hot reading. Look for why.',
    ])
  })

  test('a reading taken with the vent open says nothing of the furnace in service', () => {
    const vent = hot(0.2, { contacts: 'open', situation: 'vent opened' }, { at: at(12, '12:00') })
    expect(missing(proven, vent, ending())).toEqual([])
  })

  test('any reading in service of a later visit, hot or cold, asks for a proof of that visit', () => {
    const cold = reading(0.2, onSecond, on('09:00'))
    expect(missing(proven, notProven, second, cold, endSecond)).toEqual([
      'Low fire: its hot reading is of an earlier visit, and it was read since. Read it hot again.',
      'CO in the room after the repair.',
      'CO in the flue after the repair, air-free.',
    ])
  })

  test('a later visit on which nothing was read may end on the proof of the earlier one', () => {
    expect(missing(proven, notProven, second, endSecond)).toEqual([])
  })

  test('the newest test of CO counts, whatever it was called', () => {
    const asFound = combustion({ when: 'as found' }, { at: at(12, '12:00') })
    expect(missing(proven, asFound, ending())).toEqual([
      'CO in the room after the repair.',
      'CO in the flue after the repair, air-free.',
    ])
  })
})

describe('what was measured before a repair does not prove it', () => {
  const outdated = [
    'High fire: its hot reading is from before the last repair. Read again.',
    'Low fire: its hot reading is from before the last repair. Read again.',
    'CO in the room after the repair.',
    'CO in the flue after the repair, air-free.',
  ]

  test('measured on the first visit, repaired on the second only', () => {
    expect(missing(opened, measurements, second, repair(onSecond, on('11:00')), endSecond)).toEqual(outdated)
  })

  test('repaired on both', () => {
    expect(missing(proven, second, repair(onSecond, on('11:00')), endSecond)).toEqual(outdated)
  })

  test('in one visit a repair that is written down last is no second one', () => {
    expect(missing(opened, measurements, repair({}, { at: at(12, '12:30') }), ending())).toEqual([])
    expect(missing(proven, repair({}, { at: at(12, '12:30') }), ending())).toEqual(outdated)
  })
})

describe('a hot reading proves only what it shows beyond doubt', () => {
  test.each([
    [
      { contacts: 'not read' },
      'Low fire: the contact was not read at the hot reading. Read again, and say what it shows.',
    ],
    [
      { byTeeAtTheSwitch: false },
      'Low fire: the hot reading was not taken by a tee at the switch. Read it there.',
    ],
    [
      { secondsWatched: 59 },
      'Low fire: the hot reading was not watched for a minute. Watch it, and type how long.',
    ],
    [
      { secondsWatched: undefined },
      'Low fire: the hot reading was not watched for a minute. Watch it, and type how long.',
    ],
  ])('%o', (more, sentence) => {
    expect(missing(proven, hot(0.65, more, { at: at(12, '12:00') }), ending())).toEqual([sentence])
  })
})
