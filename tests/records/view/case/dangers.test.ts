import { describe, expect, test } from 'vitest'
import { findings } from '@/lib/catalogue/findings'
import type { HeldRecord } from '@/lib/records/fold/entry'
import {
  at,
  aVisit,
  codesOf,
  combustion,
  finding,
  hot,
  ids,
  ofFurnace,
  ofVisit,
  opened,
  reading,
  repair,
  riser,
  said,
  team,
  viewOf,
  withdrawn,
} from './team'

const open = (...records: readonly (HeldRecord | readonly HeldRecord[])[]): string[] =>
  codesOf(viewOf(team(opened, ...records)).dangers.open)
const unanswered = (...records: readonly (HeldRecord | readonly HeldRecord[])[]): string[] =>
  codesOf(viewOf(team(opened, ...records)).dangers.unanswered)
const answer = (dangers: string[], time = '09:15', more = {}): HeldRecord =>
  said(
    'danger answer',
    { ...ofVisit, dangers, done: ['gas off', 'tagged', 'occupant told'], ...more },
    { at: time.length > 5 ? time : at(12, time) },
  )
const secondVisit = aVisit(
  { on: '2026-01-13' },
  { id: '01940000-0000-7000-8000-000000000041', at: at(13, '09:00') },
)
const onSecond = { visitId: secondVisit.id }

describe('dangers that were seen', () => {
  const dangers = findings.flatMap(({ id, danger, values }) =>
    danger === undefined ? [] : [{ id, danger, values }],
  )

  test.each(dangers)(
    '$id: at its dangerous value it is open, at any other it is not',
    ({ id, danger, values }) => {
      for (const value of values)
        expect([value, open(finding(id, value))]).toEqual([
          value,
          value === danger.value ? [danger.code] : [],
        ])
    },
  )

  test('ruling it out closes it, seeing it again opens it again', () => {
    const seen = finding('spillage', 'seen', '09:10')
    const gone = finding('spillage', 'ruled out', '09:20')
    expect(open(seen, gone)).toEqual([])
    expect(open(seen, gone, finding('spillage', 'seen', '09:30'))).toEqual(['spillage'])
  })

  test('withdrawing what was tapped by mistake leaves what was said before it', () => {
    const seen = finding('spillage', 'seen', '09:10')
    const gone = finding('spillage', 'ruled out', '09:20')
    expect(open(seen, withdrawn(seen))).toEqual([])
    expect(open(seen, gone, withdrawn(gone))).toEqual(['spillage'])
  })

  test('the gravest comes first, with what to do', () => {
    const view = viewOf(team(opened, finding('scorching', 'seen'), finding('smell-of-gas', 'seen')))
    expect(view.dangers.open).toMatchObject([
      { code: 'smell-of-gas', urgency: 'everybody out' },
      { code: 'scorching', urgency: 'stop and leave off' },
    ])
  })
})

describe('answering a danger lets the work go on and puts nothing right', () => {
  const seen = finding('spillage', 'seen', '09:10')

  test('until somebody says what was done it is unanswered', () => {
    expect(unanswered(seen)).toEqual(['spillage'])
    expect(unanswered(seen, answer(['spillage']))).toEqual([])
    expect(open(seen, answer(['spillage']))).toEqual(['spillage'])
  })

  test('an answer is to the dangers that it names', () => {
    expect(unanswered(seen, finding('scorching', 'seen'), answer(['scorching']))).toEqual(['spillage'])
  })

  test('an answer said in the same step is one; an answer from before is none', () => {
    expect(unanswered(seen, answer(['spillage'], '09:10'))).toEqual([])
    expect(unanswered(answer(['spillage'], '09:05'), seen)).toEqual(['spillage'])
  })

  test('seen once more on the same visit it needs no second answer', () => {
    expect(unanswered(seen, answer(['spillage']), finding('spillage', 'seen', '09:40'))).toEqual([])
  })

  test('gone and found anew it has to be answered anew', () => {
    const gone = finding('spillage', 'ruled out', '09:30')
    expect(unanswered(seen, answer(['spillage']), gone, finding('spillage', 'seen', '09:40'))).toEqual([
      'spillage',
    ])
  })

  test('on a later visit it has to be answered anew, because gas and power may be on again', () => {
    const again = finding('spillage', 'seen', at(13, '09:10'), onSecond)
    expect(unanswered(seen, answer(['spillage']), secondVisit)).toEqual(['spillage'])
    expect(unanswered(seen, answer(['spillage']), secondVisit, again)).toEqual(['spillage'])
    expect(
      unanswered(
        seen,
        answer(['spillage']),
        secondVisit,
        again,
        answer(['spillage'], at(13, '09:20'), onSecond),
      ),
    ).toEqual([])
  })

  test('withdrawing the answer leaves the danger unanswered', () => {
    const said = answer(['spillage'])
    expect(unanswered(seen, said, withdrawn(said))).toEqual(['spillage'])
  })
})

