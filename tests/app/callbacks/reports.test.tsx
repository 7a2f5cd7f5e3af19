import { screen, within } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { ReportsScreen } from '@/app/callbacks/reports/ReportsScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import {
  aCase,
  at,
  aVisit,
  base,
  combustion,
  ending,
  finding,
  hot,
  ids,
  notice,
  opened,
  reading,
  repair,
  said,
} from '../../records/view/case/team'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { choose } from '../setup/hands'
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
const second = '01940000-0000-7000-8000-000000000701'
const swapped = {
  done: 'Switch replaced',
  switchReplaced: true,
  fittedPart: ids.newPart,
  positionId: ids.low,
}
/** A switch replaced below its make point, that came back for another cause. */
const told: HeldRecord[] = [
  ...opened,
  finding('in-high-wind', 'seen'),
  reading(0.4),
  repair(swapped),
  hot(0.7),
  combustion(),
  ending({ mainCause: 'switch-drifted-or-leaking', how: 'repaired, not proven' }),
  aCase({}, { id: again, at: at(20, '08:00') }),
  aVisit({ caseId: again, on: '2026-01-20' }, { id: second, at: at(20, '09:00') }),
  ending(
    { caseId: again, visitId: second, mainCause: 'trap-plugged', how: 'repaired, not proven' },
    { at: at(20, '13:00') },
  ),
]

const open = async (...records: readonly (HeldRecord | readonly HeldRecord[])[]) => {
  const drawn = renderOn(fakeDevice({ records: [...base, ...records.flat()] }), <ReportsScreen />)
  await screen.findByRole('region', { name: 'Safety events' })
  return drawn
}
const report = (name: string) => screen.getByRole('region', { name })
const row = (name: string, of: string): string =>
  within(report(name)).getByRole('rowheader', { name: of }).closest('tr')!.textContent ?? ''

const all = [
  'Safety events',
  'Switches replaced without justification',
  'Switches replaced while the reading was below make',
  'Cause overturned on repeat',
  'Before and after, and CO, by month',
  'Season and weather',
  'Open rating requests',
  'Rating health by family',
  'Gauge calibration due',
  'Warranty credit denied',
]

test('every report has its definition above it, and says what to do where it has nothing', async () => {
  const { container } = await open()
  expect(screen.getAllByRole('region').map((region) => region.querySelector('h2')?.textContent)).toEqual(all)
  for (const name of all)
    expect(report(name).querySelector('h2 + p')?.textContent?.length, name).toBeGreaterThan(40)
  for (const words of [
    'No safety event in this period',
    'No switch was replaced',
    'None',
    'No cause was overturned',
    'No repair in this period',
    'No case in this period',
    'Nobody is waiting for a rating',
    'No gauge is due',
    'No warranty answer in this period',
  ])
    expect(screen.getByText(words)).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('counts are said with what they are of, and under ten without per cent', async () => {
  const { container } = await open(told, notice())
  expect(row('Safety events', 'Left off and tagged')).toBe('Left off and tagged1')
  expect(row('Switches replaced without justification', 'Something was missing before')).toContain('1 of 1')
  expect(row('Before and after, and CO, by month', 'January 2026')).toBe('January 20261 of 21 of 2')
  expect(row('Season and weather', 'January')).toBe('January2')
  expect(row('Season and weather', 'In high wind')).toBe('In high wind1 of 1')
  expect(row('Rating health by family', 'Orrinmoor Larkfell 2')).toBe('Orrinmoor Larkfell 210001000')
  expect(document.body.textContent).not.toMatch(/\d %/)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a switch replaced below make, and the cause it was overturned for, lead to their cases', async () => {
  await open(told)
  const below = report('Switches replaced while the reading was below make')
  expect(within(below).getByRole('link').getAttribute('href')).toBe(`/case/history?id=${ids.case}`)
  expect(below.textContent).toContain(
    'Came back (job ended 12 Jan 2026, back 20 Jan 2026, 8 days). The cause named then: Trap plugged',
  )
  const overturned = report('Cause overturned on repeat')
  expect(overturned.textContent).toContain('Of 1 callback: another cause 1, the same again 0')
  expect(
    within(overturned)
      .getAllByRole('link')
      .map((link) => link.getAttribute('href')),
  ).toEqual([`/case/history?id=${ids.case}`, `/case/history?id=${again}`, '/callbacks'])
})

test('an open request shows its age, what waits for it, and how often somebody rang', async () => {
  await open(
    said(
      'rating request',
      { positionId: ids.low, furnaceId: ids.furnace, printed: 'nothing', needs: ['house cold'] },
      { at: at(20) },
    ),
  )
  expect(row('Open rating requests', 'Low fire, Orrinmoor Larkfell 2')).toBe(
    'Low fire, Orrinmoor Larkfell 25 days agoMill Row 12, house cold0',
  )
})

test('a longer period takes in what is older', async () => {
  vi.setSystemTime(new Date(at(25 + 500)))
  await open(told, notice())
  expect(report('Safety events').textContent).toContain('No safety event in this period')
  choose('Period', 'Last 24 months')
  await screen.findByRole('rowheader', { name: 'Left off and tagged' })
})

test('a denied credit stands beside the evidence for it, with its sum; a credited one is counted', async () => {
  const swap = repair(swapped)
  const answer = (body: Record<string, unknown>) =>
    said(
      'warranty answer',
      { repairId: swap.id, answeredBy: 'Counter', on: '2026-01-20', ...body },
      { at: at(20) },
    )
  const { container } = await open(
    opened,
    reading(0.4),
    swap,
    hot(0.7),
    answer({
      partReturned: 'OM-7731',
      outcome: 'denied',
      amountMinorUnits: 18450,
      currency: 'USD',
      reasonGiven: 'Worn, they say',
    }),
    answer({ partReturned: 'Hose kit', outcome: 'credited', amountMinorUnits: 900, currency: 'USD' }),
  )
  expect(row('Warranty credit denied', 'Denied')).toBe('Denied1USD 184.50')
  expect(row('Warranty credit denied', 'Credited')).toBe('Credited1USD 9.00')
  expect(row('Warranty credit denied', 'Waiting')).toBe('Waiting0none')
  const denied = within(report('Warranty credit denied')).getByRole('article', { name: 'Mill Row 12' })
  const fact = (name: string) => within(denied).getByText(name).nextElementSibling?.textContent
  expect(fact('Answer')).toBe('Denied, 20 Jan 2026')
  expect(fact('Part that went back')).toBe('OM-7731')
  expect(fact('Reason given')).toBe('Worn, they say')
  expect(fact('Readings before, with the rated points')).toBe('1')
  expect(fact('What the reading said')).toBe('Too low to close it')
  expect(fact('Contact seen open before')).toBe('On record')
  expect(fact('Switch checked off the furnace')).toBe('Not on record')
  expect(fact('Reading after it')).toBe('On record')
  expect(denied.textContent).toContain('Missing that day')
  expect(report('Warranty credit denied').textContent).toContain(
    'Denied, although nothing was missing that a replacement asks for: 0.',
  )
  expect(screen.queryByRole('link', { name: 'Record a warranty answer' })).toBeNull()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what no record holds is said to be missing', async () => {
  await open()
  expect(report('Season and weather').textContent).toContain(
    'Measured wind, snow and temperature are not recorded',
  )
})
