import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { PhoneDeskScreen } from '@/app/phoneDesk/PhoneDeskScreen'
import { dispatcher, fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, equipmentRecords, ids, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const manager = { ...dispatcher, role: 'manager' } as const
const open = (me: typeof dispatcher, records = disputedRecords) => {
  openAt('/phone-desk')
  return renderOn(fakeDevice({ records, me }), <PhoneDeskScreen />)
}

test.each([dispatcher, manager])(
  '$role: every dispute stands on the desk with both values, their standing, since when, and the way to settle it',
  async (me) => {
    const { container } = open(me)
    const section = screen.getByRole('region', { name: 'In dispute' })
    const sheet = within(section).getByRole('article', { name: 'Low fire, Orrinmoor Larkfell 2' })
    expect(sheet.textContent).toContain('Closes (make\u00a0point) · in dispute since 6 Jan 2026')
    for (const [value, source] of [
      ['0.58 in. w.c.', 'Data plate on the unit, Data plate, page 1, 5 Jan 2026'],
      ['0.42 in. w.c.', 'ref. C-91, 6 Jan 2026'],
    ]) {
      expect(sheet.textContent).toContain(value)
      expect(sheet.textContent).toContain(source)
    }
    expect(sheet.textContent!.match(/In dispute \d/g)).toHaveLength(2)
    expect(within(sheet).getByRole('link', { name: 'Settle the dispute' }).getAttribute('href')).toBe(
      `/settle?position=${ids.low}&action=closes`,
    )
    expect(await accessibilityFaults(container)).toEqual([])
  },
)

test('each dispute says what would settle it, or that it is on file already, and that nobody condemns on it meanwhile', () => {
  const { unmount } = open(dispatcher)
  const sheet = () => screen.getByRole('article', { name: 'Low fire, Orrinmoor Larkfell 2' })
  expect(sheet().textContent).toContain('Nothing on file can settle it yet.')
  expect(sheet().textContent).toContain('Until then nobody is advised to condemn a switch on it.')
  expect(
    within(sheet()).getByRole('link', { name: 'Ask for what would settle it' }).getAttribute('href'),
  ).toBe(`/ask?position=${ids.low}`)
  unmount()
  open(dispatcher, settleableRecords)
  expect(sheet().textContent).toContain('A report on file can settle it.')
})

test('with nothing in dispute it says what that means', () => {
  open(dispatcher, equipmentRecords)
  const section = screen.getByRole('region', { name: 'In dispute' })
  expect(section.textContent).toContain('No rating is in dispute')
  expect(section.textContent).toContain(
    'No two proven sources on file name different numbers for one switch.',
  )
})

test('a technician, who cannot settle it, has the requests alone', () => {
  open(technician)
  expect(screen.queryByRole('region', { name: 'In dispute' })).toBeNull()
})
