import { expect, test } from 'vitest'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { endingWays } from '@/lib/records/kinds/ending'
import { missingToBlameSwitch } from '@/lib/records/view/case/blamedSwitch'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { endingNeeds, endingNeedsByPlace } from '@/lib/records/view/case/endingNeeds'
import { positionsToProve } from '@/lib/records/view/case/positionsToProve'
import { ids } from '../../setup/smallFile'
import {
  at,
  changed,
  combustionTest,
  fullNotice,
  inches,
  of,
  ofFurnace,
  ofVisit,
  provenEnding,
  provenRows,
  type Row,
  recordsOf,
  without,
} from './provenCase'

/**
 * What each way of ending asks for is common practice, no published source. The readings are judged by compareReading,
 * whose own tests name theirs.
 */
function factsOf(rows: readonly Row[]) {
  const file = foldTeamFile(recordsOf(rows))
  const view = caseViewOf(file, of.case)!
  return {
    view,
    facts: {
      file: view.file,
      judged: view.judged,
      openDangers: view.dangers.open,
      toProve: positionsToProve(file, view.file),
      missingToBlame: (cause: string | undefined) =>
        missingToBlameSwitch(file, view.file, cause, '2026-02-01T20:00:00.000Z'),
    },
  }
}
const needs = (ending: Record<string, unknown>, rows: readonly Row[] = provenRows): string[] =>
  endingNeeds(Object.freeze({ ...ofVisit, ...ending }) as never, factsOf(rows).facts)

const later = (row: [id: string, kind: string, body: Record<string, unknown>]): Row[] => [
  ...provenRows,
  [...row, at('16:40')] as Row,
]

test('a proven repair that says and shows everything lacks nothing', () => {
  expect(needs(provenEnding)).toEqual([])
})

test('a proven repair that says and shows nothing lacks it all, in the order of the work, each with its place', () => {
  const bare = factsOf([...provenRows.slice(0, 3)]).facts
  expect(endingNeedsByPlace({ ...ofVisit, how: 'repaired and proven' }, bare)).toEqual([
    { at: 'ending', field: 'mainCause', sentence: 'The main cause.' },
    {
      at: 'ending',
      field: 'confirmingTest',
      sentence: 'What the test that confirms the main cause showed: it must have confirmed it.',
    },
    { at: 'repairs', sentence: 'What was done: record the repair with its parts.' },
    { at: 'ending', field: 'minutes', sentence: 'The minutes that the work took.' },
    { at: 'readings', sentence: 'High fire: a hot reading after the repair, as in service.' },
    { at: 'readings', sentence: 'Low fire: a hot reading after the repair, as in service.' },
    { at: 'combustion', sentence: 'CO in the room after the repair.' },
    { at: 'combustion', sentence: 'CO in the flue after the repair, air-free.' },
    { at: 'ending', field: 'thermostatCycles', sentence: '3 cycles from the thermostat, watched.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: tee out.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: hose on its own port.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: test holes plugged.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: trap primed.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: joints sealed.' },
    { at: 'ending', field: 'putBack', sentence: 'Put back: door on.' },
  ])
})

test.each([
  ['the confirming test was not done', { confirmingTest: 'not done' }, /must have confirmed it/],
  ['it did not confirm the cause', { confirmingTest: 'not confirmed' }, /must have confirmed it/],
  ['two cycles were watched', { thermostatCycles: 2 }, /3 cycles from the thermostat/],
  ['the door is neither on nor left alone', { putBack: ['tee out'] }, /Put back: door on/],
  ['the cause is not on the list and not described', { mainCause: 'not on the list' }, /in the note/],
])('no repair is proven while %s', (_, said, lacking) => {
  expect(needs({ ...provenEnding, ...said }).join(' ')).toMatch(lacking)
})

test('a cause that is not on the list does once the note describes it', () => {
  expect(needs({ ...provenEnding, mainCause: 'not on the list', note: 'A wasp nest in the tap.' })).toEqual(
    [],
  )
})

test.each([
  [
    'thin',
    { samples: [inches(0.5)], lowest: inches(0.5), highest: inches(0.51) },
    'the hot reading is enough, but thin. That is no proof: the cause may still be there.',
  ],
  [
    'too low',
    { samples: [inches(0.3)], lowest: inches(0.3), highest: inches(0.3), contacts: 'not read' },
    'the hot reading is not clearly enough. Read again, or look for what is still wrong.',
  ],
  [
    'fluttering',
    { lowest: inches(0.8), highest: inches(1.04) },
    'the hot reading flutters. Find out what moves it, and read again.',
  ],
  [
    'taken with the contact open',
    { contacts: 'open' },
    'the contact was open at the hot reading. Look for why.',
  ],
])('a hot reading that is %s proves nothing', (_, body, why) => {
  expect(needs(provenEnding, changed(provenRows, of.lowAfter, body))).toEqual([`Low fire: ${why}`])
})

