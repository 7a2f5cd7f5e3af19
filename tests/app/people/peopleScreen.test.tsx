import { fireEvent, screen, waitFor, within } from '@testing-library/react'
import { beforeEach, expect, test, vi } from 'vitest'
import { PeopleScreen } from '@/app/people/PeopleScreen'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { fill, press } from '../setup/hands'

const people = [
  { id: 'p1', name: 'Ines Talvik', role: 'technician', active: true },
  { id: 'p9', name: 'Mara Otell', role: 'manager', active: true },
]
let undecided = 0
let answer: unknown = {}

beforeEach(() => {
  undecided = 0
  vi.stubGlobal('fetch', async (path: string, sent?: RequestInit) =>
    Response.json(
      sent?.method === 'POST'
        ? answer
        : {
            ok: true,
            value: path === '/api/people' ? people : { devices: [], endings: [], build: 'b1', undecided },
          },
    ),
  )
  return () => vi.unstubAllGlobals()
})

const open = async () => {
  renderOn(fakeDevice({ me: { id: 'p9', name: 'Mara Otell', role: 'manager' } }), <PeopleScreen />)
  await screen.findByRole('article', { name: 'Ines Talvik' })
}
const focused = () => document.activeElement as HTMLElement

test('a refused invitation says so below its form, and leads there', async () => {
  await open()
  answer = { ok: false, problem: { code: 'name-taken', message: 'Somebody here has this name.' } }
  fill('Name, as the team will see it', 'Ines Talvik')
  await press('Make the invitation')
  const alert = await screen.findByText('Somebody here has this name.')
  expect(focused().contains(alert)).toBe(true)
  expect(focused().previousElementSibling?.tagName).toBe('FORM')
})

test('an invitation that was made shows its link below its form, and leads there', async () => {
  await open()
  answer = { ok: true, value: { link: 'https://team.example/join#x', expiresAt: '2026-02-01T08:00:00.000Z' } }
  fill('Name, as the team will see it', 'Jonas Merrill')
  await press('Make the invitation')
  const link = await screen.findByRole('article', { name: /^Invitation for Jonas Merrill, good until 1 Feb/ })
  expect(within(link).getByRole('textbox', { name: 'One-time link' })).toBeTruthy()
  expect(focused().contains(link)).toBe(true)
  expect(focused().previousElementSibling?.tagName).toBe('FORM')
})

test('what is done to a person is answered at that person, a second time as well', async () => {
  await open()
  const sheet = screen.getByRole('article', { name: 'Ines Talvik' })
  for (const message of ['Not now.', 'Still not now.']) {
    answer = { ok: false, problem: { code: 'no', message } }
    fireEvent.click(within(sheet).getByRole('button', { name: 'Take off the team' }))
    await waitFor(() => expect(focused().textContent).toBe(message))
    expect(focused().previousElementSibling).toBe(sheet)
  }
})

test.each([
  [1, '1 record is set aside from ended devices, and waits for a manager.'],
  [2, '2 records are set aside from ended devices, and wait for a manager.'],
])('%i set aside: the sentence holds together', async (count, words) => {
  undecided = count
  await open()
  expect((await screen.findByText(/for a manager\./)).textContent).toBe(words)
})
