import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AskScreen } from '@/app/ask/AskScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

test('a question about a switch on file is asked, and leads back to its card', async () => {
  openAt(`/ask?position=${ids.low}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AskScreen />)
  fill('What is printed on the switch', 'nothing')
  await press('Ask')
  expect(device.added).toEqual([
    { id: addedId(1), kind: 'rating request', body: { printed: 'nothing', needs: [], positionId: ids.low } },
  ])
  expect(wentTo()).toEqual([`/setpoint?position=${ids.low}`])
})

test('a question that lacks something says above what, and has the focus on the first of it', async () => {
  openAt('/ask')
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AskScreen />)
  await press('Ask')
  expect(device.added).toEqual([])
  const missing = screen.getByRole('navigation', { name: 'Answers to put right' })
  expect(missing.textContent).toMatch(/^1 answer is missing or not clearWhat is printed on the switch$/)
  expect(document.activeElement).toBe(screen.getByLabelText('What is printed on the switch'))
  expect(await accessibilityFaults(container)).toEqual([])
})
