import { screen, within } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { SwapsScreen } from '@/app/callbacks/swaps/SwapsScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import {
  aCase,
  at,
  aVisit,
  base,
  ending,
  hot,
  ids,
  opened,
  reading,
  repair,
  said,
} from '../../records/view/case/team'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] })
  vi.setSystemTime(new Date(at(25)))
})
afterEach(() => {
  vi.useRealTimers()
})

const again = '01940000-0000-7000-8000-000000000700'
const swapped = {
  done: 'Switch replaced',
  switchReplaced: true,
  fittedPart: ids.newPart,
  positionId: ids.low,
}
const ended = ending({ mainCause: 'switch-drifted-or-leaking', how: 'repaired, not proven' })
const cameBack = [
  aCase({}, { id: again, at: at(20, '08:00') }),
  aVisit(
    { caseId: again, on: '2026-01-20' },
    { id: '01940000-0000-7000-8000-000000000701', at: at(20, '09:00') },
  ),
  ending(
    {
      caseId: again,
      visitId: '01940000-0000-7000-8000-000000000701',
      mainCause: 'trap-plugged',
      how: 'repaired, not proven',
    },
    { at: at(20, '13:00') },
  ),
]

const open = async (...records: readonly (HeldRecord | readonly HeldRecord[])[]) => {
  const drawn = renderOn(fakeDevice({ records: [...base, ...records.flat()] }), <SwapsScreen />)
  await screen.findByRole('heading', { name: 'Swaps that no reading justified' })
  return drawn
}

test('a swap below the make point says so, what was missing, and that it came back with which cause', async () => {
  const { container } = await open(opened, reading(0.4), repair(swapped), hot(0.7), ended, cameBack)
  const sheet = screen.getByRole('article', { name: 'Mill Row 12' })
  expect(within(sheet).getByRole('link', { name: 'Mill Row 12' }).getAttribute('href')).toBe(
    `/case/history?id=${ids.case}`,
  )
  expect(sheet.textContent).toContain('Almost certainly the wrong fix')
  expect(sheet.textContent).toContain('Reading before itToo low to close it')
  expect(sheet.textContent).toContain('Reading after itOn record')
  expect(sheet.textContent).toContain('of what is asked for a switch that will not close')
  expect(
    within(sheet)
      .getAllByRole('listitem')
      .map((item) => item.textContent),
  ).toContain('The reading clears the limit with its tolerance and the gauge’s uncertainty together.')
  expect(sheet.textContent).toContain(
    'Came back (job ended 12 Jan 2026, back 20 Jan 2026, 8 days). The cause named then: Trap plugged',
  )
  expect(within(sheet).getByRole('link', { name: 'The case it came back as' }).getAttribute('href')).toBe(
    `/case/history?id=${again}`,
  )
  expect(document.body.textContent).toContain(
    '1 replacement of a switch on record. Something was missing in 1 case: in 1 of them the reading was too low to close any sound switch, and 1 came back.',
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('nobody is named', async () => {
  await open(opened, reading(0.4), repair(swapped), ended)
  expect(document.body.textContent).not.toContain('Ines Talvik')
  expect(document.body.textContent).toContain('For talking the work over, not for counting people.')
})

test('with no replacement on record it says so and what would be listed', async () => {
  const { container } = await open(opened)
  expect(screen.getByText('No switch was replaced')).toBeTruthy()
  expect(screen.getByText('No unsuitable switch is on record as fitted')).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a replacement outside any case is listed apart with its record', async () => {
  const outside = said(
    'repair',
    { ...swapped, furnaceId: ids.furnace, on: '2026-01-12' },
    { at: at(12, '11:00') },
  )
  await open(outside)
  const apart = screen.getByRole('region', { name: 'Replaced outside any case' })
  expect(within(apart).getByRole('link').getAttribute('href')).toBe(`/record?id=${outside.id}`)
  expect(document.body.textContent).toContain('1 replacement of a switch on record; 1 belongs to no case.')
  // Nothing is known of it, so nobody says that it was justified.
  expect(document.body.textContent).toContain('No replacement can be judged')
  expect(document.body.textContent).not.toContain('justified.')
})

test('an unsuitable switch still fitted leads to its furnace, and says whether that is left off', async () => {
  await open(
    said(
      'found fitted',
      {
        furnaceId: ids.furnace,
        printed: 'ADJ .3-1.2',
        what: 'adjustable or general-purpose switch',
        fittedWhen: 'not known',
        fittedBy: 'us',
        foundOn: '2026-01-12',
      },
      { at: at(12, '09:20') },
    ),
  )
  const list = screen.getByRole('region', { name: /^Unsuitable switches still fitted 1$/ })
  expect(within(list).getByRole('link').getAttribute('href')).toBe(`/furnace?id=${ids.furnace}`)
  expect(list.textContent).toContain('printed ADJ .3-1.2, the furnace is not left off')
})
