import { describe, expect, test } from 'vitest'
import { organisationsIn } from '@/lib/records/view/desk/organisations'
import { promisesOn } from '@/lib/records/view/desk/promises'
import { openQuestions } from '@/lib/records/view/desk/questions'
import { newAnswersFor, notReachedIn, reachOf } from '@/lib/records/view/desk/reach'
import { remindersIn } from '@/lib/records/view/desk/reminders'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { at, equipment, fileOf, id, ids, report, request, type Told } from './told'

const asked: Told[] = [
  ...equipment,
  [id('a1'), 'rating request', request({ positionId: ids.low }), 'ines', at('09:00')],
  [id('a2'), 'asks too', { requestId: id('a1'), needs: [] }, 'lale', at('09:10')],
  [id('a9'), 'organisation', { name: 'Hobb & Lane counter', source: 'distributor', makerIds: [ids.maker] }],
]
const promiseBy = (end: string, by: string, time: string): Told => [
  id(end),
  'promise',
  { requestId: id('a1'), minutes: 30 },
  by,
  at(time),
]
const call = (end: string, by: string, time: string, over: Record<string, unknown> = {}): Told => [
  id(end),
  'call attempt',
  { organisationId: id('a9'), requestIds: [id('a1')], outcome: 'no answer', ...over },
  by,
  at(time),
]
const answer: Told = [id('c1'), 'report', report({ requestId: id('a1') }), 'bram', at('11:00')]

describe('promisesOn(file, question, now)', () => {
  const standing = (told: Told[], now: string) => {
    const file = fileOf([...asked, ...told])
    return promisesOn(file, openQuestions(file)[0]!, at(now)).map(({ personId, until }) => [personId, until])
  }

  test('holds for its minutes and lapses by itself', () => {
    expect(standing([promiseBy('b1', 'bram', '10:00')], '10:29')).toEqual([['bram', at('10:30')]])
    expect(standing([promiseBy('b1', 'bram', '10:00')], '10:30')).toEqual([])
  })

  test('renewed, it holds from then; withdrawn, it is put back at once', () => {
    const renewed = [promiseBy('b1', 'bram', '10:00'), promiseBy('b2', 'bram', '10:20')]
    expect(standing(renewed, '10:45')).toEqual([['bram', at('10:50')]])
    const back: Told = [
      id('b3'),
      'withdrawal',
      { record: id('b1'), reason: 'Put back.' },
      'bram',
      at('10:05'),
    ]
    expect(standing([promiseBy('b1', 'bram', '10:00'), back], '10:10')).toEqual([])
  })

  test('two people who promise see each other, whoever was first first', () => {
    expect(standing([promiseBy('b1', 'tove', '10:05'), promiseBy('b2', 'bram', '10:00')], '10:10')).toEqual([
      ['bram', at('10:30')],
      ['tove', at('10:35')],
    ])
  })

  test('is kept once its author has rung', () => {
    const rang = [promiseBy('b1', 'bram', '10:00'), call('b2', 'bram', '10:04')]
    expect(standing(rang, '10:10')).toEqual([])
    expect(standing([promiseBy('b1', 'bram', '10:00'), call('b2', 'tove', '10:04')], '10:10')).toHaveLength(1)
  })
})

describe('remindersIn(file, now)', () => {
  const ringBack = call('b1', 'bram', '10:00', {
    outcome: 'ring back',
    ringBackAt: '2026-02-02T08:10:00-05:00',
  })
  const at1310 = (told: Told[]) =>
    remindersIn(fileOf([...asked, ...told]), at('13:10')).map(({ at, due }) => [at, due])

  test('comes due at its moment, whatever the offset it was written with', () => {
    expect(at1310([ringBack])).toEqual([[at('13:10'), true]])
    expect(remindersIn(fileOf([...asked, ringBack]), at('13:09'))[0]!.due).toBe(false)
  })

  test('ends with an answer, and with a later call to the same organisation', () => {
    expect(at1310([ringBack, answer])).toEqual([])
    expect(at1310([ringBack, call('b2', 'tove', '12:00')])).toEqual([])
    const elsewhere: Told[] = [
      [id('aa'), 'organisation', { name: 'Orrinmoor line', source: 'factory support', makerIds: [] }],
      call('b2', 'tove', '12:00', { organisationId: id('aa') }),
    ]
    expect(at1310([ringBack, ...elsewhere])).toHaveLength(1)
  })
})

