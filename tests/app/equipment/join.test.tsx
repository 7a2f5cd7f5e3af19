import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { JoinScreen } from '@/app/equipment/JoinScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('two records of one kind are joined, with a reason', async () => {
  openAt('/equipment/join')
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <JoinScreen />)
  choose('What are they?', 'Two parts')
  choose('Which one is kept?', /^OM-7731/)
  choose('Which one is its duplicate?', /^OM-8802/)
  fill('How do you know?', 'Entered twice.')
  await press('Join the two')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'same as',
      body: { kept: ids.oldPart, duplicate: ids.newPart, reason: 'Entered twice.' },
    },
  ])
  expect(wentTo()).toEqual([`/record?id=${ids.oldPart}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a factory part and one that is none are refused, with the rule and what to do instead; nothing typed is lost', async () => {
  openAt(`/equipment/join?kind=part&kept=${ids.oldPart}&duplicate=${ids.generic}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <JoinScreen />)
  fill('How do you know?', 'They look alike.')
  await press('Join the two')
  expect(screen.getByRole('alert').textContent).toContain(
    'One of these parts is a factory part and the other is not.',
  )
  expect(screen.getByRole('link', { name: 'withdraw the duplicate' }).getAttribute('href')).toBe(
    `/withdraw?record=${ids.generic}`,
  )
  expect(screen.getByLabelText<HTMLInputElement>('How do you know?').value).toBe('They look alike.')
  expect(device.added).toEqual([])
})

test('a record joined with itself is refused at the duplicate', async () => {
  openAt(`/equipment/join?kind=maker&kept=${ids.maker}&duplicate=${ids.maker}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <JoinScreen />)
  fill('How do you know?', 'By heart.')
  await press('Join the two')
  expect(describedBy(screen.getByRole('group', { name: 'Which one is its duplicate?' }))).toContain(
    'Choose the other one.',
  )
  expect(device.added).toEqual([])
})
