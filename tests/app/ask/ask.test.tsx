import { screen, waitFor } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AskScreen } from '@/app/ask/AskScreen'
import { PhoneDeskScreen } from '@/app/phoneDesk/PhoneDeskScreen'
import { addedId, dispatcher, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { fill, press, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids } from '../setup/smallFile'
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

const first = '01920000-0000-7000-8000-0000000000c1'
const askedBefore = (body: Record<string, unknown>) => [
  ...equipmentRecords,
  ...held([[first, 'rating request', { printed: 'nothing', needs: [], ...body }]]).map((record) => ({
    ...record,
    seq: 60,
  })),
]

test('who asks what somebody asks already is told so, and is added to that question', async () => {
  openAt(`/ask?position=${ids.low}&furnace=${ids.furnace}`)
  const device = fakeDevice({ records: askedBefore({ positionId: ids.low }), me: dispatcher })
  renderOn(device, <AskScreen />)
  expect(screen.getByText(/^Ines Talvik asked this already/).textContent).toMatch(
    /you are added to that question/,
  )
  tick('No other heat')
  await press('Ask too')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'asks too',
      body: {
        requestId: first,
        furnaceId: ids.furnace,
        model: 'LF2-080-B',
        serial: 'S2204-118',
        needs: ['no other heat'],
      },
    },
  ])
})

test('a model that looks alike joins; one that is only near does not', async () => {
  openAt('/ask')
  renderOn(
    fakeDevice({ records: askedBefore({ model: 'TN4-0815', positionName: 'Low fire' }) }),
    <AskScreen />,
  )
  fill('Model number, as the data plate prints it', 'tn4 o8i5')
  fill('Which switch? For instance low fire', 'low fire')
  await waitFor(() => screen.getByRole('button', { name: 'Ask too' }))
  fill('Model number, as the data plate prints it', 'TN4-0915')
  await waitFor(() => screen.getByRole('button', { name: 'Ask' }))
})

test('near matches are listed by what differs, with no number', async () => {
  openAt(`/ask?position=${ids.high}`)
  const { container } = renderOn(fakeDevice({ records: disputedRecords }), <AskScreen />)
  const near = screen.getByRole('article', { name: 'Near it on file' })
  expect(near.textContent).toContain('Low fire, Orrinmoor Larkfell 2')
  expect(near.textContent).toContain('differs in stage (low fire)')
  expect(near.textContent).not.toMatch(/0?\.\d|in\. w\.c\./)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a question asked without a signal shows the line to read out over a landline', async () => {
  openAt('/ask?model=TN4-08')
  const device = fakeDevice({ records: equipmentRecords })
  const { unmount } = renderOn(device, <AskScreen />)
  fill('What is printed on the switch', 'nothing')
  tick('Infants in the house')
  await press('Ask')
  unmount()
  renderOn(device, <PhoneDeskScreen />)
  expect(document.body.textContent).toContain(
    'Rating wanted for: TN4-08. Model T N four dash zero eight. Printed on the switch: nothing. Why now: infants.',
  )
})