describe('reachOf(file, question)', () => {
  const seenBy = (end: string, by: string, over: Record<string, unknown> = {}): Told => [
    id(end),
    'answer seen',
    { requestId: id('a1'), reportIds: [id('c1')], personId: by, how: 'shown on the screen', ...over },
    by,
    at('12:00'),
  ]
  const reach = (told: Told[]) => {
    const file = fileOf([...asked, answer, ...told])
    const question = notReachedIn(file)[0]
    return question === undefined ? 'everybody' : reachOf(file, question)
  }

  test('says reached only where a record says so', () => {
    expect(reach([])).toEqual([
      { personId: 'ines', reached: false },
      { personId: 'lale', reached: false },
    ])
    expect(reach([seenBy('d1', 'ines')])).toEqual([
      { personId: 'ines', reached: true, how: 'shown on the screen', at: at('12:00'), by: 'ines' },
      { personId: 'lale', reached: false },
    ])
    expect(reach([seenBy('d1', 'ines'), seenBy('d2', 'lale')])).toBe('everybody')
  })

  test('what was read out reaches whom it was read to; nobody can see for another', () => {
    const readOut = { personId: 'ines', how: 'read out over the telephone' }
    expect(reach([seenBy('d1', 'bram', readOut)])).toMatchObject([
      { personId: 'ines', reached: true, by: 'bram' },
      { personId: 'lale', reached: false },
    ])
    expect(reach([seenBy('d1', 'bram', { personId: 'ines' })])).toMatchObject([
      { reached: false },
      { reached: false },
    ])
  })

  test('a second answer must reach them anew, and whoever gave the answer knows it', () => {
    const later: Told = [
      id('c2'),
      'report',
      report({ requestId: id('a1'), action: 'opens' }),
      'lale',
      at('12:30'),
    ]
    expect(reach([seenBy('d1', 'ines'), seenBy('d2', 'lale'), later])).toMatchObject([
      { personId: 'ines', reached: false },
      { personId: 'lale', reached: true, how: 'gave it' },
    ])
  })

  test('newAnswersFor(file, person) is what they asked and have not seen', () => {
    const file = fileOf([...asked, answer, seenBy('d1', 'ines')])
    expect(newAnswersFor(file, 'ines')).toEqual([])
    expect(newAnswersFor(file, 'lale').map(({ lead }) => lead.id)).toEqual([id('a1')])
    expect(newAnswersFor(file, 'bram')).toEqual([])
  })
})

