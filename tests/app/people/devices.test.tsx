import { render, screen } from '@testing-library/react'
import { beforeEach, expect, test, vi } from 'vitest'
import { DevicesOf } from '@/app/people/DevicesOf'
import { press } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

const device = {
  id: '7f3a11aa-0000-4000-8000-000000000000',
  personId: 'p1',
  signedIn: true,
  firstContactAt: '2026-01-02T08:00:00.000Z',
  lastContactAt: '2026-02-01T08:00:00.000Z',
  examinedSeq: 9,
  waiting: 4,
  build: 'b1',
}
const ending = {
  device: device.id,
  personId: 'p1',
  endedAt: '2026-02-01T09:00:00.000Z',
  endedBy: 'p9',
  emptiedAt: null,
  picturesLost: 0,
}
const after = vi.fn(async () => {})
const list = (more: Partial<Parameters<typeof DevicesOf>[0]> = {}) =>
  render(
    <DevicesOf
      {...{ name: 'Ines Talvik', maySignIn: true, devices: [device], endings: [], build: 'b1', after }}
      nameOf={() => 'Mara Otell'}
      now="2026-02-01T10:00:00.000Z"
      {...more}
    />,
  )
const asked = vi.fn(async (..._: Parameters<typeof fetch>) => Response.json({ ok: true, value: true }))
beforeEach(() => {
  after.mockClear()
  asked.mockClear()
  vi.stubGlobal('fetch', asked)
  return () => vi.unstubAllGlobals()
})

test('a device says when it was last in contact, what waited there, and whether it runs an older version', async () => {
  list({ build: 'b2' })
  const said = screen.getByRole('list', { name: 'Devices of Ines Talvik' }).textContent
  expect(said).toContain('Device 7f3a')
  expect(said).toContain('Last contact 2 h ago; 4 records waited there then; it runs an older version.')
  expect(await accessibilityFaults(document.body)).toEqual([])
})

test('ending a device says first what becomes of what waits there, and asks once more', async () => {
  list()
  await press('End this device')
  expect(screen.getByRole('alert').textContent).toContain('What waits there comes to the managers first')
  expect(asked).not.toHaveBeenCalled()
  await press('Leave it')
  await press('End this device')
  await press('End it')
  const [path, sent] = asked.mock.calls[0]!
  expect([path, JSON.parse(String(sent?.body))]).toEqual([
    '/api/devices/end',
    { device: device.id, personId: 'p1' },
  ])
  expect(after).toHaveBeenCalledWith(expect.objectContaining({ ok: true }), 'Ines Talvik’s device is ended')
})

test('an ended device says by whom and what happens next, and later that it was emptied', () => {
  const { unmount } = list({ endings: [ending] })
  expect(document.body.textContent).toContain('Ended by Mara Otell')
  expect(document.body.textContent).toContain('At its next contact')
  expect(document.body.textContent).toContain('also while somebody else is signed in there')
  expect(screen.queryByRole('button')).toBeNull()
  unmount()
  list({
    devices: [{ ...device, signedIn: false }],
    endings: [{ ...ending, emptiedAt: '2026-02-03T09:00:00.000Z' }],
  })
  expect(document.body.textContent).toContain('it was emptied on')
})

test('what a browser can’t hand over for somebody else waits for its person, or stays there where that person can’t sign in', () => {
  const { unmount } = list({ endings: [ending] })
  expect(document.body.textContent).toContain('does it once Ines Talvik signs in there.')
  unmount()
  list({ endings: [ending], maySignIn: false })
  expect(document.body.textContent).not.toContain('does it once')
  expect(document.body.textContent).toContain('keeps it, because Ines Talvik can’t sign in any more')
  expect(document.body.textContent).toContain('Take Ines Talvik back until they have signed in there once')
  expect(document.body.textContent).toContain('then what waits there is lost')
})

test('somebody without a device is said to have none', () => {
  list({ devices: [] })
  expect(document.body.textContent).toBe('Ines Talvik has not signed in on any device yet.')
})

test('pictures that could not be handed over are said to be lost', () => {
  const { unmount } = list({ endings: [{ ...ending, picturesLost: 2 }] })
  expect(document.body.textContent).toContain('2 pictures there were damaged and could not be handed over')
  unmount()
  list({ endings: [ending] })
  expect(document.body.textContent).not.toContain('damaged')
})
