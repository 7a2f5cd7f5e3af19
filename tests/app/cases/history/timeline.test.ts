import fc from 'fast-check'
import { expect, test } from 'vitest'
import { missingThen } from '@/app/cases/history/missingThen'
import { timelineOf } from '@/app/cases/history/timeline'
import { toldIn } from '@/app/cases/history/told'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { dispatcher } from '../../setup/fakeDevice'
import { ids } from '../../setup/smallFile'
import {
  at,
  fullNotice,
  of,
  ofVisit,
  provenEnding,
  provenRows,
  type Row,
  recordsOf,
  without,
} from '../end/provenCase'

const open = (rows: readonly Row[]) => {
  const file = foldTeamFile(recordsOf(rows))
  const ofCase = caseViewOf(file, of.case)!.file
  return { file, ofCase, told: toldIn(file, ofCase) }
}
const kindsOf = (rows: readonly Row[]) => open(rows).told.map(({ kind }) => kind)

const ended: Row[] = [...provenRows, [of.ending, 'ending', provenEnding, at('16:45')]]

test('toldIn tells everything of the case in the order in which it was said, withdrawn records among it', () => {
  expect(kindsOf(ended)).toEqual([
    'case',
    'visit',
    'finding',
    'finding',
    'finding',
    'reading',
    'repair',
    'reading',
    'reading',
    'combustion test',
    'ending',
  ])
  const struck = open(ended).told.filter(({ entry }) => entry.withdrawn !== undefined)
  expect(struck.map(({ entry }) => [entry.id, entry.withdrawn?.reason])).toEqual([
    [of.mistapped, 'Tapped by mistake'],
  ])
})

test('toldIn does not depend on the order in which the records arrived', () => {
  const expected = open(ended).told.map(({ entry }) => entry.id)
  fc.assert(
    fc.property(fc.shuffledSubarray(ended, { minLength: ended.length }), (rows) => {
      expect(open(rows).told.map(({ entry }) => entry.id)).toEqual(expected)
    }),
    { seed: 20261, numRuns: 30 },
  )
})

const foundFitted = {
  furnaceId: ids.furnace,
  positionId: ids.low,
  printed: 'GP-ADJ-1',
  what: 'adjustable or general-purpose switch',
  fittedWhen: 'December 2024',
  fittedBy: 'us',
  foundOn: '2026-01-12',
}
const nextCase: Row = [
  '01920000-0000-7000-8000-000000000d00',
  'case',
  { furnaceId: ids.furnace, complaint: 'No heat again', circuit: 'proving circuit' },
  '2026-01-20T09:00:00.000Z',
]

test.each([
  ['before the case', '2026-01-11T09:00:00.000Z', false],
  ['while it was open', at('15:30'), true],
  ['once the furnace’s next case was open', '2026-01-20T09:30:00.000Z', false],
])('a switch found fitted %s', (_, saidAt, isTold) => {
  const rows: Row[] = [...ended, nextCase, [of.more, 'found fitted', foundFitted, saidAt]]
  expect(kindsOf(rows).includes('found fitted')).toBe(isTold)
})

test('a notice without a case is told where it was written, with what lifted it; one of another case is not', () => {
  const lifting = { noticeId: of.notice, on: '2026-01-12', because: 'Vent joined' }
  const rows = (notice: Record<string, unknown>): Row[] => [
    ...ended,
    nextCase,
    [of.notice, 'shut-down notice', { ...fullNotice, ...notice }, at('16:50')],
    [of.lifting, 'lifting', lifting, at('16:55')],
  ]
  expect(kindsOf(rows({ caseId: undefined })).slice(-2)).toEqual(['shut-down notice', 'lifting'])
  expect(kindsOf(rows({ caseId: nextCase[0] })).slice(-1)).toEqual(['ending'])
})

test('timelineOf makes one line of the findings that one person tapped one after another', () => {
  const lines = timelineOf(open(ended).told, 0).flatMap((day) => day.lines)
  expect(lines.map((line) => (line.kind === 'findings' ? line.entries.length : line.kind))).toEqual([
    'case',
    'visit',
    3,
    'reading',
    'repair',
    'reading',
    'reading',
    'combustion test',
    'ending',
  ])
})

