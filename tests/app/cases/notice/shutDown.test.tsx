import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { ShutDownScreen } from '@/app/cases/notice/ShutDownScreen'
import { addedId, fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt, wentTo } from '../../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../../setup/hands'
import { ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import { at, fullNotice, of, ofVisit, provenRows, type Row, recordsOf } from '../end/provenCase'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const spillage: Row = [of.more, 'finding', { ...ofVisit, finding: 'spillage', value: 'seen' }, at('16:40')]

const open = (rows: readonly Row[], query: string) => {
  openAt(`/case/shut-down?${query}`)
  const device = fakeDevice({ records: recordsOf(rows) })
  return { device, ...renderOn(device, <ShutDownScreen />) }
}
const ofCase = `furnace=${ids.furnace}&case=${of.case}`

function sayEverything() {
  choose('The gas to the furnace', 'Off')
  choose('The power to the furnace', 'Off')
  tick('A tag is on the furnace')
  fill('Do not relight until', 'the heat exchanger is replaced')
  fill('Who was told', 'tenant')
  fill('When they were told', '2026-01-12T09:40')
  tick('They have a written notice')
  choose('The authority or the gas supplier', 'Told')
  fill('Which of them was told', 'gas supplier, duty desk')
  fill('How the house stays warm and free of frost', 'Two electric heaters')
  fill('On which day', '2026-01-12')
}

test('from the end of a visit: one press records the notice and ends the visit with it', async () => {
  const { device, container } = open([...provenRows, spillage], `${ofCase}&visit=${of.visit}`)
  expect(await accessibilityFaults(container)).toEqual([])
  expect(screen.getByLabelText<HTMLTextAreaElement>('What was found').value).toBe(
    'Combustion products spill into the room.',
  )
  sayEverything()
  expect(screen.queryByRole('region', { name: 'Not said yet' })).toBeNull()
  await press('Record the notice')
  expect(device.added.map(({ kind, body }) => [kind, body])).toEqual([
    [
      'shut-down notice',
      {
        furnaceId: ids.furnace,
        caseId: of.case,
        gas: 'off',
        power: 'off',
        tagged: true,
        found: 'Combustion products spill into the room.',
        doNotRelightUntil: 'the heat exchanger is replaced',
        told: 'tenant',
        toldAt: expect.stringMatching(/^2026-01-12T09:40:00[+-]\d\d:\d\d$/),
        writtenNotice: true,
        authority: 'told',
        authorityWho: 'gas supplier, duty desk',
        heatAndFrost: 'Two electric heaters',
        on: '2026-01-12',
      },
    ],
    ['ending', { ...ofVisit, how: 'left off', noticeId: addedId(1) }],
  ])
  const { toldAt } = device.added[0]!.body
  expect(Date.parse(String(toldAt))).toBe(new Date('2026-01-12T09:40').getTime())
  expect(wentTo()).toEqual([`/notice?id=${addedId(1)}`])
})

test('from the case nothing is taken for granted: whether the visit ends with it is asked', async () => {
  const { device } = open([...provenRows, spillage], ofCase)
  sayEverything()
  await press('Record the notice')
  expect(device.added).toEqual([])
  expect(describedBy(screen.getByRole('group', { name: 'Does your visit end with it?' }))).toContain(
    'Say whether your visit ends with it.',
  )
  choose('Does your visit end with it?', /No, I go on looking/)
  await press('Record the notice')
  expect(device.added.map(({ kind }) => kind)).toEqual(['shut-down notice'])
})

test('a furnace without a case can be left off, and no visit is asked about', async () => {
  const { device } = open([], `furnace=${ids.furnace}`)
  expect(screen.queryByRole('group', { name: 'Does your visit end with it?' })).toBeNull()
  sayEverything()
  fill('What was found', 'Vent apart\nin the attic')
  await press('Record the notice')
  expect(device.added[0]?.body).toMatchObject({ furnaceId: ids.furnace, found: 'Vent apart in the attic' })
  expect(device.added[0]?.body).not.toHaveProperty('caseId')
})

test('what is not said yet is listed as it is written, and the notice is kept without it', async () => {
  const { device } = open([...provenRows, spillage], `${ofCase}&visit=${of.visit}`)
  choose('The gas to the furnace', 'Off')
  choose('The power to the furnace', 'Not known')
  fill('Do not relight until', 'the vent is whole again')
  const unsaid = screen.getByRole('region', { name: 'Not said yet' })
  expect(
    within(unsaid)
      .getAllByRole('listitem')
      .map((item) => item.textContent),
  ).toEqual([
    'Whether the power is off.',
    'The tag on the furnace.',
    'Who was told, and when.',
    'The written notice to the occupant.',
    'Whether the authority or the gas supplier must be told here, and whom you told.',
    'How the house stays warm and free of frost.',
  ])
  await press('Record the notice')
  expect(device.added.map(({ kind }) => kind)).toEqual(['shut-down notice', 'ending'])
})

test('gas, power, what was found and what comes first are asked for before anything is recorded', async () => {
  const { device } = open([], `furnace=${ids.furnace}`)
  await press('Record the notice')
  expect(device.added).toEqual([])
  expect(describedBy(screen.getByRole('group', { name: 'The gas to the furnace' }))).toContain(
    'Say whether the gas is off.',
  )
  expect(describedBy(screen.getByLabelText('What was found'))).toContain('so that nobody lights it unknowing')
  expect(describedBy(screen.getByLabelText('Do not relight until'))).toContain('what has to be done first')
})

test('a furnace that is left off already says so, with the notice that stands', () => {
  open([...provenRows, [of.notice, 'shut-down notice', fullNotice, at('16:45')]], ofCase)
  expect(screen.getByText(/It is left off already, since 12 Jan 2026/)).toBeTruthy()
  expect(screen.getByRole('link', { name: 'See that notice.' }).getAttribute('href')).toBe(
    `/notice?id=${of.notice}`,
  )
})

test('written anew, a notice takes the older one’s place, and the ending that named it is said again', async () => {
  const rows: Row[] = [
    ...provenRows,
    [of.notice, 'shut-down notice', { ...fullNotice, heatAndFrost: undefined }, at('16:45')],
    [of.ending, 'ending', { ...ofVisit, how: 'left off', noticeId: of.notice }, at('16:46')],
  ]
  const { device } = open(rows, `${ofCase}&again=${of.notice}`)
  const told = screen.getByLabelText<HTMLInputElement>('When they were told').value
  expect(new Date(told).getTime()).toBe(Date.parse(fullNotice.toldAt))
  fill('How the house stays warm and free of frost', 'Two electric heaters')
  await press('Record the notice')
  const again = device.added[2]!.id
  expect(device.added.map(({ kind, body }) => [kind, body])).toEqual([
    ['shut-down notice', expect.objectContaining({ heatAndFrost: 'Two electric heaters' })],
    [
      'withdrawal',
      { record: of.notice, replacedBy: addedId(1), reason: 'Written anew with what was missing' },
    ],
    ['ending', { ...ofVisit, how: 'left off', noticeId: addedId(1) }],
    ['withdrawal', { record: of.ending, replacedBy: again, reason: 'Written anew with what was missing' }],
  ])
})

test('without a furnace it asks which one, and that gas and power come first', () => {
  open([], '')
  expect(screen.getByRole('heading', { name: 'Which furnace is left off?' })).toBeTruthy()
  expect(screen.getByText(/The gas and the power come first/)).toBeTruthy()
})
