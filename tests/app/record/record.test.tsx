import { act, fireEvent, screen, waitFor } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { RecordScreen } from '@/app/record/RecordScreen'
import { WithdrawScreen } from '@/app/record/WithdrawScreen'
import { SetpointScreen } from '@/app/setpoint/SetpointScreen'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { fill, press, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids, pascals, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const opensId = '01920000-0000-7000-8000-0000000000e1'
const statement = {
  ...disputedRecords.at(-1)!.body,
  asWritten: 'CLOSE .42 / OPEN .30',
  origin: 'call Hobb & Lane counter C-91',
}
/** A make point on file, and a break point beside it that differs from the same statement as told. */
const records = (opens: Record<string, unknown> = {}, at = '2026-01-06T09:00:00.000Z') => [
  ...equipmentRecords,
  ...held([
    [ids.counter, 'report', statement, '2026-01-06T09:00:00.000Z'],
    [opensId, 'report', { ...statement, action: 'opens', pascals: 0.3 * 249.08891, ...opens }, at],
  ]).map((record, place) => ({ ...record, seq: 50 + place })),
]
const open = (page: 'record' | 'withdraw', id: string, all = records()) => {
  openAt(page === 'record' ? `/record?id=${id}` : `/withdraw?record=${id}`)
  const device = fakeDevice({ records: all })
  return {
    device,
    ...renderOn(device, page === 'record' ? <RecordScreen /> : <WithdrawScreen />),
  }
}
const bothToo = /^Withdraw with it/

test('a record is shown in words and units, and names what was saved together with it', async () => {
  const { container } = open('record', ids.counter)
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Report: Distributor')
  const said = screen.getByRole('article', { name: 'What was recorded' }).textContent
  expect(said).toContain('CLOSE .42 / OPEN .30')
  expect(said).toContain('0.42 in. w.c.')
  expect(said).toMatch(/Supported 6 Jan 2026/)
  expect(said).toContain('It supports the number that is shown.')
  expect(screen.getByRole('link', { name: 'The setpoint of Low fire, Orrinmoor Larkfell 2' })).toBeDefined()
  expect(document.body.textContent).not.toMatch(/pascals|toleranceAbove/i)
  // The exact fields are there for whoever audits them, and are no first reading.
  expect(screen.queryByText('Decimals of the source')).toBeNull()
  fireEvent.click(screen.getByText('Every field, as it was recorded'))
  screen.getByText('Every field, as it was recorded').closest('details')!.open = true
  await screen.findByText('Decimals of the source')
  expect(screen.getByText('Saved together with it, of the same text, and standing:')).toBeDefined()
  expect(screen.getByRole('link', { name: /^Opens/ }).getAttribute('href')).toBe(`/record?id=${opensId}`)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a withdrawal says before it is made what it would change of the rating', async () => {
  open('withdraw', ids.counter)
  const would = screen.getByText('Nothing is withdrawn yet. Once it is:').parentElement!
  expect(would.textContent).toContain(
    'Low fire, Orrinmoor Larkfell 2: Closes (make\u00a0point), Supported now. Would stand as: Not on file.',
  )
  expect(would.textContent).not.toContain('Opens')
  tick(bothToo)
  await waitFor(() =>
    expect(would.textContent).toContain(
      'Opens (break\u00a0point), Supported now. Would stand as: Not on file.',
    ),
  )
})

test('a withdrawal that settles a dispute, or that changes nothing, says so too', () => {
  const { unmount } = open('withdraw', ids.counter, disputedRecords)
  expect(document.body.textContent).toContain('In dispute now. Would stand as: Supported')
  unmount()
  open('withdraw', ids.gauge)
  expect(screen.getByText('Every rating and every question stays as it is.')).toBeDefined()
})

test('withdrawing the one answer to a question opens it again, and withdrawing the question ends it', () => {
  const request = '01920000-0000-7000-8000-0000000000c1'
  const asked = held([
    [
      request,
      'rating request',
      { positionId: ids.low, printed: 'nothing', needs: [] },
      '2026-01-05T09:00:00.000Z',
    ],
  ]).map((record) => ({ ...record, seq: 49 }))
  const { unmount } = open(
    'withdraw',
    ids.counter,
    [...asked, ...records()].map((record) =>
      record.id === ids.counter ? { ...record, body: { ...record.body, requestId: request } } : record,
    ),
  )
  expect(document.body.textContent).toContain(
    'Low fire, Orrinmoor Larkfell 2: the question is open again, for nobody else has answered it.',
  )
  unmount()
  open('withdraw', request, [...equipmentRecords, ...asked])
  expect(document.body.textContent).toContain('nobody asks it any more, and it leaves the Phone desk.')
})

test('a settlement is told with its evidence, what it overruled and why, on its page and on the card', async () => {
  const settled = [
    ...settleableRecords,
    ...held([
      [
        opensId,
        'settlement',
        {
          positionId: ids.low,
          action: 'closes',
          pascals: pascals.make,
          limit: 'nominal',
          evidenceReportId: ids.support,
          overruledReportIds: [ids.counter],
          reason: 'The counter read the break point.',
        },
        '2026-01-13T09:00:00.000Z',
      ],
    ]).map((record) => ({ ...record, seq: 90 })),
  ]
  const { unmount } = open('record', opensId, settled)
  for (const said of ['Why: The counter read the break point.', 'ref. T-5512', 'ref. C-91'])
    expect(screen.getByRole('article', { name: 'What was recorded' }).textContent).toContain(said)
  unmount()
  openAt(`/setpoint?position=${ids.low}`)
  renderOn(fakeDevice({ records: settled }), <SetpointScreen />)
  await act(async () => {})
  expect(screen.getByText('Settled, with the reason (1 dispute)').parentElement!.textContent).toContain(
    'The counter read the break point.',
  )
})

test('withdrawing one half of a statement names the other, which stays unless it is ticked', async () => {
  const { device, container } = open('withdraw', ids.counter)
  expect(screen.getByRole('checkbox', { name: /Opens \(break\u00a0point\)$/ })).toHaveProperty(
    'checked',
    false,
  )
  expect(await accessibilityFaults(container)).toEqual([])
  fill('Why?', 'Misread digit.')
  await press('Withdraw it')
  expect(device.added.map(({ body }) => body)).toEqual([{ record: ids.counter, reason: 'Misread digit.' }])
  expect(wentTo()).toEqual([`/record?id=${ids.counter}`])
})

test('both halves of a statement are withdrawn in one step, for one reason', async () => {
  const { device } = open('withdraw', opensId)
  tick(bothToo)
  fill('Why?', 'It was said of another furnace.')
  await press('Withdraw both')
  expect(device.added.map(({ kind, body }) => [kind, body])).toEqual([
    ['withdrawal', { record: opensId, reason: 'It was said of another furnace.' }],
    ['withdrawal', { record: ids.counter, reason: 'It was said of another furnace.' }],
  ])
})

test.each([
  ['text', records({ asWritten: 'OPEN .30' })],
  ['origin', records({ origin: 'call Hobb & Lane counter C-92' })],
  ['furnace', records({ furnaceId: ids.furnace })],
  ['switch', records({ positionId: ids.high })],
  ['day', records({}, '2026-01-07T09:00:00.000Z')],
  ['id alone', records({ action: 'closes' })],
])('a report that differs in its %s is no other half', (_what, all) => {
  open('withdraw', ids.counter, all)
  expect(screen.queryByRole('checkbox')).toBeNull()
})

test('a half that is withdrawn already is not withdrawn again', () => {
  const gone = held([
    ['01920000-0000-7000-8000-0000000000e2', 'withdrawal', { record: opensId, reason: 'Misread.' }],
  ]).map((record) => ({ ...record, seq: 60 }))
  open('withdraw', ids.counter, [...records(), ...gone])
  expect(screen.queryByRole('checkbox')).toBeNull()
})

test('a withdrawal without its reason is asked for it, above and at the field', async () => {
  const { device } = open('withdraw', ids.counter)
  await press('Withdraw it')
  expect(device.added).toEqual([])
  expect(screen.getByRole('navigation', { name: 'Answers to put right' })).toBeDefined()
  expect(document.activeElement).toBe(screen.getByLabelText('Why?'))
})

test('a record that is not on this device says so on both pages', () => {
  const { unmount } = open('record', '01920000-0000-7000-8000-00000000dead')
  expect(screen.getByText('This record is not on this device')).toBeDefined()
  unmount()
  open('withdraw', '01920000-0000-7000-8000-00000000dead')
  expect(screen.getByText('There is nothing to withdraw')).toBeDefined()
})
