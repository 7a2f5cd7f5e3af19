import { screen, within } from '@testing-library/react'
import { expect, test } from 'vitest'
import { HelperScreen } from '@/app/helper/HelperScreen'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { press } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'
import { caseId, manyCases, winter } from './manyCases'

const open = (told: ReturnType<typeof winter>) =>
  renderOn(fakeDevice({ records: manyCases(told) }), <HelperScreen />)

const recordShown = () => screen.findByRole('article', { name: 'In short' }, { timeout: 20_000 })

test('while it works it says so, and how far it is', async () => {
  open([...winter(2023, 2), ...winter(2024, 4)])
  expect(screen.getByRole('status').textContent).toContain('Going through your team’s cases')
  expect(screen.getByRole('progressbar', { name: 'How far it is' })).toBeTruthy()
  await recordShown()
  expect(screen.queryByRole('status')).toBeNull()
})

test('says how often the true cause came first and among three, and the same of both baselines', async () => {
  open([...winter(2023, 4), ...winter(2024, 6)])
  const short = await recordShown()
  expect(short.textContent).toContain(
    'In the last 6 cases the helper named the true cause first in 6 of 6, and among its first three in 6 of 6.',
  )
  const rowsOf = (table: string) =>
    within(within(short).getByRole('table', { name: table }))
      .getAllByRole('row')
      .slice(1)
  for (const [table, figures] of [
    ['The same cases, three ways', /\d of 6.*\d of 6/],
    ['What it staked on the true cause', /\d\.\d\d.*\d+ %/],
  ] as const) {
    const rows = rowsOf(table)
    expect(rows.map((row) => within(row).getByRole('rowheader').textContent)).toEqual([
      'The helper',
      'The base rates alone',
      'The fixed checklist',
    ])
    for (const row of rows) expect(row.textContent).toMatch(figures)
  }
})

test('under ten cases nothing is said in per cent but the chances it gave, and the number is called small', async () => {
  open([...winter(2023, 2), ...winter(2024, 6)])
  const short = await recordShown()
  expect(short.textContent).toContain(
    '6 cases are few. Every further winter can move these figures a good deal.',
  )
  expect(within(short).getAllByText('too few to say a share')).toHaveLength(6)
})

test('from ten cases on a share is said with its interval', async () => {
  open([...winter(2023, 4), ...winter(2024, 12)])
  const short = await recordShown()
  const helper = within(short).getAllByRole('row')[1]!
  // Wilson's interval of 12 in 12 at 95 %: 0.7575 to 1 (n / (n + z²), z = 1.959964; E. B. Wilson, 1927).
  expect(helper.textContent).toContain('100 %, between 76 % and 100 %')
})

test('a figure opens the cases behind it, counted and not counted, and closes them again', async () => {
  open([...winter(2023, 2), ...winter(2024, 4)])
  await recordShown()
  await press(/^The helper: the true cause first: 4 of 4/)
  const behind = screen.getByRole('region', { name: /Cases behind “The helper: the true cause first/ })
  expect(behind.textContent).toContain('Counted: 4')
  expect(behind.textContent).toContain('Not counted: 0')
  const links = within(behind).getAllByRole('link')
  expect(links.map((link) => link.getAttribute('href'))).toEqual(
    [3, 4, 5, 6].map((nth) => `/case/history?id=${caseId(nth)}`),
  )
  expect(behind.textContent).toContain('Trap plugged. The helper: in place 1')
  await press(/^The helper: the true cause first/)
  expect(screen.queryByRole('region', { name: /Cases behind/ })).toBeNull()
})

test('the picture of how sure it was says in words what its table says', async () => {
  open([...winter(2023, 2), ...winter(2024, 6)])
  await recordShown()
  const sheet = screen.getByRole('article', { name: 'How sure it was, and how often it was right' })
  const said = within(sheet).getByRole('img').getAttribute('aria-label')!
  const rows = within(sheet).getAllByRole('row').slice(1)
  expect(rows.length).toBeGreaterThan(0)
  for (const row of rows) {
    const given = within(row).getByRole('rowheader').textContent
    const figure = within(row).getByRole('button').textContent
    expect(said).toContain(`given ${given}, right in ${figure}`)
  }
})

test('winter by winter, with what was counted and what was left out', async () => {
  open([...winter(2023, 2), ...winter(2024, 2), ...winter(2025, 2)])
  await recordShown()
  const winters = screen.getByRole('article', { name: 'Winter by winter' })
  expect(
    within(winters)
      .getAllByRole('rowheader')
      .map((cell) => cell.textContent),
  ).toEqual(['Winter 2024/25', 'Winter 2025/26'])
  expect(screen.getByRole('article', { name: 'What is counted' }).textContent).toContain(
    '6 of the 6 on this device. Of these, 4 are counted above',
  )
})

test.each([
  [0, 'none is proven of 0'],
  [1, 'one is proven of 1'],
  [3, '3 are proven of 3'],
])('%i cases of one winter are no record yet, and it says what is missing', async (howMany, said) => {
  const { container } = open(winter(2024, howMany))
  await screen.findByText('There is no record yet', {}, { timeout: 20_000 })
  expect(screen.getByText(/at least two winters/).textContent).toContain(said)
  expect(screen.getByRole('link', { name: /Open the cases/ }).getAttribute('href')).toBe('/cases')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('it is without faults that axe can find, its opened cases too', async () => {
  const { container } = open([...winter(2023, 2), ...winter(2024, 4)])
  await recordShown()
  await press(/^The helper: the true cause among the first three/)
  expect(await accessibilityFaults(container)).toEqual([])
})
