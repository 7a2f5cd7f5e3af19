import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AddRangeScreen } from '@/app/equipment/AddRangeScreen'
import { addedId, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, select, tick } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('a range is added with its patterns, its fuel and heat, and the revisions that are typed', async () => {
  openAt('/equipment/add-range?model=TN4-1')
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AddRangeScreen />)
  select('Maker', 'Orrinmoor')
  fill('Name of the range', 'Tarn 4')
  fill('Model numbers, one a line', 'TN4-1\n TN4-0?? \n\n')
  choose('Fuel', 'propane')
  choose('Condensing?', 'non-condensing')
  fill('First revision', 'B')
  await press('Add this range')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'equipment range',
      body: {
        makerId: ids.maker,
        name: 'Tarn 4',
        modelPatterns: ['TN4-1', 'TN4-0??'],
        fuel: 'propane',
        heat: 'non-condensing',
        revisions: { from: 'B' },
      },
    },
  ])
  expect(wentTo()).toEqual([`/equipment/range?id=${addedId(1)}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('the maker that was just added is chosen already, and the model that was looked for is typed already', () => {
  openAt(`/equipment/add-range?maker=${ids.maker}&model=TN4-1`)
  renderOn(fakeDevice({ records: equipmentRecords }), <AddRangeScreen />)
  expect(screen.getByLabelText<HTMLSelectElement>('Maker').value).toBe(ids.maker)
  expect(screen.getByLabelText<HTMLTextAreaElement>('Model numbers, one a line').value).toBe('TN4-1')
})

test('what is missing is said at its field, by the form and by the record’s own rules, and nothing typed is lost', async () => {
  openAt('/equipment/add-range')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddRangeScreen />)
  fill('First serial', 'S2200')
  await press('Add this range')
  expect(describedBy(screen.getByLabelText('Maker'))).toContain('Choose the maker')
  expect(describedBy(screen.getByLabelText('Name of the range'))).toContain('Type the name')
  select('Maker', 'Orrinmoor')
  fill('Name of the range', 'Tarn 4')
  await press('Add this range')
  expect(describedBy(screen.getByLabelText('Model numbers, one a line'))).toContain(
    'Give at least one model number or pattern.',
  )
  expect(screen.getByLabelText<HTMLInputElement>('First serial').value).toBe('S2200')
  expect(device.added).toEqual([])
})

test('a pattern of signs alone is refused at the field', async () => {
  openAt(`/equipment/add-range?maker=${ids.maker}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddRangeScreen />)
  fill('Name of the range', 'Tarn 4')
  fill('Model numbers, one a line', '**')
  await press('Add this range')
  expect(describedBy(screen.getByLabelText('Model numbers, one a line'))).toContain('every furnace')
  expect(device.added).toEqual([])
})

test('a model number that another range has already is pointed out before it is saved', async () => {
  openAt(`/equipment/add-range?maker=${ids.maker}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddRangeScreen />)
  fill('Name of the range', 'Larkfell, later')
  fill('Model numbers, one a line', 'LF2-0??-*')
  expect(screen.getByRole('link', { name: 'Orrinmoor Larkfell 2' })).toBeTruthy()
  await press('Add this range')
  expect(device.added).toEqual([])
  choose('Is it the same range?', 'Another range')
  await press('Add this range')
  expect(device.added).toHaveLength(1)
  expect(wentTo()).toEqual([`/equipment/range?id=${addedId(1)}`])
})

test('a name near that of another range of the same maker is asked about, and that one is a tap away', async () => {
  openAt(`/equipment/add-range?maker=${ids.maker}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddRangeScreen />)
  fill('Name of the range', 'Larkfel 2')
  fill('Model numbers, one a line', 'TN4-1')
  expect(screen.getByText('Did you mean Orrinmoor Larkfell 2?')).toBeDefined()
  await press('Add this range')
  expect(device.added).toEqual([])
  expect(screen.getByRole('checkbox', { name: 'It is another range' })).toBe(document.activeElement)
  tick('It is another range')
  await press('Add this range')
  expect(device.added).toHaveLength(1)
})

test('a near name is used with one tap, and nothing is added', async () => {
  openAt(`/equipment/add-range?maker=${ids.maker}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddRangeScreen />)
  fill('Name of the range', 'Larkfel 2')
  await press('Use Orrinmoor Larkfell 2')
  expect(device.added).toEqual([])
  expect(wentTo()).toEqual([`/equipment/range?id=${ids.range}`])
})

test('a name near that of another maker’s range is nobody’s question', () => {
  const other = '01920000-0000-7000-8000-0000000000bb'
  openAt(`/equipment/add-range?maker=${other}`)
  const records = [
    ...equipmentRecords,
    ...held([[other, 'maker', { name: 'Vellamark' }]]).map((record) => ({ ...record, seq: 50 })),
  ]
  renderOn(fakeDevice({ records }), <AddRangeScreen />)
  fill('Name of the range', 'Larkfel 2')
  expect(screen.queryByText(/Did you mean/)).toBeNull()
})
