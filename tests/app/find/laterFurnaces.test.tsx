import { fireEvent, screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { FindScreen } from '@/app/find/FindScreen'
import { someCases } from '../cases/list/someCases'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
vi.mock('@/app/find/TodaysFurnaces', () => {
  throw new TypeError('Failed to fetch dynamically imported module')
})

test('where the furnaces of today cannot be loaded it says so and what to do, and Find works without them', async () => {
  openAt('/')
  renderOn(fakeDevice({ records: someCases }), <FindScreen />)
  const alert = await screen.findByRole('alert')
  expect(alert.textContent).toContain('Today’s furnaces could not be loaded')
  expect(alert.textContent).toContain('Reload when there is a signal')
  const field = screen.getByRole('searchbox')
  fireEvent.change(field, { target: { value: 'LF2-060' } })
  expect(screen.queryByRole('alert')).toBeNull()
  expect(await screen.findByRole('list', { name: 'Results' })).toBeDefined()
})
