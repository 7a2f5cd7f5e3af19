import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AddPartScreen } from '@/app/equipment/AddPartScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const adjustable = 'Can its setting be changed in the field?'

test('a factory part is added with the maker who lists it, where, and for which positions', async () => {
  openAt(`/equipment/add-part?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AddPartScreen />)
  fill('Part number', 'OM-5520')
  choose(adjustable, 'No, it is fixed')
  choose('What is it?', /^Factory part/)
  fill('Where it is listed', 'Parts list LF2, page 10')
  tick('High fire, Orrinmoor Larkfell 2')
  await press('Add this part')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'part',
      body: {
        partNumber: 'OM-5520',
        class: 'factory',
        fieldAdjustable: false,
        makerId: ids.maker,
        positionIds: [ids.low, ids.high],
        listedIn: 'Parts list LF2, page 10',
      },
    },
  ])
  expect(wentTo()).toEqual([`/equipment/range?id=${ids.range}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a general-purpose switch is recorded for no position, and the page says what it means and that it is right', async () => {
  openAt(`/equipment/add-part?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPartScreen />)
  fill('Part number', 'GP-77')
  choose(adjustable, /^Yes/)
  choose('What is it?', /^General-purpose switch/)
  expect(screen.getByText(/never a repair, and the number on its label is no furnace’s rating/)).toBeTruthy()
  expect(screen.getByText(/Recording it is right/)).toBeTruthy()
  expect(screen.getByRole('link', { name: /Record it as found fitted/ }).getAttribute('href')).toBe(
    '/found-fitted',
  )
  await press('Add this part')
  expect(device.added.map(({ body }) => body)).toEqual([
    { partNumber: 'GP-77', class: 'general-purpose', fieldAdjustable: true, positionIds: [] },
  ])
})

test('an adjustable switch is refused as a factory part, at the question what it is', async () => {
  openAt(`/equipment/add-part?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPartScreen />)
  fill('Part number', 'OM-5520')
  choose(adjustable, /^Yes/)
  choose('What is it?', /^Factory part/)
  fill('Where it is listed', 'Parts list LF2, page 10')
  await press('Add this part')
  expect(describedBy(screen.getByRole('group', { name: 'What is it?' }))).toContain(
    'adjustable in the field is general-purpose, whoever sells it',
  )
  expect(screen.getByLabelText<HTMLInputElement>('Where it is listed').value).toBe('Parts list LF2, page 10')
  expect(device.added).toEqual([])
})

test('a factory part without the place where it is listed is refused at that field', async () => {
  openAt(`/equipment/add-part?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPartScreen />)
  fill('Part number', 'OM-5520')
  choose(adjustable, 'No, it is fixed')
  choose('What is it?', /^Factory part/)
  await press('Add this part')
  const field = screen.getByLabelText('Where it is listed')
  expect(describedBy(field)).toContain('A factory part needs the maker who lists it, and where.')
  expect(document.activeElement).toBe(field)
  expect(device.added).toEqual([])
})

test('a number that is on file in another spelling is pointed out before it is saved', async () => {
  openAt('/equipment/add-part?number=om773I')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPartScreen />)
  expect(screen.getByRole('link', { name: 'OM-7731 (factory part)' })).toBeTruthy()
  choose(adjustable, 'No, it is fixed')
  choose('What is it?', /^Not known yet/)
  await press('Add this part')
  expect(device.added).toEqual([])
  choose('Is it the same part?', 'Another part')
  await press('Add this part')
  expect(device.added.map(({ body }) => body)).toEqual([
    { partNumber: 'om773I', class: 'not known', fieldAdjustable: false, positionIds: [] },
  ])
})

test('a number near that of another part of the same position is asked about', async () => {
  openAt(`/equipment/add-part?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPartScreen />)
  fill('Part number', 'OM-7713')
  choose(adjustable, 'No, it is fixed')
  choose('What is it?', /^Not known yet/)
  expect(screen.getByText('Did you mean OM-7731?')).toBeDefined()
  await press('Add this part')
  expect(device.added).toEqual([])
  await press('Use OM-7731')
  expect(device.added).toEqual([])
  expect(wentTo()).toEqual([`/equipment/range?id=${ids.range}`])
})

test('a number near that of a part of another position is not asked about', () => {
  openAt(`/equipment/add-part?position=${ids.high}`)
  renderOn(fakeDevice({ records: equipmentRecords }), <AddPartScreen />)
  fill('Part number', 'OM-7713')
  expect(screen.queryByText(/Did you mean/)).toBeNull()
})
