import { render, screen } from '@testing-library/react'
import { afterEach, expect, test, vi } from 'vitest'
import { KeepReaders } from '@/app/preferences/KeepReaders'
import { keepReaders } from '@/lib/device/readers/keepReaders'
import { press } from '../setup/hands'

vi.mock('@/lib/device/readers/keepReaders')
const workerIs = (controller: object | null) =>
  vi.stubGlobal('navigator', { ...navigator, serviceWorker: { controller } })
afterEach(() => void vi.unstubAllGlobals())

test('KeepReaders has the readers fetched, and says that they are kept', async () => {
  workerIs({})
  vi.mocked(keepReaders).mockResolvedValue()
  render(<KeepReaders />)
  await press('Keep the readers on this device')
  expect(screen.getByRole('status').textContent).toBe('They are kept.')
})

test('KeepReaders says why they could not be fetched, or that nothing can be kept here', async () => {
  workerIs({})
  vi.mocked(keepReaders).mockRejectedValue(new Error('its files could not be fetched'))
  render(<KeepReaders />)
  await press('Keep the readers on this device')
  expect(screen.getByRole('alert').textContent).toContain('Try again with a signal')
  workerIs(null)
  vi.mocked(keepReaders).mockClear()
  await press('Keep the readers on this device')
  expect(screen.getByRole('alert').textContent).toContain('Nothing can be kept here')
  expect(keepReaders).not.toHaveBeenCalled()
})
