import { act, screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { EndScreen } from '@/app/cases/end/EndScreen'
import { addedId, dispatcher, fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt, wentTo } from '../../setup/fakeNavigation'
import { choose, describedBy, fill, press, select, tick } from '../../setup/hands'
import { ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import {
  at,
  fullNotice,
  of,
  ofFurnace,
  ofVisit,
  provenEnding,
  provenRows,
  type Row,
  recordsOf,
  without,
} from './provenCase'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const here = `/case/end?id=${of.case}&visit=${of.visit}`

const open = (rows: readonly Row[] = provenRows, address = here) => {
  openAt(address)
  const device = fakeDevice({ records: recordsOf(rows) })
  return { device, ...renderOn(device, <EndScreen />) }
}
const how = 'How did the visit end?'
const missing = () =>
  within(screen.getByRole('region', { name: /^Still missing/ }))
    .getAllByRole('listitem')
    .map((item) => item.textContent)
const bodies = (device: ReturnType<typeof fakeDevice>) => device.added.map(({ kind, body }) => [kind, body])

test('the six ways are explained, and nothing is asked before one is chosen', async () => {
  const { container } = open()
  const ways = within(screen.getByRole('group', { name: how })).getAllByRole<HTMLInputElement>('radio')
  expect(ways.map((way) => [way.value, way.checked])).toEqual([
    ['repaired and proven', false],
    ['repaired, not proven', false],
    ['waiting for part', false],
    ['no fault found', false],
    ['repair declined', false],
    ['left off', false],
  ])
  expect(screen.getByText(/Nothing else counts as a fix/)).toBeTruthy()
  expect(screen.queryByRole('textbox')).toBeNull()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('without a way nothing is recorded, and the question says so', async () => {
  const { device } = open()
  await press('End the visit')
  expect(describedBy(screen.getByRole('group', { name: how }))).toContain('Choose how the visit ended.')
  expect(device.added).toEqual([])
})

test('repaired and proven: everything is asked in its place, and said and shown, it is kept as finished', async () => {
  const { device } = open()
  choose(how, /^Repaired and proven/)
  select('Where the main cause lies', 'Condensate drainage')
  choose('Main cause', /^Trap plugged/)
  const confirming = screen.getByRole('article', { name: 'The test that confirms it' })
  expect(confirming.textContent).toContain('pour a measured quart')
  expect(confirming.textContent).toContain('State of the furnacePower off')
  expect(confirming.textContent).toContain('Put backPrime the trap again, every hose and plug on.')
  choose('What the test showed', 'It confirmed the cause')
  const done = screen.getByRole('region', { name: 'What was done' })
  expect(within(done).getByRole('link', { name: 'Trap taken out, flushed and primed' })).toBeTruthy()
  fill('Minutes of work on this visit', '95')
  fill('Cycles from the thermostat that you watched', '3')
  for (const item of [
    'Tee out of the hose',
    'Hose on its own port',
    'Trap primed with water',
    'Joints of the vent sealed',
  ])
    choose(item, 'Done')
  choose('Test holes plugged', 'Nothing to put back here')
  expect(missing()).toEqual(['Put back: door on.'])
  choose('Door on', 'Done')
  expect(screen.queryByRole('region', { name: /^Still missing/ })).toBeNull()
  await press('End the visit')
  expect(bodies(device)).toEqual([['ending', provenEnding]])
  expect(screen.getByRole('heading', { level: 1, name: 'The visit has ended' })).toBeTruthy()
  expect(screen.getByText('Kept as finished.')).toBeTruthy()
  expect(screen.getByText(/It counts as a fix/)).toBeTruthy()
  expect(wentTo()).toEqual([here])
})

test('what is missing is listed live, each with the way to where it is recorded', () => {
  open(provenRows.slice(0, 3))
  choose(how, /^Repaired and proven/)
  const list = screen.getByRole('region', { name: 'Still missing before this counts as proven' })
  const href = (sentence: RegExp) => within(list).getByRole('link', { name: sentence }).getAttribute('href')
  expect(href(/^The main cause/)).toBe('#end-mainCause')
  expect(document.getElementById('end-mainCause')).not.toBeNull()
  expect(href(/^High fire: a hot reading/)).toBe(`/case?id=${of.case}#readings`)
  expect(href(/^CO in the flue/)).toBe(`/case?id=${of.case}#combustion`)
  expect(href(/^3 cycles/)).toBe('#end-thermostatCycles')
  expect(document.getElementById('end-thermostatCycles')).not.toBeNull()
  expect(href(/^Put back: door on/)).toBe('#end-putBack')
  expect(document.getElementById('end-putBack')).not.toBeNull()
  const repair = new URL(href(/^What was done/)!, 'http://localhost')
  expect(repair.pathname).toBe('/furnace/repair')
  expect([...repair.searchParams]).toEqual([
    ['furnace', ids.furnace],
    ['case', of.case],
    ['visit', of.visit],
    ['then', here],
  ])
  const count = missing().length
  fill('Minutes of work on this visit', '40')
  expect(missing()).toHaveLength(count - 1)
})

test('ended with something missing, it is kept as not finished and says plainly what is missing', async () => {
  const { device } = open(without(provenRows, of.highAfter))
  choose(how, /^Repaired and proven/)
  await press('End the visit as not finished')
  expect(bodies(device)).toEqual([
    [
      'ending',
      {
        ...ofVisit,
        how: 'repaired and proven',
        repairIds: [of.repair],
        putBack: [],
        nothingToPutBack: [],
      },
    ],
  ])
  const said = screen.getByText('Kept as not finished. Missing:').closest('[role="status"]')!
  expect(said.textContent).toContain('The main cause.')
  expect(said.textContent).toContain('High fire: a hot reading after the repair, as in service.')
  expect(said.textContent).toContain('begin a new visit on the case, or withdraw this ending')
  expect(screen.getByRole('link', { name: 'Withdraw this ending' }).getAttribute('href')).toBe(
    `/withdraw?record=${addedId(1)}`,
  )
})

test('a cause is found by any part of its name, a contributing one is named beside it', async () => {
  const { device } = open()
  choose(how, /^Repaired, not proven/)
  fill('Main cause: look for it by name', 'drain line')
  choose('Main cause', /^Drain line blocked/)
  fill('Contributing cause: look for it by name', 'trap plug')
  choose('Contributing cause', /^Trap plugged/)
  await press('End the visit')
  expect(bodies(device)).toEqual([
    [
      'ending',
      {
        ...ofVisit,
        how: 'repaired, not proven',
        mainCause: 'drain-line-blocked',
        contributingCause: 'trap-plugged',
        repairIds: [of.repair],
      },
    ],
  ])
  expect(screen.getByText(/The case stays open until readings prove the repair/)).toBeTruthy()
})

test('a cause that is not on the list is described in the note', async () => {
  const { device } = open()
  choose(how, /^Repaired and proven/)
  select('Where the main cause lies', 'It is not on the list')
  expect(missing()).toContain('What the cause was that is not on the list: describe it in the note.')
  fill('Note', 'A wasp nest in the tap')
  expect(missing()).not.toContain('What the cause was that is not on the list: describe it in the note.')
  await press('End the visit as not finished')
  expect(device.added[0]?.body).toMatchObject({
    mainCause: 'not on the list',
    note: 'A wasp nest in the tap',
  })
})

test('choosing another part of the furnace lets go of a cause that does not lie there', () => {
  open()
  choose(how, /^Repaired and proven/)
  select('Where the main cause lies', 'Condensate drainage')
  choose('Main cause', /^Trap plugged/)
  select('Where the main cause lies', 'The switch itself')
  expect(missing()).toContain('The main cause.')
})

test('minutes that cannot be read are asked for again, and nothing typed is lost', async () => {
  const { device } = open()
  choose(how, /^Repaired and proven/)
  fill('Minutes of work on this visit', 'an hour')
  fill('Cycles from the thermostat that you watched', '2.5')
  await press(/^End the visit/)
  expect(describedBy(screen.getByLabelText('Minutes of work on this visit'))).toContain('for instance 40')
  expect(describedBy(screen.getByLabelText('Cycles from the thermostat that you watched'))).toContain(
    'whole number',
  )
  expect(device.added).toEqual([])
})

test('repaired, not proven asks for the repair, and offers the way to record it', () => {
  open(provenRows.slice(0, 3))
  choose(how, /^Repaired, not proven/)
  expect(missing()).toEqual(['What was done: record the repair with its parts.'])
  expect(screen.getByRole('link', { name: /^Record a repair/ }).getAttribute('href')).toContain(
    `/furnace/repair?furnace=${ids.furnace}&case=${of.case}&visit=${of.visit}`,
  )
  expect(screen.queryByLabelText(/Cycles from the thermostat/)).toBeNull()
})

const supersession: Row = [
  of.more,
  'supersession',
  {
    oldPartId: ids.oldPart,
    newPartId: ids.newPart,
    statedIn: 'Kit sheet 44',
    setting: 'not stated',
    kit: true,
  },
  at('10:00'),
]

test('waiting for part: what has replaced the number is shown, checked by a tick, and ordered somewhere', async () => {
  const { device } = open([...provenRows, supersession])
  choose(how, /^Waiting for part/)
  expect(missing()).toEqual([
    'The part number that is waited for.',
    'Whether the number has been superseded: check it.',
    'Where it is ordered.',
  ])
  fill('Part number', 'om 7731')
  expect(screen.getByText('OM-7731 has been replaced.')).toBeTruthy()
  expect(screen.getByText(/OM-8802 replaces OM-7731, as a kit/)).toBeTruthy()
  tick('I checked whether a newer number has replaced it')
  await press('Take OM-8802 instead')
  expect(screen.getByLabelText<HTMLInputElement>('Part number').value).toBe('OM-8802')
  expect(screen.getByText('On file, nothing has replaced it.')).toBeTruthy()
  expect(missing()).toContain('Whether the number has been superseded: check it.')
  tick('I checked whether a newer number has replaced it')
  fill('Where it is ordered', 'Hobb & Lane counter, order 118')
  await press('End the visit')
  expect(bodies(device)).toEqual([
    [
      'ending',
      {
        ...ofVisit,
        how: 'waiting for part',
        partNumber: 'OM-8802',
        supersessionChecked: true,
        orderedWhere: 'Hobb & Lane counter, order 118',
      },
    ],
  ])
})

test('a general-purpose switch is never waited for: the rule refuses it and nothing typed is lost', async () => {
  const { device } = open()
  choose(how, /^Waiting for part/)
  fill('Part number', 'GP ADJ 1')
  await press(/^End the visit/)
  const refusal = screen.getAllByRole('alert').find((alert) => alert.textContent?.includes('The rule'))!
  expect(refusal.textContent).toContain('no general-purpose switch')
  expect(refusal.textContent).toContain('Order the factory part')
  expect(screen.getByLabelText<HTMLInputElement>('Part number').value).toBe('GP ADJ 1')
  expect(device.added).toEqual([])
})

test.each([
  ['UNIVERSAL ADJUSTABLE SWITCH', 'no general-purpose switch'],
  ['jumper', 'no bypass'],
])('a part that is called %s is refused by its words, with what to do instead', async (typed, rule) => {
  const { device } = open()
  choose(how, /^Waiting for part/)
  fill('Part number', typed)
  await press(/^End the visit/)
  const refusal = screen.getAllByRole('alert').find((alert) => alert.textContent?.includes('The rule'))!
  expect(refusal.textContent).toContain(rule)
  expect(
    within(refusal)
      .getByRole('link', { name: /record it as found fitted/ })
      .getAttribute('href'),
  ).toBe(`/found-fitted?${new URLSearchParams({ furnace: ids.furnace, printed: typed })}`)
  expect(within(refusal).getByRole('link', { name: 'Ask which part and rating is right' })).toBeTruthy()
  expect(device.added).toEqual([])
})

test('a part that is not on file can be waited for: nothing is claimed of what replaced it', async () => {
  const { device } = open()
  choose(how, /^Waiting for part/)
  fill('Part number', 'IND-4410')
  expect(screen.getByText(/nothing is known here of what has replaced it/)).toBeTruthy()
  await press('End the visit as not finished')
  expect(device.added[0]?.body).toMatchObject({ partNumber: 'IND-4410', supersessionChecked: false })
})

test('no fault found: the readings are listed, and a day to follow it up is asked for', async () => {
  const { device } = open()
  choose(how, /^No fault found/)
  const readings = screen.getByRole('region', { name: 'Readings of this case' })
  expect(within(readings).getAllByRole('listitem')[0]?.textContent).toBe(
    'Too low to close it: .41 WC, Low fire, pre-purge, as found',
  )
  expect(missing()).toEqual(['The day of the follow-up.'])
  fill('Day of the follow-up', '2026-01-19')
  await press('End the visit')
  expect(bodies(device)).toEqual([
    ['ending', { ...ofVisit, how: 'no fault found', followUpOn: '2026-01-19' }],
  ])
})

test('no fault found without a reading leads to where one is taken', () => {
  open(provenRows.slice(0, 3))
  choose(how, /^No fault found/)
  expect(screen.getByRole('link', { name: 'Take one' }).getAttribute('href')).toBe(
    `/case?id=${of.case}#readings`,
  )
})

test('repair declined: the reason is asked for, in the words of whoever declined', async () => {
  const { device } = open()
  choose(how, /^Repair declined/)
  expect(missing()).toEqual(['Why it was declined, in the words of whoever declined.'])
  fill('Why it was declined', 'Wants a second opinion')
  await press('End the visit')
  expect(bodies(device)).toEqual([
    ['ending', { ...ofVisit, how: 'repair declined', declinedBecause: 'Wants a second opinion' }],
  ])
})

test('left off leads to the shut-down notice, which ends the visit', () => {
  open()
  choose(how, /^Left off/)
  expect(
    screen.getByRole('link', { name: 'Write the shut-down notice; it ends the visit' }).getAttribute('href'),
  ).toBe(`/case/shut-down?furnace=${ids.furnace}&case=${of.case}&visit=${of.visit}`)
  expect(missing()).toEqual(['The shut-down notice.'])
})

test('left off with a notice that stands already ends with that one', async () => {
  const { device } = open([...provenRows, [of.notice, 'shut-down notice', fullNotice, at('16:40')]])
  choose(how, /^Left off/)
  expect(screen.getByRole('link', { name: 'The heat exchanger is cracked.' }).getAttribute('href')).toBe(
    `/notice?id=${of.notice}`,
  )
  await press('End the visit')
  expect(bodies(device)).toEqual([['ending', { ...ofVisit, how: 'left off', noticeId: of.notice }]])
  expect(screen.getByRole('link', { name: 'The shut-down notice, to print' })).toBeTruthy()
})

const spillage: Row = [of.more, 'finding', { ...ofVisit, finding: 'spillage', value: 'seen' }, at('16:40')]

test.each([
  /^Repaired and proven/,
  /^Repaired, not proven/,
  /^Waiting for part/,
  /^No fault found/,
  /^Repair declined/,
])('an open danger bars the way %s: it can be kept, and is said not to be finished', async (way) => {
  const { device } = open([...provenRows, spillage])
  const danger = screen.getByRole('region', { name: 'A danger is open' })
  expect(danger.textContent).toContain('Combustion products spill into the room.')
  choose(how, way)
  expect(missing()[0]).toMatch(/^A danger is open:/)
  await press('End the visit as not finished')
  expect(device.added.map(({ kind }) => kind)).toEqual(['ending'])
  expect(screen.getByText('Kept as not finished. Missing:')).toBeTruthy()
})

test('an open danger does not bar leaving the furnace off', () => {
  open([...provenRows, spillage, [of.notice, 'shut-down notice', fullNotice, at('16:40')]])
  choose(how, /^Left off/)
  expect(screen.queryByRole('region', { name: /^Still missing/ })).toBeNull()
  expect(screen.getByText('Nothing is missing.')).toBeTruthy()
})

test('an ending that lacks something is only said to have ended so; left off bare leads to the notice', () => {
  open([...provenRows, [of.ending, 'ending', { ...ofVisit, how: 'left off' }, at('16:45')]])
  expect(screen.getByRole('article', { name: 'Said to be left off, not finished' })).toBeTruthy()
  expect(screen.getByRole('link', { name: 'Write the shut-down notice' }).getAttribute('href')).toBe(
    `/case/shut-down?furnace=${ids.furnace}&case=${of.case}&visit=${of.visit}`,
  )
})

test('note of 10,000 characters is kept whole, and one more is refused at the field', async () => {
  const { device } = open()
  choose(how, /^Repair declined/)
  fill('Why it was declined', 'Too dear')
  fill('Note', 'n'.repeat(10_001))
  await press('End the visit')
  expect(describedBy(screen.getByLabelText('Note'))).toContain('at most 10,000 characters')
  fill('Note', 'n'.repeat(10_000))
  await press('End the visit')
  expect(String(device.added[0]?.body.note)).toHaveLength(10_000)
})

const ended: Row[] = [...provenRows, [of.ending, 'ending', provenEnding, at('16:45')]]
const disagreed: Row[] = [
  ...ended,
  [
    of.otherEnding,
    'ending',
    { ...ofVisit, how: 'no fault found', followUpOn: '2026-01-19' },
    at('16:47'),
    dispatcher.id,
  ],
]

test('two endings of one visit stand side by side, with who and when and the way to settle it', async () => {
  const { container } = open(disagreed)
  expect(screen.getByRole('alert').textContent).toContain('2 endings of this visit stand')
  const mine = screen.getByRole('article', { name: 'Repaired and proven' })
  const other = screen.getByRole('article', { name: 'No fault found' })
  expect(mine.textContent).toMatch(/Ines Talvik, \d+ Jan 2026, \d\d:\d\d, UTC/)
  expect(other.textContent).toMatch(/Bram Osterlo, \d+ Jan 2026, \d\d:\d\d, UTC/)
  expect(
    [mine, other].map((sheet) =>
      within(sheet).getByRole('link', { name: 'Withdraw this ending' }).getAttribute('href'),
    ),
  ).toEqual([`/withdraw?record=${of.ending}`, `/withdraw?record=${of.otherEnding}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('one of the two withdrawn, the other stands', () => {
  open([
    ...disagreed,
    [of.more, 'withdrawal', { record: of.otherEnding, reason: 'Other visit' }, at('16:50')],
  ])
  expect(screen.getByText('Kept as finished.')).toBeTruthy()
  expect(screen.queryByRole('article', { name: 'No fault found' })).toBeNull()
})

test('somebody else ends the visit while it is being ended here: it is said, and nothing typed is lost', async () => {
  const { device } = open()
  choose(how, /^Repair declined/)
  fill('Why it was declined', 'Too dear')
  const body = { ...ofVisit, how: 'no fault found' }
  await act(() => device.addAll([{ id: of.otherEnding, kind: 'ending', body }]).then(() => {}))
  expect(screen.getByLabelText<HTMLInputElement>('Why it was declined').value).toBe('Too dear')
  await press('End the visit')
  expect(screen.getByRole('alert').textContent).toContain('2 endings of this visit stand')
})

test('another person’s ending that arrives meanwhile is named with what recording one’s own does', () => {
  const rows: Row[] = [
    ...provenRows,
    [of.otherEnding, 'ending', { ...ofVisit, how: 'no fault found' }, at('16:47'), dispatcher.id],
  ]
  open(rows, `${here}&own=1`)
  expect(screen.getByText('Bram Osterlo has ended this visit: No fault found.')).toBeTruthy()
  expect(screen.getByText(/the two stand side by side until one is withdrawn/)).toBeTruthy()
})

test('written anew, an ending takes the older one’s place; what it said is there to go on from', async () => {
  const { thermostatCycles: _none, ...incomplete } = provenEnding
  const rows: Row[] = [...provenRows, [of.ending, 'ending', incomplete, at('16:45')]]
  const { device } = open(rows)
  expect(
    screen.getByText('Kept as not finished. Missing:').closest('[role="status"]')?.textContent,
  ).toContain('3 cycles from the thermostat, watched.')
  const again = screen.getByRole('link', { name: 'Write it anew' }).getAttribute('href')!
  expect(again).toBe(`${here}&again=${of.ending}`)
  act(() => openAt(again))
  expect(screen.getByLabelText<HTMLInputElement>('Minutes of work on this visit').value).toBe('95')
  expect(missing()).toEqual(['3 cycles from the thermostat, watched.'])
  fill('Cycles from the thermostat that you watched', '3')
  await press('End the visit')
  expect(bodies(device)).toEqual([
    ['ending', provenEnding],
    [
      'withdrawal',
      { record: of.ending, replacedBy: addedId(1), reason: 'Written anew with what was missing' },
    ],
  ])
  expect(screen.getByText('Kept as finished.')).toBeTruthy()
})

test('a proven repair offers its hot readings as the furnace’s baseline, once', async () => {
  const { device } = open(ended)
  await press('Keep them as its baseline')
  expect(bodies(device)).toEqual(
    [of.lowAfter, of.highAfter].map((readingId) => [
      'baseline',
      {
        furnaceId: ids.furnace,
        readingId,
        occasion: 'after a proven repair',
        on: expect.stringMatching(/^\d{4}-\d\d-\d\d$/),
      },
    ]),
  )
  expect(screen.queryByRole('button', { name: 'Keep them as its baseline' })).toBeNull()
  expect(screen.getByText(/are the furnace’s baseline now/)).toBeTruthy()
})

test('an ending that is not finished offers no baseline', () => {
  open([...without(provenRows, of.combustion), [of.ending, 'ending', provenEnding, at('16:45')]])
  expect(screen.queryByRole('button', { name: 'Keep them as its baseline' })).toBeNull()
})

test('without a visit in the address the one that goes on is ended', () => {
  open(provenRows, `/case/end?id=${of.case}`)
  expect(screen.getByRole('heading', { level: 1, name: 'End the visit' })).toBeTruthy()
  expect(screen.getByText(/Visit of 12 Jan 2026\. No heat since the night/)).toBeTruthy()
})

test('a case without a visit that goes on says so and leads to the case', () => {
  open(ended, `/case/end?id=${of.case}`)
  expect(screen.getByRole('heading', { name: 'There is no visit to end' })).toBeTruthy()
  expect(screen.getByRole('link', { name: /begin a visit there/ }).getAttribute('href')).toBe(
    `/case?id=${of.case}`,
  )
})

test('a case that is not on this device is said to be missing', () => {
  openAt('/case/end?id=nothing')
  renderOn(fakeDevice(), <EndScreen />)
  expect(screen.getByRole('heading', { name: 'This case is not on this device' })).toBeTruthy()
})

test('a switch swap that nothing on record speaks for is listed like any repair', () => {
  const swap = { ...ofFurnace, positionId: ids.low, done: 'Switch swapped, it clicked', on: '2026-01-12' }
  open([
    ...provenRows,
    [of.more, 'repair', { ...swap, switchReplaced: true, fittedPart: ids.newPart }, at('15:51')],
  ])
  choose(how, /^Repaired, not proven/)
  expect(screen.getByRole('region', { name: 'What was done' }).textContent).toContain(
    'Switch swapped, it clicked, factory part OM-8802',
  )
})
