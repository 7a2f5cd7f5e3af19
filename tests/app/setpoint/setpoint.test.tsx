import { act, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { SetpointScreen } from '@/app/setpoint/SetpointScreen'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, equipmentRecords, ids, pascals } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (records = disputedRecords, query = `position=${ids.low}`) => {
  openAt(`/setpoint?${query}`)
  return act(async () => renderOn(fakeDevice({ records }), <SetpointScreen />))
}

describe('SetpointScreen', () => {
  test('shows no number without its level, its sources and their dates', async () => {
    await open()
    const numbers = screen.getAllByText(/^(Closes|Opens) \((make|break) point\)$/)
    expect(numbers.length).toBeGreaterThan(0)
    for (const number of numbers) {
      const whole = number.parentElement!.parentElement!
      expect(whole.textContent).toMatch(/Verified|Supported|Unverified|In dispute/)
      expect(whole.textContent).toMatch(/\d{1,2} Jan 2026/)
    }
  })

  test('a dispute shows both values with their proof, and leads to settling it', async () => {
    await open()
    expect(screen.getAllByText('In dispute').length).toBeGreaterThanOrEqual(2)
    expect(screen.getByRole('heading', { name: 'What stands against it' })).toBeDefined()
    expect(screen.getAllByText(/Data plate, page 1/).length).toBeGreaterThan(0)
    expect(screen.getAllByText(/ref\. C-91/).length).toBeGreaterThan(0)
    expect(screen.getByRole('link', { name: 'Settle the dispute' }).getAttribute('href')).toBe(
      `/settle?position=${ids.low}&action=closes`,
    )
  })

  test('with no rating on file it says so, asks for one, and names work that needs none', async () => {
    await open(equipmentRecords)
    expect(screen.getByText('No rating is on file for this switch.')).toBeDefined()
    expect(screen.getByRole('link', { name: 'Ask for this rating' })).toBeDefined()
    expect(screen.queryByRole('link', { name: 'Compare a reading' })).toBeNull()
    expect(screen.getByText(/hose off the switch first/)).toBeDefined()
    expect(screen.queryByRole('img')).toBeNull()
  })

  test('says what each source says letter for letter', async () => {
    await open()
    const printed = screen.getByText(/What each source says, letter for letter/).closest('details')!
    expect(within(printed).getByText('-.58 WC CLOSE')).toBeDefined()
  })

  test('names the factory part, and the other switches with ratings of their own', async () => {
    await open()
    expect(screen.getByText('OM-8802')).toBeDefined()
    const others = screen.getByRole('navigation', { name: 'Other switches of this range' })
    expect(within(others).getByRole('link', { name: 'High fire' }).getAttribute('href')).toBe(
      `/setpoint?position=${ids.high}`,
    )
  })

  test('an unsuitable switch that was found is said above every number', async () => {
    const found = held([
      [
        '01920000-0000-7000-8000-00000000fffe',
        'found fitted',
        {
          positionId: ids.low,
          printed: 'GP-ADJ-1',
          what: 'adjustable or general-purpose switch',
          fittedWhen: 'last winter',
          fittedBy: 'us',
          foundOn: '2026-01-09',
        },
      ],
    ]).map((record) => ({ ...record, seq: 99 }))
    await open([...disputedRecords, ...found])
    expect(screen.getByText(/not proven safe until the factory part is back/)).toBeDefined()
  })

  test('a position that is not on this device says so and leads to Find', async () => {
    await open(equipmentRecords, 'position=01920000-0000-7000-8000-00000000dead')
    expect(screen.getByText('This switch position is not on this device')).toBeDefined()
  })

  test('asks for the elevation only where the answer depends on it', async () => {
    const banded = held([
      [
        '01920000-0000-7000-8000-00000000aaa1',
        'report',
        {
          ...disputedRecords.at(-1)!.body,
          pascals: pascals.make,
          source: 'current literature',
          proof: { kind: 'document', name: 'LF2 manual', page: '31' },
          elevationBand: { toMetres: 1372 },
        },
      ],
      [
        '01920000-0000-7000-8000-00000000aaa2',
        'report',
        {
          ...disputedRecords.at(-1)!.body,
          pascals: pascals.other,
          source: 'current literature',
          proof: { kind: 'document', name: 'LF2 manual', page: '31' },
          elevationBand: { fromMetres: 1373 },
        },
      ],
    ]).map((record, index) => ({ ...record, seq: 50 + index }))
    const { unmount } = await open([...equipmentRecords, ...banded])
    expect(screen.getByLabelText('Elevation of the site, in feet')).toBeDefined()
    unmount()
    await open([...equipmentRecords, ...banded], `position=${ids.low}&elevation=2000`)
    expect(screen.queryByLabelText('Elevation of the site, in feet')).toBeNull()
    expect(screen.getByText('0.42')).toBeDefined()
  })
})
