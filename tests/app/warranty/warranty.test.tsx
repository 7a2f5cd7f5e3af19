import { act, screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { RecordScreen } from '@/app/record/RecordScreen'
import { WarrantyScreen } from '@/app/warranty/WarrantyScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { at, base, ids, opened, repair, said } from '../../records/view/case/team'
import { addedId, dispatcher, fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, select } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const swapId = '01940000-0000-7000-8000-000000000800'
const counterId = '01940000-0000-7000-8000-000000000801'
const swap = repair(
  { done: 'Switch replaced', switchReplaced: true, fittedPart: ids.newPart, positionId: ids.low },
  { id: swapId },
)
const counter = said(
  'organisation',
  { name: 'Hobb & Lane counter', source: 'distributor', makerIds: [] },
  { id: counterId },
)
const waiting = said(
  'warranty answer',
  {
    repairId: swapId,
    partReturned: 'OM-7731',
    outcome: 'waiting',
    amountMinorUnits: 18450,
    currency: 'USD',
    organisationId: counterId,
    on: '2026-01-15',
  },
  { at: at(15) },
)
const open = (records: readonly HeldRecord[] = [], query = `repair=${swapId}`, me = dispatcher) => {
  openAt(`/warranty?${query}`)
  const device = fakeDevice({ me, records: [...base, ...opened, swap, counter, ...records] })
  return { device, ...renderOn(device, <WarrantyScreen />) }
}
const field = (label: string) => screen.getByLabelText<HTMLInputElement>(label)

test('a denied answer is recorded with its amount in the smallest unit, whose it is and why', async () => {
  const { device, container } = open()
  fill('Part number that went back', 'OM-7731')
  choose('What became of it?', 'Denied')
  fill('Amount', '184.5')
  fill('Currency', 'usd')
  select('Whose answer is it?', 'Hobb & Lane counter')
  fill('Reason given', 'Worn, they say')
  fill('Day of the answer', '2026-01-20')
  fill('Their reference', 'RA-2207')
  await press('Record the answer')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'warranty answer',
      body: {
        repairId: swapId,
        partReturned: 'OM-7731',
        outcome: 'denied',
        amountMinorUnits: 18450,
        currency: 'USD',
        organisationId: counterId,
        reasonGiven: 'Worn, they say',
        on: '2026-01-20',
        reference: 'RA-2207',
      },
    },
  ])
  expect(wentTo()).toEqual([`/case/history?id=${ids.case}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what is open or cannot be read is said at its field, and nothing that was typed is lost', async () => {
  const { device } = open()
  fill('Amount', '1,845')
  fill('Day of the answer', '2026-01-11')
  await press('Record the answer')
  expect(describedBy(field('Part number that went back'))).toContain('Type the number of the part')
  expect(describedBy(screen.getByRole('group', { name: 'What became of it?' }))).toContain('it is waiting')
  expect(describedBy(field('Amount'))).toContain('in figures alone')
  expect(describedBy(field('Currency'))).toContain('three letters')
  expect(describedBy(field('Who answered'))).toContain('Say whose answer it is')
  expect(describedBy(field('Day of the answer'))).toContain('before the repair')
  fill('Currency', 'UDS')
  expect(describedBy(field('Currency'))).toContain('No currency has these letters')
  expect(field('Amount').value).toBe('1,845')
  expect(device.added).toEqual([])
})

test('what is typed is kept as a draft of this repair', async () => {
  vi.useFakeTimers()
  const { device } = open()
  fill('Part number that went back', 'OM-77')
  await act(async () => vi.advanceTimersByTime(300))
  vi.useRealTimers()
  expect(device.drafts.get(`warranty ${swapId}`)).toMatchObject({ partReturned: 'OM-77' })
})

test('a later answer begins with the part, whom and the currency of the one before, which is shown', async () => {
  const { device } = open([waiting], `repair=${swapId}&then=/reports`)
  expect(screen.getByRole('link', { name: /^waiting, USD 184\.50/ })).toBeTruthy()
  expect(field('Part number that went back').value).toBe('OM-7731')
  choose('What became of it?', 'Credited')
  fill('Day of the answer', '2026-01-20')
  await press('Record the answer')
  expect(device.added[0]?.body).toEqual({
    repairId: swapId,
    partReturned: 'OM-7731',
    outcome: 'credited',
    organisationId: counterId,
    on: '2026-01-20',
  })
  expect(wentTo()).toEqual(['/reports'])
})

test('a technician is told whom to tell, and a repair that fitted nothing is no place for an answer', () => {
  const drawn = open([], undefined, technician)
  expect(screen.getByText(/Tell a dispatcher or a manager/)).toBeTruthy()
  expect(screen.queryByRole('button')).toBeNull()
  drawn.unmount()
  const bare = repair()
  open([bare], `repair=${bare.id}`)
  expect(screen.getByRole('link', { name: /^Open its case/ }).getAttribute('href')).toBe('/cases')
})

test('the repair’s record shows its answers and leads to the form; an answer that was overtaken says so', () => {
  const denied = said(
    'warranty answer',
    { repairId: swapId, partReturned: 'OM 7731', outcome: 'denied', answeredBy: 'Counter', on: '2026-01-22' },
    { at: at(22) },
  )
  openAt(`/record?id=${swapId}`)
  const records = [...base, ...opened, swap, counter, waiting, denied]
  const drawn = renderOn(fakeDevice({ me: dispatcher, records }), <RecordScreen />)
  expect(screen.getByRole('listitem').textContent).toContain(
    'denied, 22 Jan 2026. Before that: waiting, USD 184.50',
  )
  expect(screen.getByRole('link', { name: 'Record a warranty answer' }).getAttribute('href')).toBe(
    `/warranty?repair=${swapId}&then=${encodeURIComponent(`/record?id=${swapId}`)}`,
  )
  drawn.unmount()
  openAt(`/record?id=${waiting.id}`)
  renderOn(fakeDevice({ me: dispatcher, records }), <RecordScreen />)
  expect(
    screen.getByRole('link', { name: 'A later answer about this part counts' }).getAttribute('href'),
  ).toBe(`/record?id=${denied.id}`)
})
