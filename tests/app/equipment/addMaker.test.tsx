import { screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { expect, test, vi } from 'vitest'
import { AddMakerScreen } from '@/app/equipment/AddMakerScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('a maker is added with the keyboard alone, trimmed, and its range comes next', async () => {
  openAt('/equipment/add-maker?model=LF2')
  const device = fakeDevice()
  const { container } = renderOn(device, <AddMakerScreen />)
  const person = userEvent.setup()
  await person.tab()
  await person.tab()
  await person.keyboard(' Vellamark {Enter}')
  expect(device.added).toEqual([{ id: addedId(1), kind: 'maker', body: { name: 'Vellamark' } }])
  expect(wentTo()).toEqual([`/equipment/add-range?maker=${addedId(1)}&model=LF2`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('an empty name is asked for at the field, and the field has the focus', async () => {
  openAt('/equipment/add-maker')
  const device = fakeDevice()
  renderOn(device, <AddMakerScreen />)
  fill('Note', 'Reads its serials backwards.')
  await press('Add this maker')
  const name = screen.getByRole('textbox', { name: 'The maker’s name' })
  expect(describedBy(name)).toBe('Type the maker’s name.')
  expect(document.activeElement).toBe(name)
  expect(screen.getByLabelText<HTMLTextAreaElement>('Note').value).toBe('Reads its serials backwards.')
  expect(device.added).toEqual([])
})

test('a name that reads the same as one on file is pointed out, and not saved before somebody says what it is', async () => {
  openAt('/equipment/add-maker')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddMakerScreen />)
  fill('The maker’s name', '0rrin-moor')
  expect(screen.getByRole('link', { name: 'Orrinmoor' })).toBeTruthy()
  await press('Add this maker')
  expect(describedBy(screen.getByRole('group', { name: 'Is it the same maker?' }))).toContain('Say whether')
  expect(device.added).toEqual([])
  choose('Is it the same maker?', /^The same maker as Orrinmoor/)
  await press('Add this maker')
  expect(device.added.map(({ body }) => body)).toEqual([{ name: '0rrin-moor' }])
  expect(wentTo()).toEqual([`/equipment/join?kind=maker&kept=${addedId(1)}&duplicate=${ids.maker}`])
})

test('what was typed before is there again, can be let go of, and is let go of once saved', async () => {
  openAt('/equipment/add-maker')
  const device = fakeDevice({ drafts: { 'add maker': { name: 'Vellamark', note: '', twin: '' } } })
  renderOn(device, <AddMakerScreen />)
  expect(await screen.findByText('This is what you typed here before.')).toBeTruthy()
  expect(screen.getByLabelText<HTMLInputElement>('The maker’s name').value).toBe('Vellamark')
  await press('Start afresh')
  expect(screen.getByLabelText<HTMLInputElement>('The maker’s name').value).toBe('')
  fill('The maker’s name', 'Tolland')
  await press('Add this maker')
  expect(device.added.map(({ body }) => body)).toEqual([{ name: 'Tolland' }])
  expect(device.drafts.size).toBe(0)
})

test('a misspelt name is not added without asking: the one on file is one tap away, and what was typed is let go of', async () => {
  openAt('/equipment/add-maker?model=LF2')
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AddMakerScreen />)
  fill('The maker’s name', 'Orinmoor')
  expect(screen.getByText('Did you mean Orrinmoor?')).toBeDefined()
  await press('Add this maker')
  expect(device.added).toEqual([])
  expect(describedBy(screen.getByRole('checkbox', { name: 'It is another maker' }))).toContain(
    'A name spelt two ways',
  )
  expect(await accessibilityFaults(container)).toEqual([])
  await press('Use Orrinmoor')
  expect(device.added).toEqual([])
  expect(wentTo()).toEqual([`/equipment/add-range?maker=${ids.maker}&model=LF2`])
  expect(device.drafts.size).toBe(0)
})

test('a name near one on file is added once somebody has said that it is another', async () => {
  openAt('/equipment/add-maker')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddMakerScreen />)
  fill('The maker’s name', 'Orrinmere')
  tick('It is another maker')
  await press('Add this maker')
  expect(device.added.map(({ body }) => body)).toEqual([{ name: 'Orrinmere' }])
})
