import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { momentWords } from '@/app/cases/history/momentWords'
import { NoticeScreen } from '@/app/cases/notice/NoticeScreen'
import { dispatcher, fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt } from '../../setup/fakeNavigation'
import { describedBy, fill, press } from '../../setup/hands'
import { ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import { at, changed, fullNotice, of, ofVisit, provenRows, type Row, recordsOf } from '../end/provenCase'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const standing: Row[] = [...provenRows, [of.notice, 'shut-down notice', fullNotice, at('16:45')]]
const lifted: Row[] = [
  ...standing,
  [
    of.lifting,
    'lifting',
    { noticeId: of.notice, on: '2026-01-14', because: 'Exchanger replaced, CO read again', licence: 'HV-9' },
    '2026-01-14T15:00:00.000Z',
  ],
]

const open = (rows: readonly Row[], me?: typeof dispatcher) => {
  openAt(`/notice?id=${of.notice}`)
  const device = fakeDevice({ records: recordsOf(rows), ...(me === undefined ? {} : { me }) })
  return { device, ...renderOn(device, <NoticeScreen />) }
}
const paper = () => screen.getByRole('article', { name: /^(Left off|Lifted|Withdrawn)$/ })

test('the notice says that it is left off, until what, and everything that whoever comes next will ask', async () => {
  const { container } = open(standing)
  expect(screen.getByRole('heading', { level: 1, name: 'Left off' })).toBeTruthy()
  const text = paper().textContent
  for (const words of [
    'Do not relight until the heat exchanger is replaced',
    'Mill Row 12',
    'LF2-080-B',
    'S2204-118',
    'The heat exchanger is cracked.',
    'GasOff',
    'PowerOff',
    'Tag on the furnaceYes',
    'Toldtenant, 12 Jan 2026, 09:40, UTC−7',
    'Written notice leftYes',
    'Authority or gas supplierTold: gas supplier, duty desk',
    'Two electric heaters, water off at the main',
    `Recorded ${momentWords(at('16:45'))}, by Ines Talvik, licence HV-2207.`,
    'The maker’s instructions and local codes come before anything written here.',
  ])
    expect(text).toContain(words)
  expect(text).toMatch(/Recorded .*, UTC/)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what it does not say yet is listed, with the way to write it anew', () => {
  open(changed(standing, of.notice, { tagged: false, told: undefined, toldAt: undefined }))
  const unsaid = screen.getByRole('region', { name: 'Not said yet' })
  expect(
    within(unsaid)
      .getAllByRole('listitem')
      .map((item) => item.textContent),
  ).toEqual(['The tag on the furnace.', 'Who was told, and when.'])
  expect(within(unsaid).getByRole('link').getAttribute('href')).toBe(
    `/case/shut-down?furnace=${ids.furnace}&case=${of.case}&again=${of.notice}`,
  )
  expect(paper().textContent).toContain('Toldnot recorded, when: not recorded')
})

test('lifting it asks what was put right, and records who judged it', async () => {
  const { device } = open(standing)
  await press('Lift the notice')
  expect(device.added).toEqual([])
  expect(describedBy(screen.getByLabelText('What was put right'))).toContain('how that was shown')
  fill('What was put right', 'Exchanger replaced, CO read again')
  fill('Licence', 'HV-9')
  fill('On which day', '2026-01-14')
  await press('Lift the notice')
  expect(device.added.map(({ kind, body }) => [kind, body])).toEqual([
    [
      'lifting',
      {
        noticeId: of.notice,
        because: 'Exchanger replaced, CO read again',
        licence: 'HV-9',
        on: '2026-01-14',
      },
    ],
  ])
  expect(screen.getByRole('heading', { level: 1, name: 'Lifted' })).toBeTruthy()
  expect(screen.queryByRole('button', { name: 'Lift the notice' })).toBeNull()
})

test('a lifted notice says who lifted it and why, and still says what it said', () => {
  open(lifted)
  expect(screen.queryByRole('heading', { name: 'Left off' })).toBeNull()
  expect(screen.getByRole('region', { name: 'Lifted' }).textContent).toContain(
    'Lifted 14 Jan 2026 by Ines Talvik, licence HV-9. Put right: Exchanger replaced, CO read again',
  )
  expect(paper().textContent).toContain('It said: Do not relight until the heat exchanger is replaced')
  expect(screen.getByRole('link', { name: 'Begin a visit on the case' }).getAttribute('href')).toBe(
    `/case?id=${of.case}`,
  )
})

test('a lifting that is withdrawn lifts nothing: the furnace is left off again', () => {
  open([
    ...lifted,
    [of.more, 'withdrawal', { record: of.lifting, reason: 'Other furnace' }, '2026-01-14T15:05:00.000Z'],
  ])
  expect(screen.getByRole('heading', { level: 1, name: 'Left off' })).toBeTruthy()
})

test('whoever may not lift is told who may, before anything is typed', () => {
  open(standing, dispatcher)
  expect(screen.getByText(/A dispatcher may not lift a notice/).textContent).toContain(
    'Ask a manager or a technician.',
  )
  expect(screen.queryByLabelText('What was put right')).toBeNull()
})

test('while a danger is open in its case a notice can’t be lifted', () => {
  open([...standing, [of.more, 'finding', { ...ofVisit, finding: 'spillage', value: 'seen' }, at('16:50')]])
  const warning = screen.getByRole('alert')
  expect(warning.textContent).toContain('It cannot be lifted while these are open in its case.')
  expect(warning.textContent).toContain('Combustion products spill into the room.')
  expect(screen.queryByRole('button', { name: 'Lift the notice' })).toBeNull()
})

test('a second notice of the furnace has to be lifted as well', () => {
  open([
    ...lifted,
    [
      of.more,
      'shut-down notice',
      { ...fullNotice, caseId: undefined, found: 'Vent apart in the attic' },
      '2026-01-14T16:00:00.000Z',
    ],
  ])
  expect(screen.getByRole('link', { name: 'Vent apart in the attic' }).getAttribute('href')).toBe(
    `/notice?id=${of.more}`,
  )
})

test('a withdrawn notice stays readable, says so, and cannot be lifted', () => {
  open([...standing, [of.more, 'withdrawal', { record: of.notice, reason: 'Other furnace' }, at('16:50')]])
  expect(screen.getByRole('heading', { level: 1, name: 'Withdrawn' })).toBeTruthy()
  expect(paper().textContent).toContain('by Ines Talvik: Other furnace')
  expect(paper().textContent).toContain('The heat exchanger is cracked.')
  expect(screen.queryByRole('heading', { name: 'Lift this notice' })).toBeNull()
})

test('a notice that is not on this device is no permission to light the furnace', () => {
  openAt('/notice?id=nothing')
  renderOn(fakeDevice(), <NoticeScreen />)
  expect(screen.getByText(/That is no permission to light the furnace/)).toBeTruthy()
})
