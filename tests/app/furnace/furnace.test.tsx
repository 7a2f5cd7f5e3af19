import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { FurnaceScreen } from '@/app/furnace/FurnaceScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const found = '01920000-0000-7000-8000-0000000000aa'
const repair = '01920000-0000-7000-8000-0000000000ab'
const later = (records: readonly Parameters<typeof held>[0][number][]): HeldRecord[] =>
  held(records).map((record, index) => ({ ...record, seq: 40 + index }))

const foundFitted = {
  furnaceId: ids.furnace,
  positionId: ids.low,
  printed: 'GP-ADJ-1',
  what: 'adjustable or general-purpose switch',
  fittedWhen: 'December 2024',
  fittedBy: 'us',
  foundOn: '2026-01-09',
}

test('a furnace shows its facts letter for letter, and a setpoint card for every switch of its range', async () => {
  openAt(`/furnace?id=${ids.furnace}`)
  const { container } = renderOn(fakeDevice({ records: equipmentRecords }), <FurnaceScreen />)
  const facts = screen.getByRole('article', { name: 'The furnace' })
  expect(facts.textContent).toContain('S2204-118')
  expect(facts.textContent).toContain('4,800 ft (1,463 m)')
  expect(facts.textContent).toContain('Revisionnot on record')
  expect(screen.getByRole('article', { name: 'Low fire, Orrinmoor Larkfell 2' })).toBeTruthy()
  const high = screen.getByRole('article', { name: 'High fire, Orrinmoor Larkfell 2' })
  expect(within(high).getByRole('link', { name: 'Add a report' }).getAttribute('href')).toBe(
    `/report?position=${ids.high}&furnace=${ids.furnace}`,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what was found fitted stands above everything, with what to do and that it is not proven safe', () => {
  const records = [...equipmentRecords, ...later([[found, 'found fitted', foundFitted]])]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  const text = document.body.textContent ?? ''
  expect(text).toContain('Fitted December 2024, by us.')
  expect(text.indexOf('Gas and power off, if that is safe.')).toBeGreaterThan(0)
  expect(text.indexOf('Gas and power off, if that is safe.')).toBeLessThan(
    text.indexOf('Low fire, Orrinmoor'),
  )
  expect(text).toContain('The furnace is not proven safe until the factory part is back.')
})

test('a furnace of the same range gets no warning from what was found in another', () => {
  const records = [
    ...equipmentRecords,
    ...later([[found, 'found fitted', { ...foundFitted, furnaceId: ids.bareFurnace }]]),
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.queryByText(/Found fitted/)).toBeNull()
})

test.each([
  ['the factory part of that position, afterwards', { fittedPart: ids.newPart, on: '2026-01-13' }, true],
  ['the factory part of the sister position', { fittedPart: ids.highPart, on: '2026-01-13' }, false],
  ['the factory part, before it was found', { fittedPart: ids.newPart, on: '2026-01-08' }, false],
  ['no part', { on: '2026-01-13' }, false],
])('a repair with %s', (_, body, isBack) => {
  const done = { furnaceId: ids.furnace, positionId: ids.low, done: 'Factory switch fitted', ...body }
  const records = [
    ...equipmentRecords,
    ...later([
      [found, 'found fitted', foundFitted],
      [repair, 'repair', done],
    ]),
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.queryByText(/That is proven only by readings taken afterwards/) !== null).toBe(isBack)
  expect(screen.queryAllByText('Gas and power off, if that is safe.').length > 0).toBe(!isBack)
  const repairs = screen.getByRole('article', { name: 'Repairs' })
  expect(within(repairs).getByRole('link', { name: 'Factory switch fitted' })).toBeTruthy()
  expect(repairs.textContent).toContain('Ines Talvik')
})

test('a furnace without a range gets no setpoint, but the ranges whose patterns stand for its model', () => {
  openAt(`/furnace?id=${ids.bareFurnace}`)
  renderOn(fakeDevice({ records: disputedRecords }), <FurnaceScreen />)
  const question = screen.getByRole('article', { name: 'Which furnace range is it of?' })
  expect(within(question).getByRole('link', { name: 'Low fire' }).getAttribute('href')).toBe(
    `/setpoint?position=${ids.low}&furnace=${ids.bareFurnace}`,
  )
  expect(screen.queryByText(/make point/)).toBeNull()
})

test('a furnace that is not on this device is said to be missing', () => {
  openAt('/furnace')
  renderOn(fakeDevice(), <FurnaceScreen />)
  expect(screen.getByText('This furnace is not on this device')).toBeTruthy()
})