describe('what readings show of a switch', () => {
  const stuck = reading(0.3, { contacts: 'closed' }, { at: at(12, '09:30') })

  test('closed at a reading too low to close it', () => {
    expect(open(stuck)).toEqual(['switch-closes-below-rating'])
  })

  test('open at that reading it only reports what is wrong elsewhere', () => {
    expect(open(reading(0.3))).toEqual([])
  })

  test('a later reading that is enough proves nothing: a bypassed switch is closed then as well', () => {
    expect(open(stuck, reading(0.9, { contacts: 'closed' }, { at: at(12, '09:40') }))).toEqual([
      'switch-closes-below-rating',
    ])
    expect(open(stuck, hot(0.7))).toEqual(['switch-closes-below-rating'])
  })

  test('nor does one whose contact was not read, or that can be held against nothing', () => {
    for (const more of [
      { contacts: 'not read' },
      { door: 'off' },
      { against: undefined },
      { gaugeId: undefined },
    ])
      expect(open(stuck, reading(0.3, more, { at: at(12, '09:40') }))).toEqual(['switch-closes-below-rating'])
  })

  test('seeing the contact open where it should be closes it', () => {
    expect(open(stuck, reading(0.3, {}, { at: at(12, '09:40') }))).toEqual([])
  })

  test('ruling it out by hand, which names no position, takes nothing back that was measured at one', () => {
    for (const time of ['09:20', '09:40'])
      expect(open(stuck, finding('switch-closes-below-rating', 'ruled out', time))).toEqual([
        'switch-closes-below-rating',
      ])
    const atRest = reading(0, { phase: 'rest', secondsWatched: undefined, contacts: 'closed' })
    expect(open(atRest, finding('switch-closed-at-rest', 'ruled out', '09:40'))).toEqual([
      'switch-closed-at-rest',
    ])
  })

  test('one measured at no position is gone when somebody rules it out afterwards, and not before', () => {
    const nowhere = { ...stuck, body: { ...stuck.body, positionId: undefined } }
    expect(open(nowhere, finding('switch-closes-below-rating', 'ruled out', '09:40'))).toEqual([])
    expect(open(nowhere, finding('switch-closes-below-rating', 'ruled out', '09:20'))).toEqual([
      'switch-closes-below-rating',
    ])
  })

  // Next to nothing is 0.05 in. w.c. or less (common practice, no published source).
  describe('closed with next to nothing at the switch while the inducer runs', () => {
    const bare = { against: undefined, gaugeId: undefined, zeroed: false, contacts: 'closed' }
    const closes = ['switch-closes-below-rating']

    test('is a danger without any rating or gauge on record', () => {
      for (const phase of ['pre-purge', 'at make', 'after light-off', 'steady hot'])
        expect(open(reading(0.05, { ...bare, phase }))).toEqual(closes)
      expect(open(reading(0.06, bare))).toEqual([])
      expect(open(reading(0.02, { ...bare, contacts: 'not read' }))).toEqual([])
      expect(open(reading(0.02, { ...bare, contacts: 'open' }))).toEqual([])
    })

    test('is none for one that opens on rise, a gas switch or a sensor, nor at one port of two', () => {
      for (const kind of ['opens on rise', 'gas pressure', 'sensor'])
        expect(open(reading(0.02, { ...bare, kind }))).toEqual([])
      expect(open(reading(0.02, { ...bare, kind: 'two-port' }))).toEqual([])
      expect(open(reading(0.02, { ...bare, kind: 'two-port', between: 'two ports' }))).toEqual(closes)
    })

    test('is gone once the contact was seen open there with the inducer running, or a factory part is in', () => {
      const shown = reading(0.02, bare)
      const later = (more: Record<string, unknown>, value = 0.3) =>
        reading(value, { ...bare, contacts: 'open', ...more }, { at: at(12, '09:40') })
      expect(open(shown, later({}))).toEqual([])
      expect(open(shown, later({ positionId: ids.high, stage: 'high fire' }))).toEqual(closes)
      expect(open(shown, later({ phase: 'rest' }, 0))).toEqual(closes)
      expect(open(shown, later({ contacts: 'closed' }))).toEqual(closes)
      expect(
        open(shown, repair({ positionId: ids.low, fittedPart: ids.newPart, switchReplaced: true })),
      ).toEqual([])
    })
  })

  test('so does a factory part fitted in that position afterwards, and no other repair', () => {
    const fitted = { positionId: ids.low, fittedPart: ids.newPart, switchReplaced: true }
    expect(open(stuck, repair(fitted))).toEqual([])
    expect(open(stuck, repair())).toEqual(['switch-closes-below-rating'])
    expect(open(stuck, repair({ ...fitted, positionId: ids.high, fittedPart: ids.highPart }))).toEqual([
      'switch-closes-below-rating',
    ])
    expect(open(stuck, repair(fitted, { at: at(12, '09:00') }))).toEqual(['switch-closes-below-rating'])
  })

  test('and a new switch that is closed too early is a danger like the old one', () => {
    const fitted = repair({ positionId: ids.low, fittedPart: ids.newPart, switchReplaced: true })
    const again = reading(0.3, { contacts: 'closed', when: 'after repair' }, { at: at(12, '11:20') })
    expect(open(stuck, fitted, again)).toEqual(['switch-closes-below-rating'])
  })

  test('each position is on its own', () => {
    const otherOne = reading(0.5, { positionId: ids.high }, { at: at(12, '09:40') })
    expect(open(stuck, otherOne)).toEqual(['switch-closes-below-rating'])
  })

  test('what was done to the furnace for a reading hides no danger', () => {
    const vent = reading(0.9, { situation: 'vent opened', contacts: 'closed' }, { at: at(12, '09:40') })
    expect(open(stuck, vent)).toEqual(['switch-closes-below-rating'])
    expect(open(reading(0.3, { situation: 'vent opened', contacts: 'closed' }))).toEqual([
      'switch-closes-below-rating',
    ])
  })

  test('a reading withdrawn as misread shows nothing', () => {
    expect(open(stuck, withdrawn(stuck))).toEqual([])
  })

  const rest = { phase: 'rest', secondsWatched: undefined }
  test('closed at rest, also with no rating on file, no gauge, or a gauge that was not zeroed', () => {
    for (const more of [{}, { against: undefined }, { gaugeId: undefined }, { zeroed: false }])
      expect(open(reading(0, { ...rest, contacts: 'closed', ...more }))).toEqual(['switch-closed-at-rest'])
  })

  test('open at rest afterwards closes that one, and says nothing of one that closes too early', () => {
    const atRest = reading(0, { ...rest, contacts: 'closed' })
    const openNow = reading(0, { ...rest, against: undefined }, { at: at(12, '09:50') })
    expect(open(atRest, openNow)).toEqual([])
    expect(open(stuck, openNow)).toEqual(['switch-closes-below-rating'])
  })

  test('a switch that opens on rise is closed at rest, and dangerous where it stays closed above its opening point', () => {
    const atRise = (value: number, more: Record<string, unknown>, time: string) =>
      reading(value, { positionId: ids.riser, ...more }, { at: at(12, time) })
    expect(open(riser, atRise(0, { ...rest, contacts: 'closed' }, '09:30'))).toEqual([])
    const stays = atRise(1.4, { contacts: 'closed' }, '09:30')
    expect(open(riser, stays)).toEqual(['switch-stays-closed-above-opening-point'])
    expect(open(riser, stays, atRise(0, { ...rest, contacts: 'closed' }, '09:40'))).toEqual([
      'switch-stays-closed-above-opening-point',
    ])
    expect(open(riser, stays, atRise(1.4, {}, '09:40'))).toEqual([])
  })

  const atRest = (contact: string, time: string, more = {}) =>
    said(
      'switch check',
      {
        ...ofFurnace,
        positionId: ids.low,
        what: 'at rest',
        inducerStopped: true,
        hoseOff: true,
        wiresOff: true,
        contact,
        ...more,
      },
      { at: at(12, time) },
    )

  test('a check of the switch at rest shows it as well, and shows it gone', () => {
    expect(open(atRest('closed', '09:30'))).toEqual(['switch-closed-at-rest'])
    expect(open(atRest('closed', '09:30'), atRest('open', '09:40'))).toEqual([])
    expect(open(atRest('closed', '09:30'), atRest('not read', '09:40'))).toEqual(['switch-closed-at-rest'])
  })

  test('with the inducer running, or for one that opens on rise, a closed contact is none', () => {
    expect(open(atRest('closed', '09:30', { inducerStopped: false }))).toEqual([])
    expect(open(riser, atRest('closed', '09:30', { positionId: ids.riser }))).toEqual([])
  })

  test('a position that was joined with another is one switch', () => {
    const twin = '01940000-0000-7000-8000-000000000042'
    const position = said(
      'position',
      {
        rangeId: ids.range,
        name: 'LOW',
        stage: 'low fire',
        kind: 'one-port',
        between: 'port and room',
        tap: 'collector box',
        sense: 'suction',
      },
      { id: twin },
    )
    const join = said('same as', { kept: ids.low, duplicate: twin, reason: 'Entered twice.' })
    const seenOpen = reading(
      0.3,
      { positionId: twin, against: stuck.body.against, stage: 'low fire' },
      { at: at(12, '09:40') },
    )
    expect(open(stuck, position, seenOpen)).toEqual(['switch-closes-below-rating'])
    expect(open(stuck, position, seenOpen, join)).toEqual([])
  })
})

