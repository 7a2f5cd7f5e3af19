import { screen } from '@testing-library/react'
import { beforeEach, expect, test, vi } from 'vitest'
import { WholeFile } from '@/app/device/WholeFile'
import type { DeviceState } from '@/lib/device/device'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
beforeEach(() => openAt('/setpoint?position=p'))

const deviceIn = (state: Partial<DeviceState>) => {
  const device = fakeDevice()
  return { ...device, state: () => seen(device.state(), state) }
}
const memo = new WeakMap<DeviceState, DeviceState>()
const seen = (whole: DeviceState, part: Partial<DeviceState>): DeviceState => {
  if (!memo.has(whole)) memo.set(whole, { ...whole, ...part })
  return memo.get(whole)!
}
const page = (state: Partial<DeviceState>) =>
  renderOn(
    deviceIn(state),
    <WholeFile>
      <p>0.72 Supported</p>
    </WholeFile>,
  )

test('a team file that has not come whole yet shows none of its numbers, and says how far it is', () => {
  page({ freshAt: undefined, arrived: 3000 })
  expect(screen.queryByText('0.72 Supported')).toBeNull()
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('Fetching the team file …')
  expect(screen.getByRole('status').textContent).toContain('3000 records of it are here.')
})

test('where the signal drops in the middle it stays away, and says that it goes on by itself', () => {
  page({
    freshAt: undefined,
    arrived: 3000,
    trouble: { ok: false, why: 'no signal', message: 'No signal.' },
  })
  expect(screen.queryByText('0.72 Supported')).toBeNull()
  expect(screen.getByRole('status').textContent).toContain('It goes on by itself')
  expect(screen.getByRole('link', { name: 'The danger sheet' })).toBeTruthy()
})

test('a file that came whole once is shown, however old it is', () => {
  page({ freshAt: '2025-12-01T08:00:00.000Z' })
  expect(screen.getByText('0.72 Supported')).toBeTruthy()
})

test('a file without contact for weeks is out of sight, and it says where to sign in and what can be done without', () => {
  page({ locked: true })
  expect(screen.queryByText('0.72 Supported')).toBeNull()
  expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('The team file is out of sight')
  expect(screen.getByRole('status').textContent).toContain('more than 45 days')
  expect(screen.getByRole('link', { name: 'Sign in' }).getAttribute('href')).toBe('/sign-in')
  const offered = screen.getAllByRole('link').map((link) => link.getAttribute('href'))
  expect(offered).toEqual(['/sign-in', '/cases/new', '/ask', '/report', '/danger'])
})

test.each(['/ask', '/cases/new', '/report', '/waiting'])(
  'then %s stays open: recording asks for no sign-in',
  (path) => {
    openAt(path)
    page({ locked: true })
    expect(screen.getByText('0.72 Supported')).toBeTruthy()
  },
)
