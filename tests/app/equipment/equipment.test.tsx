import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { EquipmentScreen } from '@/app/equipment/EquipmentScreen'
import { RangeScreen } from '@/app/equipment/RangeScreen'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { fill } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('with nothing on file it says so, and leads to the first maker', () => {
  openAt('/equipment')
  renderOn(fakeDevice(), <EquipmentScreen />)
  expect(screen.getByText('No equipment on file yet')).toBeTruthy()
  const links = screen.getAllByRole('link', { name: 'Add a maker' })
  expect(links.map((link) => link.getAttribute('href'))).toContain('/equipment/add-maker')
})

test('it lists ranges with their switches, what is on file of each, and their parts', async () => {
  openAt('/equipment')
  const { container } = renderOn(fakeDevice({ records: disputedRecords }), <EquipmentScreen />)
  const range = screen.getByRole('article', { name: 'Orrinmoor Larkfell 2' })
  expect(within(range).getByRole('link', { name: 'Low fire' }).getAttribute('href')).toBe(
    `/setpoint?position=${ids.low}`,
  )
  expect(range.textContent).toContain('Closes: In dispute 5 Jan 2026')
  expect(range.textContent).toContain('OM-7731 Factory part, listed in Parts list LF2, page 9')
  const loose = screen.getByRole('article', { name: 'Parts of no recorded switch' })
  expect(loose.textContent).toContain('never a repair')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what is typed is found as a part number with look-alikes, and a model by the pattern that stands for it', async () => {
  openAt('/equipment')
  renderOn(fakeDevice({ records: equipmentRecords }), <EquipmentScreen />)
  fill('Model, maker, range, switch or part number', 'om 773I')
  expect(await screen.findByRole('article', { name: 'Orrinmoor Larkfell 2' })).toBeTruthy()
  fill('Model, maker, range, switch or part number', 'LF2-080-B')
  expect(screen.queryByText(/None of them is/)).toBeNull()
})

test('a model from the address is looked for, and the form that adds its range gets it', () => {
  openAt('/equipment?model=QZ90-77')
  renderOn(fakeDevice({ records: equipmentRecords }), <EquipmentScreen />)
  expect(screen.getByText('Nothing on file matches “QZ90-77”')).toBeTruthy()
  expect(
    screen.getByRole('link', { name: 'Add the furnace range, then its switches' }).getAttribute('href'),
  ).toBe('/equipment/add-range?model=QZ90-77')
})

test('every form has a link of its own', () => {
  openAt('/equipment')
  renderOn(fakeDevice({ records: equipmentRecords }), <EquipmentScreen />)
  const add = screen.getByRole('navigation', { name: 'Add to the equipment' })
  expect(
    within(add)
      .getAllByRole('link')
      .map((link) => link.getAttribute('href')),
  ).toEqual([
    '/equipment/add-range',
    '/equipment/add-part',
    '/furnace/add',
    '/equipment/add-maker',
    '/equipment/superseded',
    '/equipment/join',
  ])
})

test('a range says which furnaces it stands for, and each of its switches with its factory parts and its sister', async () => {
  openAt(`/equipment/range?id=${ids.range}`)
  const { container } = renderOn(fakeDevice({ records: equipmentRecords }), <RangeScreen />)
  expect(screen.getByRole('heading', { level: 1, name: 'Orrinmoor Larkfell 2' })).toBeTruthy()
  const high = screen.getByRole('article', { name: 'High fire' })
  expect(high.textContent).toContain('Its sister is Low fire')
  expect(high.textContent).toContain('OM-9140')
  expect(high.textContent).not.toContain('OM-7731')
  expect(within(high).getByRole('link', { name: 'Add a part for it' }).getAttribute('href')).toBe(
    `/equipment/add-part?position=${ids.high}`,
  )
  expect(screen.getByRole('link', { name: /Mill Row 12/ })).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a range that is not on this device is said to be missing', () => {
  openAt('/equipment/range?id=nothing')
  renderOn(fakeDevice(), <RangeScreen />)
  expect(screen.getByText('This furnace range is not on this device')).toBeTruthy()
})