describe('a switch found fitted', () => {
  const found = (more = {}) =>
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
      { at: at(12, '09:20') },
    )
  const fitted = { positionId: ids.low, fittedPart: ids.newPart, switchReplaced: true }

  test('keeps the case hazardous until the factory part is fitted in its position', () => {
    expect(open(found())).toEqual(['general-purpose-switch-fitted'])
    expect(open(found(), repair())).toEqual(['general-purpose-switch-fitted'])
    expect(open(found(), repair({ ...fitted, positionId: ids.high, fittedPart: ids.highPart }))).toEqual([
      'general-purpose-switch-fitted',
    ])
    expect(open(found(), repair(fitted))).toEqual([])
  })

  test('is dangerous by what the part on file is, whatever it was called', () => {
    expect(open(found({ what: 'not known' }))).toEqual([])
    expect(open(found({ what: 'not known', partId: ids.generic }))).toEqual(['general-purpose-switch-fitted'])
  })

  const readOff = (printed: string, time = '09:25') =>
    said(
      'fitted part',
      { furnaceId: ids.furnace, positionId: ids.low, caseId: ids.case, printed },
      { at: at(12, time) },
    )

  test('is dangerous by the number read off it, however that was typed, until the factory part is in', () => {
    for (const printed of ['GP-ADJ-1', 'gp adj 1'])
      expect(open(readOff(printed))).toEqual(['general-purpose-switch-fitted'])
    expect(open(readOff('OM-7731'))).toEqual([])
    expect(open(readOff('GP-22'))).toEqual([])
    expect(open(readOff('GP-ADJ-1'), readOff('OM-7731', '09:30'))).toEqual([])
    expect(open(readOff('OM-7731'), readOff('GP-ADJ-1', '09:30'))).toEqual(['general-purpose-switch-fitted'])
    expect(open(readOff('GP-ADJ-1'), repair())).toEqual(['general-purpose-switch-fitted'])
    expect(open(readOff('GP-ADJ-1'), repair(fitted))).toEqual([])
    expect(open(repair(fitted), readOff('GP-ADJ-1', '11:30'))).toEqual(['general-purpose-switch-fitted'])
  })

  test('a switch for another elevation, a jumper: each by its own name', () => {
    expect(open(found({ what: 'switch for another elevation' }))).toEqual(['wrong-elevation-switch-fitted'])
    expect(open(found({ what: 'jumper or bypass' }))).toEqual(['jumper-or-bypass'])
  })

  test('a jumper is taken out, which needs no part, but a repair that names it', () => {
    const jumper = found({ what: 'jumper or bypass' })
    const removed = repair({ positionId: ids.low, done: 'Jumper taken out' })
    expect(open(jumper, removed)).toEqual(['jumper-or-bypass'])
    expect(open(jumper, repair({ done: 'Jumper out', putsRight: jumper.id }))).toEqual([])
    expect(open(jumper, finding('jumper-or-bypass', 'ruled out', '10:00'))).toEqual([])
    expect(open(found(), removed)).toEqual(['general-purpose-switch-fitted'])
  })

  test('on another furnace it is no danger here', () => {
    expect(open(found({ furnaceId: undefined, model: 'LF2-080-B' }))).toEqual([])
  })

  test('found after it was answered it has to be answered', () => {
    expect(unanswered(answer(['general-purpose-switch-fitted'], '09:10'), found())).toEqual([
      'general-purpose-switch-fitted',
    ])
    expect(unanswered(found(), answer(['general-purpose-switch-fitted'], '09:30'))).toEqual([])
  })
})

