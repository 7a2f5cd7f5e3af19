import { act, screen, waitFor } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { NewAnswers } from '@/app/ask/NewAnswers'
import { SetpointScreen } from '@/app/setpoint/SetpointScreen'
import { dispatcher, fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { equipmentRecords, ids, spokenAnswer } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const request = '01920000-0000-7000-8000-0000000000c1'
const asked = [
  ...equipmentRecords,
  ...held([
    [
      request,
      'rating request',
      { positionId: ids.low, furnaceId: ids.furnace, printed: 'nothing', needs: [] },
    ],
  ]).map((record) => ({ ...record, seq: 60 })),
]
const answered = [
  ...asked,
  ...held([['01920000-0000-7000-8000-0000000000c2', 'report', spokenAnswer(request)]]).map((record) => ({
    ...record,
    author: dispatcher.id,
    seq: 61,
  })),
]
const seen = {
  kind: 'answer seen',
  body: {
    requestId: request,
    reportIds: ['01920000-0000-7000-8000-0000000000c2'],
    personId: technician.id,
    how: 'shown on the screen',
  },
}
let visibility: DocumentVisibilityState
beforeEach(() => {
  visibility = 'visible'
  vi.spyOn(document, 'visibilityState', 'get').mockImplementation(() => visibility)
  vi.useFakeTimers({ toFake: ['Date'], now: Date.parse('2026-02-01T12:00:00.000Z') })
})
afterEach(() => {
  vi.useRealTimers()
})

test('an answered question is said on every page, and leads to its card without showing the number', async () => {
  const { container } = renderOn(fakeDevice({ records: answered }), <NewAnswers />)
  const said = screen.getByRole('status', { name: 'Answers to your questions' })
  expect(said.textContent).toBe('Answered: Low fire: Low fire, Orrinmoor Larkfell 2')
  expect(screen.getByRole('link').getAttribute('href')).toBe(
    `/setpoint?position=${ids.low}&furnace=${ids.furnace}`,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('nothing is said to somebody who did not ask', () => {
  renderOn(fakeDevice({ records: answered, me: dispatcher }), <NewAnswers />)
  expect(screen.getByRole('status').textContent).toBe('')
})

test('the card that stands in sight records once that its answer was seen, and says who answered', async () => {
  openAt(`/setpoint?position=${ids.low}`)
  const device = fakeDevice({ records: answered })
  renderOn(device, <SetpointScreen />)
  await waitFor(() => expect(device.added).toMatchObject([seen]))
  expect(screen.getByText(/^What you asked on/, { exact: false }).textContent).toContain(
    'answered by Bram Osterlo',
  )
  renderOn(device, <NewAnswers />)
  expect(screen.queryByText('Answered:')).toBeNull()
})

test('a card that is not in sight has not been seen; once it comes into sight, it has', async () => {
  visibility = 'hidden'
  openAt(`/setpoint?position=${ids.low}`)
  const device = fakeDevice({ records: answered })
  renderOn(device, <SetpointScreen />)
  await act(async () => {})
  expect(device.added).toEqual([])
  visibility = 'visible'
  await act(async () => {
    document.dispatchEvent(new Event('visibilitychange'))
  })
  expect(device.added).toMatchObject([seen])
})

test('another card, and another person’s question, are no sight of it', async () => {
  openAt(`/setpoint?position=${ids.high}`)
  const device = fakeDevice({ records: answered })
  const { unmount } = renderOn(device, <SetpointScreen />)
  unmount()
  openAt(`/setpoint?position=${ids.low}`)
  const other = fakeDevice({ records: answered, me: { ...dispatcher, id: 'person-9' } })
  renderOn(other, <SetpointScreen />)
  await act(async () => {})
  expect([device.added, other.added]).toEqual([[], []])
})

test('a question that is not answered yet says nothing of an answer', async () => {
  openAt(`/setpoint?position=${ids.low}`)
  renderOn(fakeDevice({ records: asked }), <SetpointScreen />)
  await act(async () => {})
  expect(screen.queryByText('Answered.')).toBeNull()
})
