import { describe, expect, test } from 'vitest'
import { byNeed, needsOf } from '@/lib/records/view/desk/need'
import { openQuestions, openTwin, questionOf, questionsIn } from '@/lib/records/view/desk/questions'
import { asksTheSame } from '@/lib/records/view/desk/sameQuestion'
import { openRequests } from '@/lib/records/view/setpoint'
import { at, equipment, fileOf, id, ids, report, request, type Told } from './told'

const onFile = fileOf(equipment)

describe('asksTheSame(file, one, other)', () => {
  test('the same switch position is the same question, whichever furnace it is on', () => {
    const hill = { positionId: ids.low, furnaceId: ids.hill }
    expect(asksTheSame(onFile, hill, { positionId: ids.low, furnaceId: ids.vale })).toBe(true)
    expect(asksTheSame(onFile, hill, { positionId: ids.high, furnaceId: ids.hill })).toBe(false)
  })

  test('a position that was joined to another is that other one', () => {
    const joined = fileOf([
      ...equipment,
      [
        id('99'),
        'position',
        {
          rangeId: ids.small,
          name: 'Low fire',
          stage: 'low fire',
          kind: 'one-port',
          between: 'port and room',
          tap: 'collector box',
          sense: 'suction',
        },
      ],
      [id('9a'), 'same as', { kept: ids.low, duplicate: id('99'), reason: 'Entered twice.' }],
    ])
    expect(asksTheSame(joined, { positionId: id('99') }, { positionId: ids.low })).toBe(true)
  })

  test('a model letter for letter but for look-alikes, with the same switch, is the same question', () => {
    const one = { model: 'TN4-0815', positionName: 'Low fire' }
    expect(asksTheSame(onFile, one, { model: 'tn4 o8i5', positionName: 'low-fire' })).toBe(true)
    expect(asksTheSame(onFile, one, { model: 'TN4-0915', positionName: 'Low fire' })).toBe(false)
    expect(asksTheSame(onFile, one, { model: 'TN4-0815', positionName: 'High fire' })).toBe(false)
    expect(asksTheSame(onFile, one, { model: 'TN4-0815' })).toBe(false)
  })

  test('two furnaces of one model ask the same; a furnace asks the same as itself whatever model was typed', () => {
    expect(asksTheSame(onFile, { furnaceId: ids.hill }, { furnaceId: ids.vale })).toBe(true)
    expect(
      asksTheSame(onFile, { furnaceId: ids.hill, model: 'X1' }, { furnaceId: ids.hill, model: 'Q7' }),
    ).toBe(true)
    expect(asksTheSame(onFile, { furnaceId: ids.hill }, { model: 'LF2-080-8' })).toBe(true)
  })

  test('a switch that is on file is never taken for one that was only named', () => {
    expect(
      asksTheSame(
        onFile,
        { positionId: ids.low, model: 'LF2-080-B' },
        { model: 'LF2-080-B', positionName: '' },
      ),
    ).toBe(false)
  })

  test('nothing said of the model is not the same as nothing said elsewhere', () => {
    expect(asksTheSame(onFile, { positionName: 'Low fire' }, { positionName: 'Low fire' })).toBe(false)
  })
})

const first: Told = [
  id('a1'),
  'rating request',
  request({ positionId: ids.low, furnaceId: ids.hill }),
  'ines',
  at('09:00'),
]
const second: Told = [
  id('a2'),
  'rating request',
  request({ positionId: ids.low, furnaceId: ids.vale, needs: ['infants'] }),
  'lale',
  at('09:30'),
]
const tooBy = (by: string, requestId = id('a1'), time = '10:00'): Told => [
  id('b1'),
  'asks too',
  { requestId, needs: ['no other heat'] },
  by,
  at(time),
]