describe('a number that says what the switch is', () => {
  const read = (printed: string, time = '09:20') =>
    said('fitted part', { furnaceId: ids.furnace, positionId: ids.low, printed }, { at: at(12, time) })

  test('is a danger like an adjustable switch that was found, until a factory part is in', () => {
    expect(open(read('ADJUSTABLE 0.1-1.0 UNIV-9'))).toEqual(['general-purpose-switch-fitted'])
    expect(open(read('OM-7731, not adjustable'))).toEqual([])
    const swap = repair({ positionId: ids.low, switchReplaced: true, fittedPart: ids.newPart })
    expect(open(read('ADJUSTABLE 0.1-1.0 UNIV-9'), swap)).toEqual([])
  })

  test('contradicts that an adjustable switch was ruled out', () => {
    const tapped = finding('general-purpose-switch-fitted', 'ruled out', '09:30')
    const { dangers, observed } = viewOf(team(opened, read('ADJUSTABLE 0.1-1.0 UNIV-9'), tapped))
    expect([...dangers.contradicted]).toEqual(['general-purpose-switch-fitted'])
    expect(observed).not.toHaveProperty('general-purpose-switch-fitted')
  })
})

describe('CO', () => {
  const test1 = (more: Record<string, unknown>, time = '09:30', options = {}) =>
    combustion(
      { when: 'as found', flueCoPpm: [], roomCoPpm: undefined, roomCoLimitPpm: undefined, ...more },
      { at: at(12, time), ...options },
    )
  const room = (ppm: number, time?: string, limit = 9) =>
    test1({ roomCoPpm: ppm, roomCoLimitPpm: limit }, time)
  const flue = (flueCoPpm: number[], more = {}, time?: string) => test1({ flueCoPpm, ...more }, time)

  test('in the room above the limit of the employer, to the last ppm', () => {
    expect(open(room(9))).toEqual([])
    expect(open(room(10))).toEqual(['room-co-above-limit'])
    expect(open(room(1, undefined, 0))).toEqual(['room-co-above-limit'])
  })

  test('the newest measurement in the room counts; one of the flue alone says nothing of the room', () => {
    expect(open(room(70), flue([20], {}, '09:40'))).toEqual(['room-co-above-limit'])
    expect(open(room(70, '09:40'), room(0, '09:30'))).toEqual(['room-co-above-limit'])
  })

  test('a low value in the room clears nothing before the all-clear, and one measured after it does', () => {
    const out = ['room-co-above-limit']
    const steps = (...done: string[]) => answer(out, '09:40', { done })
    const allClear = 'all clear from the gas supplier or the emergency service'
    const high = room(60, '09:30')
    expect(open(high, room(2, '09:30'))).toEqual(out)
    expect(open(high, repair({}, { at: at(12, '09:35') }), room(2, '09:50'))).toEqual(out)
    expect(open(high, room(2, '09:35'), steps(allClear))).toEqual(out)
    expect(open(high, steps(allClear))).toEqual(out)
    expect(open(high, steps(allClear), room(2, '09:50'))).toEqual([])
    expect(open(high, steps(allClear), room(60, '09:45'), room(2, '09:50'))).toEqual(out)
    expect(open(answer(out, '09:20', { done: [allClear] }), high, room(2, '09:50'))).toEqual(out)
  })

  test('“ruled out” beside a value above the limit is contradicted, and is no evidence for a cause', () => {
    const tapped = finding('room-co-above-limit', 'ruled out', '09:35')
    const { dangers, observed } = viewOf(team(opened, tapped, room(60)))
    expect([...dangers.contradicted]).toEqual(['room-co-above-limit'])
    expect(codesOf(dangers.open)).toEqual(['room-co-above-limit'])
    expect(observed).not.toHaveProperty('room-co-above-limit')
    const alone = viewOf(team(opened, tapped, room(2)))
    expect([...alone.dangers.contradicted]).toEqual([])
    expect(alone.observed).toHaveProperty('room-co-above-limit', 'ruled out')
  })

  test('in the flue it is held air-free against the limit of the manual', () => {
    // 60 ppm at 8 % oxygen are 97 air-free, 63 are 102 (measured × 20.9 / (20.9 − O₂), from memory, common practice).
    expect(open(flue([60], { oxygenPercent: 8 }))).toEqual([])
    expect(open(flue([63], { oxygenPercent: 8 }))).toEqual(['flue-co-high'])
    expect(open(flue([63], { oxygenPercent: undefined }))).toEqual([])
  })

  test('without any limit typed, 400 ppm and climbing are dangers all the same', () => {
    const none = { flueCoLimitPpm: undefined, flueCoLimitFrom: undefined, oxygenPercent: undefined }
    expect(open(flue([399], none))).toEqual([])
    expect(open(flue([400], none))).toEqual(['flue-co-high'])
    expect(open(flue([20, 30, 45], none))).toEqual(['flue-co-climbing'])
  })

  test('a later test within the limit closes it; one without a limit is held against the one before', () => {
    const dry = { oxygenPercent: undefined }
    const none = { ...dry, flueCoLimitPpm: undefined, flueCoLimitFrom: undefined }
    expect(open(flue([150], dry), flue([40], dry, '09:40'))).toEqual([])
    expect(open(flue([150], dry), flue([40], none, '09:40'))).toEqual([])
    expect(open(flue([150], dry), flue([120], none, '09:40'))).toEqual(['flue-co-high'])
    expect(open(flue([450], none), flue([120], none, '09:40'))).toEqual(['flue-co-high'])
  })

  test('climbing is gone once two values agree, and not by a single one', () => {
    const climbing = flue([10, 20, 35], { oxygenPercent: undefined })
    const later = (values: number[]) => flue(values, { oxygenPercent: undefined }, '09:40')
    expect(open(climbing)).toEqual(['flue-co-climbing'])
    expect(open(climbing, later([20]))).toEqual(['flue-co-climbing'])
    expect(open(climbing, later([20, 60]))).toEqual(['flue-co-climbing'])
    expect(open(climbing, later([20, 24]))).toEqual([])
  })
})
