import { fireEvent, screen, within } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { CallbacksScreen } from '@/app/callbacks/CallbacksScreen'
import type { Role } from '@/lib/records/envelope'
import { manyCases, winter } from '../helper/manyCases'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { choose, select } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: new Date('2024-03-15T12:00:00Z') })
})
afterEach(() => vi.useRealTimers())

const people = new Map([['person-1', 'Ines Talvik']])

/** Cases on one furnace, day after day in December: each but the last came back the next day. */
async function open(cases: number, { query = '', role = 'technician' as Role } = {}) {
  openAt(`/callbacks${query}`)
  const device = fakeDevice({
    records: cases === 0 ? [] : manyCases(winter(2023, cases)),
    me: { id: 'person-9', name: 'Moss Ferrand', role },
    names: people,
  })
  const shown = renderOn(device, <CallbacksScreen />)
  if (cases > 0) await screen.findByRole('article', { name: 'What is shown' }, { timeout: 20_000 })
  return shown
}

const sheet = (name: string) => screen.getByRole('article', { name })
const figure = (name: RegExp) => screen.getByRole('link', { name })
const behind = (name: RegExp) => screen.getByRole('region', { name })
const address = () => `${location.pathname}${location.search}`

describe('CallbacksScreen', () => {
  test('nothing on file: what is counted here, and the way to the first case', async () => {
    await open(0)
    await screen.findByText('No case yet')
    expect(screen.getByRole('link', { name: 'Open the first case' }).getAttribute('href')).toBe('/cases/new')
  })

  test('the team’s own readings come first, then what came back; nothing serious for axe', async () => {
    const { container } = await open(12, { role: 'manager' })
    expect(screen.getAllByRole('article').map((article) => article.querySelector('h2')?.textContent)).toEqual(
      [
        'What is shown',
        'Readings before and after',
        'Jobs that came back, by month',
        'Time to a callback: switch replaced or not',
        'Time to a callback, by fix',
        'Time to a callback, by group of causes',
        'Causes',
        'Fixes',
        'What it cost',
        'People',
        'Not in these figures, or not as it was said',
      ],
    )
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('says how many came back, with the interval, and that so few jobs are few', async () => {
    await open(12)
    // Wilson's interval of 11 in 12 at 95 %: 0.646 to 0.985.
    expect(sheet('Jobs that came back, by month').textContent).toContain(
      'In settled months 11 of 12 jobs came back (92\u00a0%, between 65\u00a0% and 99\u00a0%).',
    )
    expect(sheet('Jobs that came back, by month').textContent).toContain(
      '12 jobs are few: one callback more or less changes these figures a good deal.',
    )
  })

  test('under ten jobs no share is said in per cent', async () => {
    await open(4)
    expect(sheet('Jobs that came back, by month').textContent).toContain(
      '3 of 4 jobs came back (too few to say a share)',
    )
    expect(within(sheet('Causes')).getAllByText('too few to say a share').length).toBeGreaterThan(0)
  })

  test('what counts as a callback is said, and can be changed; the address keeps it', async () => {
    await open(4)
    expect(sheet('What is shown').textContent).toContain(
      'It came back if another case about the proving circuit was opened on the same furnace within 30 days.',
    )
    select('It is a callback within', '7 days')
    choose('Which cases count', 'Anything on the same furnace')
    expect(sheet('What is shown').textContent).toContain(
      'any other case was opened on the same furnace within 7 days',
    )
    choose('Time to a callback in', 'Calendar days')
    expect(sheet('Time to a callback, by fix').textContent).toContain('in calendar days')
    select('Jobs done in', 'The last 12 months')
    expect(address()).toBe('/callbacks?period=12&days=7&circuit=any&scale=calendar')
  })

  test('a link opens what was chosen: months, days and the cases behind a figure', async () => {
    await open(4, { query: '?period=chosen&from=2023-11&to=2023-12&days=45&open=month-2023-12' })
    expect(sheet('What is shown').textContent).toContain('Jobs done from Nov 2023 to Dec 2023')
    expect(sheet('What is shown').textContent).toContain('within 45 days')
    expect(behind(/Jobs of Dec 2023/).textContent).toContain('Came back: 3')
  })

  test('a figure opens the cases behind it, with what they came back as, and closes them again', async () => {
    await open(4)
    fireEvent.click(figure(/^Jobs of settled months: 3 of 4/))
    const cases = behind(/Cases behind “Jobs of settled months”/)
    expect(cases.textContent).toContain('Came back: 3')
    expect(cases.textContent).toContain('Did not come back: 1')
    expect(cases.textContent).toMatch(
      /3 Dec 2023came back \(job ended 3 Dec 2023, back 4 Dec 2023, 1 day\): .*4 Dec 2023/,
    )
    expect(document.activeElement?.textContent).toBe('Jobs of settled months')
    expect(address()).toBe('/callbacks?open=settled')
    fireEvent.click(figure(/^Jobs of settled months/))
    expect(screen.queryByRole('region', { name: /Cases behind/ })).toBeNull()
    expect(address()).toBe('/callbacks')
  })

  test('every mark of a picture opens the cases of its month, and has their address', async () => {
    await open(4)
    const mark = figure(/^Dec 2023, settled: 3 of 4 jobs came back/)
    expect(mark.getAttribute('href')).toBe('/callbacks?open=month-2023-12')
    fireEvent.click(mark)
    expect(behind(/Jobs of Dec 2023/).textContent).toContain('Came back: 3')
    fireEvent.click(figure(/^Dec 2023: 4 of 4 repairs with both readings/))
    expect(behind(/Repairs of Dec 2023/).textContent).toContain('With both readings: 4')
  })

  test('each picture has its table', async () => {
    await open(12)
    for (const [name, table] of [
      ['Readings before and after', 'Repairs with readings, by month'],
      ['Jobs that came back, by month', 'Jobs and callbacks by month'],
      ['Time to a callback, by fix', 'Without a callback'],
    ] as const) {
      const inSheet = within(sheet(name))
      const fold = inSheet.getByText('The picture in figures').closest('details')!
      fold.open = true
      fireEvent(fold, new Event('toggle'))
      expect(inSheet.getByRole('table', { name: table })).toBeTruthy()
    }
  })

  test('beside the curve of swapped switches stands what it does not show', async () => {
    await open(4)
    expect(sheet('Time to a callback: switch replaced or not').textContent).toContain(
      'Furnaces whose switch was swapped differ in other ways; this shows what happened, not what the swap caused.',
    )
  })

  test('people are shown to a manager alone, with the word that chance explains most; of one alone no rate is said', async () => {
    const { unmount } = await open(12)
    expect(screen.queryByRole('article', { name: 'People' })).toBeNull()
    expect(document.body.textContent).not.toContain('Ines Talvik')
    unmount()
    await open(12, { role: 'manager' })
    expect(sheet('People').textContent).toContain('Chance explains most differences between people')
    const row = within(sheet('People')).getByRole('rowheader', { name: 'Ines Talvik' }).closest('tr')!
    expect(row.textContent).toContain('11 of 12')
    expect(sheet('People').textContent).toContain('there is nothing to compare, and no rate is said')
    expect(row.textContent).not.toContain('%')
  })

  test('a mark of a person that a technician is sent opens nothing', async () => {
    await open(4, { query: '?open=person-person-1' })
    expect(screen.queryByRole('region', { name: /Cases behind/ })).toBeNull()
  })

  test('for the paper everything folded away is opened', async () => {
    await open(4)
    expect(screen.queryByRole('table', { name: 'Jobs and callbacks by month' })).toBeNull()
    fireEvent(window, new Event('beforeprint'))
    expect(screen.getByRole('table', { name: 'Jobs and callbacks by month' })).toBeTruthy()
    expect(screen.getByRole('table', { name: 'Minutes by main cause' })).toBeTruthy()
  })

  test('people’s figures stay off paper until a manager asks for them', async () => {
    await open(12, { role: 'manager' })
    const people = () => sheet('People').parentElement!.className
    const printed = screen.getByRole('checkbox', { name: 'Print people’s figures too' })
    expect(printed).toHaveProperty('checked', false)
    expect(people()).toContain('notOnPaper')
    fireEvent.click(printed)
    expect(people()).not.toContain('notOnPaper')
  })
})