test.each([
  ['as found', { when: 'as found' }],
  ['at start', { phase: 'pre-purge' }],
  ['with the vent opened', { situation: 'vent opened' }],
])('a reading %s is no hot reading after the repair', (_, body) => {
  expect(needs(provenEnding, changed(provenRows, of.highAfter, body))).toEqual([
    'High fire: a hot reading after the repair, as in service.',
  ])
})

test('a reading that could be held against nothing proves nothing, and says why', () => {
  expect(needs(provenEnding, changed(provenRows, of.lowAfter, { against: [] }))).toEqual([
    'Low fire: its hot reading proves nothing. No rating was on file for this switch. It is held against nothing.',
  ])
})

test('a reading higher than the furnace’s baselines is no good margin', () => {
  const healthy = { ...provenRows.find(([id]) => id === of.lowAfter)![2], samples: [inches(0.7)] }
  const rows: Row[] = [
    [of.more, 'reading', { ...healthy, caseId: undefined, visitId: undefined }, '2025-09-01T10:00:00.000Z'],
    [
      '01920000-0000-7000-8000-000000000c21',
      'baseline',
      {
        furnaceId: ids.furnace,
        readingId: of.more,
        occasion: 'annual service',
        on: '2025-09-01',
      },
      '2025-09-01T10:01:00.000Z',
    ],
    ...provenRows,
  ]
  expect(needs(provenEnding, rows)[0]).toMatch(/^Low fire: the hot reading is higher than expected/)
})

const secondRepair = later([
  of.more,
  'repair',
  { ...ofFurnace, done: 'Drain line cut free', switchReplaced: false, on: '2026-01-12' },
])

test('what was measured between two repairs says nothing of the furnace as it is now', () => {
  expect(needs(provenEnding, secondRepair)).toEqual([
    'High fire: its hot reading is from before the last repair. Read again.',
    'Low fire: its hot reading is from before the last repair. Read again.',
    'CO in the room after the repair.',
    'CO in the flue after the repair, air-free.',
  ])
})

test('a repair that is written down after the measurements is no second one', () => {
  expect(needs(provenEnding, without(secondRepair, of.repair))).toEqual([])
})

test.each([
  ['no CO in the room', { roomCoPpm: undefined }, 'CO in the room after the repair.'],
  ['no limit of the employer', { roomCoLimitPpm: undefined }, 'type that limit'],
  ['no CO in the flue', { flueCoPpm: [] }, 'CO in the flue after the repair, air-free.'],
  ['no limit from the manual', { flueCoLimitPpm: undefined }, 'typed from this unit’s manual'],
  ['a single value in the flue', { flueCoPpm: [24] }, 'two values or more that agree'],
  ['values in the flue that do not agree', { flueCoPpm: [24, 48] }, 'two values or more that agree'],
  ['less running time than the manual asks for', { minutesRunning: 10 }, 'type both times'],
  ['a test from before the repair', { when: 'as found' }, 'CO in the flue after the repair'],
])('no repair is proven with %s', (_, body, lacking) => {
  const rows = changed(provenRows, of.combustion, { ...combustionTest, ...body })
  expect(needs(provenEnding, rows).join(' ')).toContain(lacking)
})

test('a furnace whose model range is not known cannot be proven: which switches it has is asked first', () => {
  const rows = provenRows.map(
    (row): Row => JSON.parse(JSON.stringify(row).replaceAll(ids.furnace, ids.bareFurnace)),
  )
  const { facts } = factsOf(rows)
  expect(endingNeedsByPlace(provenEnding as never, facts)).toEqual([
    {
      at: 'furnace',
      sentence: 'Which switches this furnace has: name its model range, so that every stage can be proven.',
    },
  ])
})

test.each([
  ['repaired, not proven', ['What was done: record the repair with its parts.']],
  [
    'waiting for part',
    [
      'The part number that is waited for.',
      'Whether the number has been superseded: check it.',
      'Where it is ordered.',
    ],
  ],
  [
    'no fault found',
    ['A reading: without one nobody can tell next time what was normal.', 'The day of the follow-up.'],
  ],
  ['repair declined', ['Why it was declined, in the words of whoever declined.']],
  ['left off', ['The shut-down notice.']],
])('%s asks for its own, and for nothing else', (how, lacking) => {
  expect(needs({ how }, provenRows.slice(0, 3))).toEqual(lacking)
})