describe('questionsIn(file)', () => {
  test('who asks too joins the first request: one question with two askers, the first one first', () => {
    const [question, ...others] = questionsIn(fileOf([...equipment, first, tooBy('lale')]))
    expect(others).toEqual([])
    expect(question!.lead.id).toBe(id('a1'))
    expect(question!.askers.map(({ personId, at: asked }) => [personId, asked])).toEqual([
      ['ines', at('09:00')],
      ['lale', at('10:00')],
    ])
    expect(question!.position?.id).toBe(ids.low)
    expect(question!.maker?.body.name).toBe('Orrinmoor')
  })

  test('requests made apart without a signal are one question, and one answer answers both', () => {
    const asked = [...equipment, second, first]
    const question = openQuestions(fileOf(asked))[0]!
    expect([question.lead.id, question.requests.map(({ id }) => id)]).toEqual([
      id('a1'),
      [id('a1'), id('a2')],
    ])
    expect(question.furnaces.map(({ id }) => id)).toEqual([ids.hill, ids.vale])
    const answered = fileOf([
      ...asked,
      [id('c1'), 'report', report({ requestId: id('a2') }), 'bram', at('11:00')],
    ])
    expect(openQuestions(answered)).toEqual([])
    expect(openRequests(answered)).toEqual([])
    expect(questionOf(answered, id('a1'))!.answers.map(({ id }) => id)).toEqual([id('c1')])
    expect(questionOf(answered, id('a2'))!.lead.id).toBe(id('a1'))
  })

  test('what is asked after it was answered is a question of its own', () => {
    const again: Told = [id('a3'), 'rating request', request({ positionId: ids.low }), 'lale', at('12:00')]
    const file = fileOf([
      ...equipment,
      first,
      [id('c1'), 'report', report({ requestId: id('a1') }), 'bram', at('11:00')],
      again,
    ])
    expect(openQuestions(file).map(({ lead }) => lead.id)).toEqual([id('a3')])
  })

  test('withdrawing a request does not take away the question of who asks too', () => {
    const gone: Told = [
      id('d1'),
      'withdrawal',
      { record: id('a1'), reason: 'Found it.' },
      'ines',
      at('10:30'),
    ]
    expect(openQuestions(fileOf([...equipment, first, gone]))).toEqual([])
    const [question] = openQuestions(fileOf([...equipment, first, tooBy('lale'), gone]))
    expect(question!.askers.map(({ personId }) => personId)).toEqual(['lale'])
    expect(question!.requests).toEqual([])
  })

  test('a withdrawn answer opens the question again', () => {
    const answer: Told = [id('c1'), 'report', report({ requestId: id('a1') }), 'bram', at('11:00')]
    const back: Told = [id('d1'), 'withdrawal', { record: id('c1'), reason: 'Misheard.' }]
    expect(openQuestions(fileOf([...equipment, first, answer, back])).map(({ lead }) => lead.id)).toEqual([
      id('a1'),
    ])
  })

  test('the order in which records arrive changes nothing', () => {
    const told = [...equipment, first, second, tooBy('mara')]
    const askers = (list: Told[]) => questionsIn(fileOf(list))[0]!.askers.map(({ personId }) => personId)
    expect(askers(told)).toEqual(['ines', 'lale', 'mara'])
    expect(askers([...equipment, tooBy('mara'), second, first])).toEqual(['ines', 'lale', 'mara'])
  })
})

test('openTwin(file, subject) is the open question that asks the same, and none once it is answered', () => {
  const asked = [...equipment, first]
  expect(openTwin(fileOf(asked), { positionId: ids.low })?.lead.id).toBe(id('a1'))
  expect(openTwin(fileOf(asked), { positionId: ids.high })).toBeUndefined()
  const answered = fileOf([
    ...asked,
    [id('c1'), 'report', report({ requestId: id('a1') }), 'bram', at('11:00')],
  ])
  expect(openTwin(answered, { positionId: ids.low })).toBeUndefined()
})

describe('byNeed(file, questions)', () => {
  const asks = (end: string, model: string, needs: string[], moment: string): Told => [
    id(end),
    'rating request',
    request({ model, needs }),
    'ines',
    moment,
  ]
  const order = (told: Told[]) => {
    const file = fileOf(told)
    return byNeed(file, openQuestions(file)).map(({ lead }) => lead.body.model)
  }

  test('people and a furnace left off come first, then frost, then cold and no other heat, then age', () => {
    expect(
      order([
        asks('e1', 'old', [], at('07:00')),
        asks('e2', 'cold', ['house cold'], at('08:00')),
        asks('e3', 'cold without other heat', ['no other heat', 'house cold'], at('09:00')),
        asks('e6', 'frost', ['freezing outside'], at('12:00')),
        asks('e4', 'infants', ['infants'], at('10:00')),
        asks('e5', 'infants, and left off', ['furnace left off', 'infants'], at('11:00')),
      ]),
    ).toEqual(['infants, and left off', 'infants', 'frost', 'cold without other heat', 'cold', 'old'])
  })

  test('of one day, the question that more people ask comes first; an older day comes before it', () => {
    const crowd: Told[] = [
      asks('e1', 'of today, one', [], at('07:00')),
      asks('e2', 'of today, two', [], at('08:00')),
      [id('f1'), 'asks too', { requestId: id('e2'), needs: [] }, 'lale', at('09:00')],
      asks('e3', 'of yesterday', [], '2026-02-01T23:00:00.000Z'),
    ]
    expect(order(crowd)).toEqual(['of yesterday', 'of today, two', 'of today, one'])
  })

  test('a notice that stands leaves the furnace off, whether or not the asker said so; lifted, it no longer does', () => {
    const notice: Told = [
      id('e8'),
      'shut-down notice',
      {
        furnaceId: ids.hill,
        on: '2026-02-02',
        found: 'Vent apart',
        doNotRelightUntil: 'The vent is put right',
        gas: 'off',
        power: 'off',
        tagged: true,
        writtenNotice: false,
      },
    ]
    const lifting: Told = [
      id('e9'),
      'lifting',
      { noticeId: id('e8'), on: '2026-02-02', because: 'Vent joined' },
    ]
    const needs = (told: Told[]) => {
      const file = fileOf(told)
      return needsOf(file, questionsIn(file)[0]!)
    }
    expect(needs([...equipment, first, notice])).toEqual(['furnace left off'])
    expect(needs([...equipment, first, notice, lifting])).toEqual([])
  })
})