test('timelineOf parts findings of two people, and findings that something else came between', () => {
  const others: Row = [
    of.more,
    'finding',
    { ...ofVisit, finding: 'spillage', value: 'ruled out' },
    at('15:06'),
    dispatcher.id,
  ]
  const late: Row = [
    '01920000-0000-7000-8000-000000000c23',
    'finding',
    { ...ofVisit, finding: 'scorching', value: 'ruled out' },
    at('15:30'),
  ]
  const lines = timelineOf(
    open([...without(ended, of.mistapped, of.takenBack), others, late]).told,
    0,
  ).flatMap((day) => day.lines)
  expect(lines.flatMap((line) => (line.kind === 'findings' ? [line.entries.length] : []))).toEqual([2, 1, 1])
})

test('timelineOf begins a new day at midnight of the zone it is read in', () => {
  const days = (ahead: number) => timelineOf(open(ended).told, ahead).map(({ day, zone }) => `${day} ${zone}`)
  expect(days(0)).toEqual(['2026-01-12 UTC'])
  // 16:00 UTC is midnight in a zone eight hours ahead: the readings after the repair fall on the next day there.
  expect(days(480)).toEqual(['2026-01-12 UTC+8', '2026-01-13 UTC+8'])
})

test('timelineOf loses nothing and invents nothing, whatever the zone', () => {
  const { told } = open(ended)
  fc.assert(
    fc.property(fc.integer({ min: -12 * 60, max: 14 * 60 }), (ahead) => {
      const lines = timelineOf(told, ahead).flatMap((day) => day.lines)
      expect(
        lines.flatMap((line) =>
          line.kind === 'findings' ? line.entries.map(({ id }) => id) : [line.entry.id],
        ),
      ).toEqual(told.map(({ entry }) => entry.id))
    }),
    { seed: 20262, numRuns: 50 },
  )
})

const missing = (rows: readonly Row[]) => {
  const { file, ofCase } = open(rows)
  const ending = file.endings.get(of.ending)!
  return missingThen(file, ofCase, ending)
}

test('missingThen: what came after an ending does not finish it', () => {
  expect(missing(ended)).toEqual([])
  const early: Row[] = [...provenRows, [of.ending, 'ending', provenEnding, at('16:15')]]
  expect(missing(early)).toEqual([
    'High fire: a hot reading after the repair, as in service.',
    'CO in the room after the repair.',
    'CO in the flue after the repair, air-free.',
  ])
})

test('missingThen: a danger that was open then bars the ending, also once it was found to be gone', () => {
  const spillage = (id: string, value: string, time: string): Row => [
    id,
    'finding',
    { ...ofVisit, finding: 'spillage', value },
    at(time),
  ]
  const rows: Row[] = [
    ...ended,
    spillage(of.more, 'seen', '16:40'),
    spillage('01920000-0000-7000-8000-000000000c24', 'ruled out', '16:50'),
  ]
  expect(missing(rows).join(' ')).toContain('A danger is open: Combustion products spill into the room.')
})

test('missingThen: a generic switch bars the ending until the factory part was back by then', () => {
  const back: Row = [
    '01920000-0000-7000-8000-000000000c25',
    'repair',
    {
      furnaceId: ids.furnace,
      positionId: ids.low,
      done: 'Factory switch fitted',
      switchReplaced: true,
      fittedPart: ids.newPart,
      on: '2026-01-12',
    },
    at('16:00'),
  ]
  const found: Row = [of.more, 'found fitted', foundFitted, at('15:10')]
  expect(missing([...ended, found]).join(' ')).toContain('general-purpose switch is fitted')
  expect(missing([...ended, found, back])).toEqual([])
  const tooLate: Row = [back[0], back[1], back[2], at('16:50')]
  expect(missing([...ended, found, tooLate]).join(' ')).toContain('general-purpose switch is fitted')
})

test('missingThen: a notice that was lifted later still stood then', () => {
  const rows: Row[] = [
    ...ended,
    [of.notice, 'shut-down notice', fullNotice, at('16:35')],
    [
      of.lifting,
      'lifting',
      { noticeId: of.notice, on: '2026-01-13', because: 'Exchanger replaced' },
      '2026-01-13T10:00:00.000Z',
    ],
  ]
  expect(missing(rows)).toEqual([
    'The furnace is left off: lift its shut-down notice first, or end the visit as left off.',
  ])
})