describe('organisationsIn(file, settings)', () => {
  const judged = (told: Told[]) => {
    const file = fileOf([...asked, ...told])
    return organisationsIn(file, ratingSettings(file, at('18:00'))).map(({ entry, answers }) => [
      entry.body.name,
      answers.map(({ later }) => later),
    ])
  }
  const support = report({
    source: 'factory support',
    asWritten: 'closes at zero point six',
    proof: { kind: 'call reference', organisation: 'Orrinmoor line', reference: 'T-9' },
    origin: 'call T-9',
  })

  test('keeps what an organisation answered, found by its name however it is spelt', () => {
    const answers: Told = [
      id('c1'),
      'report',
      report({ proof: { kind: 'call reference', organisation: 'HOBB & LANE – counter', reference: '9' } }),
    ]
    expect(judged([answers])).toEqual([['Hobb & Lane counter', ['not judged']]])
  })

  test('a call without a reference is an answer of whom it names as rung', () => {
    const told: Told = [
      id('c1'),
      'report',
      report({ proof: undefined, origin: 'call Hobb & Lane counter', readBack: false }),
    ]
    expect(judged([told])).toEqual([['Hobb & Lane counter', ['not judged']]])
    const label = report({ proof: undefined, origin: 'call Hobb & Lane counter', source: 'remembered' })
    expect(judged([[id('c1'), 'report', label]])).toEqual([['Hobb & Lane counter', []]])
  })

  test('make and break of one call are one answer, right only if both were', () => {
    const opens = { action: 'opens', pascals: 0.45 * 249.08891 }
    const plate = (over: Record<string, unknown>) =>
      report({
        source: 'data plate',
        proof: { kind: 'document', name: 'Plate', page: '1' },
        origin: 'plate',
        ...over,
      })
    const line = (over: Record<string, unknown>) =>
      report({
        source: 'factory support',
        proof: { kind: 'call reference', organisation: 'Orrinmoor line', reference: 'T-9' },
        origin: 'call T-9',
        ...over,
      })
    const both: Told[] = [answer, [id('c2'), 'report', report(opens), 'bram', at('11:00')]]
    const makeVerified: Told[] = [
      [id('c3'), 'report', plate({})],
      [id('c4'), 'report', line({})],
    ]
    const breakVerified: Told[] = [
      [id('c5'), 'report', plate(opens)],
      [id('c6'), 'report', line(opens)],
    ]
    expect(judged([...both, ...makeVerified])).toEqual([['Hobb & Lane counter', ['not judged']]])
    expect(judged([...both, ...makeVerified, ...breakVerified])).toEqual([['Hobb & Lane counter', ['right']]])
  })

  test('without a reference, what was saved in one step is one call, and what came later another', () => {
    const unnamed = { proof: undefined, origin: 'call Hobb & Lane counter', readBack: false }
    const said = (end: string, time: string, action: string): Told => [
      id(end),
      'report',
      report({ ...unnamed, action }),
      'bram',
      at(time),
    ]
    expect(
      judged([said('c1', '11:00', 'closes'), said('c2', '11:00', 'opens'), said('c3', '14:00', 'closes')]),
    ).toEqual([['Hobb & Lane counter', ['not judged', 'not judged']]])
  })

  test('an answer that an independent source made Verified was right', () => {
    const label = report({
      source: 'data plate',
      proof: { kind: 'document', name: 'Plate', page: '1' },
      origin: 'plate',
    })
    expect(judged([answer, [id('c2'), 'report', label], [id('c3'), 'report', support]])).toEqual([
      ['Hobb & Lane counter', ['right']],
    ])
  })

  test('an answer that a settlement overruled was wrong; one that named its value was right', () => {
    const other = report({
      pascals: 0.42 * 249.08891,
      proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-2' },
    })
    const settled: Told = [
      id('d1'),
      'settlement',
      {
        positionId: ids.low,
        action: 'closes',
        pascals: 0.6 * 249.08891,
        limit: 'nominal',
        evidenceReportId: id('c3'),
        overruledReportIds: [id('c2')],
        reason: 'Read from the drawing.',
      },
      'mara',
    ]
    const told: Told[] = [answer, [id('c2'), 'report', other], [id('c3'), 'report', support], settled]
    expect(judged(told)).toEqual([['Hobb & Lane counter', expect.arrayContaining(['right', 'wrong'])]])
  })

  test('the report that settled a dispute proves itself as little as a lone number', () => {
    const line: Told = [
      id('ab'),
      'organisation',
      { name: 'Orrinmoor line', source: 'factory support', makerIds: [] },
    ]
    expect(judged([line, [id('c3'), 'report', support]])).toEqual([
      ['Hobb & Lane counter', []],
      ['Orrinmoor line', ['not judged']],
    ])
  })
})