test.each([
  ['repaired, not proven', {}],
  ['waiting for part', { partNumber: 'OM-8802', supersessionChecked: true, orderedWhere: 'Hobb & Lane' }],
  ['no fault found', { followUpOn: '2026-01-19' }],
  ['repair declined', { declinedBecause: 'Wants a second opinion' }],
])('%s is finished with that', (how, body) => {
  expect(needs({ how, ...body })).toEqual([])
})

test('an open danger bars every way of ending but leaving the furnace off', () => {
  const rows = later([of.more, 'finding', { ...ofVisit, finding: 'spillage', value: 'seen' }])
  for (const how of endingWays) {
    const barred = needs({ ...provenEnding, how }, rows).some((each) => each.startsWith('A danger is open:'))
    expect([how, barred]).toEqual([how, how !== 'left off'])
  }
})

test('a danger that is found to be gone bars nothing', () => {
  const rows: Row[] = [
    ...later([of.more, 'finding', { ...ofVisit, finding: 'spillage', value: 'seen' }]),
    [
      '01920000-0000-7000-8000-000000000c22',
      'finding',
      { ...ofVisit, finding: 'spillage', value: 'ruled out' },
      at('16:50'),
    ],
  ]
  expect(needs(provenEnding, rows)).toEqual([])
})

const leftOff = later([of.notice, 'shut-down notice', fullNotice])

test('left off is finished with a notice that says everything', () => {
  expect(needs({ how: 'left off', noticeId: of.notice }, leftOff)).toEqual([])
})

test.each([
  ['gas', 'not known', 'Whether the gas is off.'],
  ['power', 'not known', 'Whether the power is off.'],
  ['tagged', false, 'The tag on the furnace.'],
  ['told', undefined, 'Who was told, and when.'],
  ['toldAt', undefined, 'Who was told, and when.'],
  ['writtenNotice', false, 'The written notice to the occupant.'],
  [
    'authority',
    'not yet told',
    'Whether the authority or the gas supplier must be told here, and whom you told.',
  ],
  [
    'authorityWho',
    undefined,
    'Whether the authority or the gas supplier must be told here, and whom you told.',
  ],
  ['heatAndFrost', undefined, 'How the house stays warm and free of frost.'],
])('left off is not finished while its notice lacks: %s', (field, value, lacking) => {
  expect(
    needs({ how: 'left off', noticeId: of.notice }, changed(leftOff, of.notice, { [field]: value })),
  ).toEqual([lacking])
})

test('nobody need be told where the law does not ask for it', () => {
  const rows = changed(leftOff, of.notice, { authority: 'not asked for here', authorityWho: undefined })
  expect(needs({ how: 'left off', noticeId: of.notice }, rows)).toEqual([])
})

test.each(['repaired and proven', 'no fault found'])(
  '%s is not finished while a notice of the furnace stands, and is once it is lifted',
  (how) => {
    const ending = { ...provenEnding, how, followUpOn: '2026-01-19' }
    expect(needs(ending, leftOff)).toEqual([
      'The furnace is left off: lift its shut-down notice first, or end the visit as left off.',
    ])
    const lifted: Row[] = [
      ...leftOff,
      [
        of.lifting,
        'lifting',
        { noticeId: of.notice, on: '2026-01-12', because: 'Exchanger replaced' },
        at('16:55'),
      ],
    ]
    expect(needs(ending, lifted)).toEqual([])
  },
)

test('a case stays left off until its notice is lifted, and is being worked on again from then', () => {
  const ended: Row[] = [
    ...leftOff,
    [of.ending, 'ending', { ...ofVisit, how: 'left off', noticeId: of.notice }, at('16:50')],
  ]
  expect(factsOf(ended).view.standing).toBe('left off')
  const lifted: Row[] = [
    ...ended,
    [
      of.lifting,
      'lifting',
      { noticeId: of.notice, on: '2026-01-14', because: 'Exchanger replaced' },
      '2026-01-14T15:00:00.000Z',
    ],
  ]
  expect(factsOf(lifted).view.standing).toBe('being worked on')
})

test('an ending that names a notice which was withdrawn lacks its notice, and leaves the furnace off', () => {
  const rows: Row[] = [
    ...leftOff,
    [of.ending, 'ending', { ...ofVisit, how: 'left off', noticeId: of.notice }, at('16:50')],
    [of.more, 'withdrawal', { record: of.notice, reason: 'Other furnace' }, at('16:55')],
  ]
  const { view } = factsOf(rows)
  expect(view.missing).toEqual(['The shut-down notice.'])
  expect(view.standing).toBe('left off')
})
