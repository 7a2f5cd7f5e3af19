import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { SupersededScreen } from '@/app/equipment/SupersededScreen'
import { addedId, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('a supersession is recorded with its setting, the kit, where it is stated and since when', async () => {
  openAt(`/equipment/superseded?old=${ids.oldPart}`)
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <SupersededScreen />)
  choose('New part number', /^OM-8802/)
  choose('Its setting', /^Not stated/)
  tick('The new number is a kit')
  fill('Where it is stated', 'Kit sheet 44')
  fill('Since when, if it is stated', '2025-03-01')
  await press('Record the supersession')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'supersession',
      body: {
        oldPartId: ids.oldPart,
        newPartId: ids.newPart,
        setting: 'not stated',
        kit: true,
        statedIn: 'Kit sheet 44',
        on: '2025-03-01',
      },
    },
  ])
  expect(wentTo()).toEqual(['/equipment'])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a general-purpose switch for a factory part is refused, with the rule, why, and what to do instead', async () => {
  openAt(`/equipment/superseded?old=${ids.oldPart}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <SupersededScreen />)
  const newNumbers = within(screen.getByRole('group', { name: 'New part number' }))
  expect(newNumbers.queryByRole('radio', { name: /^GP-ADJ-1/ })).toBeNull()
  fill('New part number: look for it by any part of the number', 'GP-ADJ-1')
  choose('New part number', /^GP-ADJ-1/)
  choose('Its setting', /^Stated as the same/)
  fill('Where it is stated', 'A seller’s page')
  await press('Record the supersession')
  const refusal = screen.getByRole('alert')
  expect(refusal.textContent).toContain('no general-purpose switch')
  expect(refusal.textContent).toContain('Ask the maker which number is current')
  expect(screen.getByRole('link', { name: /Record it as found fitted/ })).toBeTruthy()
  expect(screen.getByLabelText<HTMLInputElement>('Where it is stated').value).toBe('A seller’s page')
  expect(device.added).toEqual([])
})

test('a part that replaces itself is refused at the new number, and what is open is asked', async () => {
  openAt(`/equipment/superseded?old=${ids.oldPart}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <SupersededScreen />)
  await press('Record the supersession')
  expect(describedBy(screen.getByRole('group', { name: 'Its setting' }))).toContain('not stated')
  choose('New part number', /^OM-7731/)
  choose('Its setting', /^Not stated/)
  fill('Where it is stated', 'Kit sheet 44')
  await press('Record the supersession')
  expect(describedBy(screen.getByRole('group', { name: 'New part number' }))).toContain(
    'cannot replace itself',
  )
  expect(device.added).toEqual([])
})

test('the opposite of what is on file is pointed out', () => {
  const statement = {
    oldPartId: ids.newPart,
    newPartId: ids.oldPart,
    setting: 'same',
    kit: false,
    statedIn: 'x',
  }
  const records = [
    ...equipmentRecords,
    ...held([['01920000-0000-7000-8000-0000000000aa', 'supersession', statement]]).map((record) => ({
      ...record,
      seq: 99,
    })),
  ]
  openAt(`/equipment/superseded?old=${ids.oldPart}`)
  renderOn(fakeDevice({ records }), <SupersededScreen />)
  choose('New part number', /^OM-8802/)
  expect(screen.getByRole('status').textContent).toContain('The opposite is on file')
})
