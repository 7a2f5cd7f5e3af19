import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AddPositionScreen } from '@/app/equipment/AddPositionScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, select } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('a usual position fills the answers in, each can be changed, and a sister can be named', async () => {
  openAt(`/equipment/add-position?range=${ids.range}`)
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AddPositionScreen />)
  choose('Start from a usual position', /^Middle fire/)
  choose('Kind of switch', /^Two ports/)
  choose('Between which points does its pressure act?', /^Across both ports/)
  select('Its sister', 'High fire')
  await press('Add this position')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'position',
      body: {
        rangeId: ids.range,
        name: 'Middle fire',
        stage: 'middle fire',
        kind: 'two-port',
        between: 'two ports',
        tap: 'collector box',
        sense: 'suction',
        sisterId: ids.high,
      },
    },
  ])
  expect(wentTo()).toEqual([`/equipment/range?id=${ids.range}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('nothing is filled in by itself: every open question is asked at its place', async () => {
  openAt(`/equipment/add-position?range=${ids.range}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPositionScreen />)
  fill('What the position is called', 'Vent')
  await press('Add this position')
  const questions = [
    'Stage',
    'Kind of switch',
    'Between which points does its pressure act?',
    'Where does its hose end?',
    'Suction or positive pressure?',
  ]
  for (const question of questions)
    expect(describedBy(screen.getByRole('group', { name: question }))).toContain('Choose')
  expect(screen.getByLabelText<HTMLInputElement>('What the position is called').value).toBe('Vent')
  expect(device.added).toEqual([])
})

test('without a range in the address the range is asked for', async () => {
  openAt('/equipment/add-position')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPositionScreen />)
  choose('Start from a usual position', /^Blocked drain/)
  await press('Add this position')
  expect(describedBy(screen.getByRole('group', { name: 'Which furnace range?' }))).toContain(
    'Choose the furnace',
  )
  choose('Which furnace range?', /^Orrinmoor Larkfell 2/)
  await press('Add this position')
  expect(device.added.map(({ body }) => body.rangeId)).toEqual([ids.range])
})

test('a position of the same name in the range is pointed out', async () => {
  openAt(`/equipment/add-position?range=${ids.range}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddPositionScreen />)
  choose('Start from a usual position', /^Low fire/)
  await press('Add this position')
  expect(describedBy(screen.getByRole('group', { name: 'Is it the same position?' }))).toContain(
    'Say whether',
  )
  choose('Is it the same position?', /^The same position as Low fire/)
  await press('Add this position')
  expect(wentTo()).toEqual([`/equipment/join?kind=position&kept=${addedId(1)}&duplicate=${ids.low}`])
})
