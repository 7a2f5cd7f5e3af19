import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { FurnaceScreen } from '@/app/furnace/FurnaceScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { fullNotice, of, type Row, recordsOf } from '../cases/end/provenCase'
import { beforeRows, cases, endedProvenRows, someCases } from '../cases/list/someCases'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { disputedRecords, equipmentRecords, ids, spokenAnswer } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const found = '01920000-0000-7000-8000-0000000000aa'
const repair = '01920000-0000-7000-8000-0000000000ab'
const later = (records: readonly Parameters<typeof held>[0][number][]): HeldRecord[] =>
  held(records).map((record, index) => ({ ...record, seq: 40 + index }))

const foundFitted = {
  furnaceId: ids.furnace,
  positionId: ids.low,
  printed: 'GP-ADJ-1',
  what: 'adjustable or general-purpose switch',
  fittedWhen: 'December 2024',
  fittedBy: 'us',
  foundOn: '2026-01-09',
}

test('a furnace shows its facts letter for letter, and a setpoint card for every switch of its range', async () => {
  openAt(`/furnace?id=${ids.furnace}`)
  const { container } = renderOn(fakeDevice({ records: equipmentRecords }), <FurnaceScreen />)
  const facts = screen.getByRole('article', { name: 'The furnace' })
  expect(facts.textContent).toContain('S2204-118')
  expect(facts.textContent).toContain('4,800 ft (1,463 m)')
  expect(facts.textContent).toContain('Revisionnot on record')
  expect(screen.getByRole('article', { name: 'Low fire, Orrinmoor Larkfell 2' })).toBeTruthy()
  const high = screen.getByRole('article', { name: 'High fire, Orrinmoor Larkfell 2' })
  expect(within(high).getByRole('link', { name: 'Add a report' }).getAttribute('href')).toBe(
    `/report?position=${ids.high}&furnace=${ids.furnace}`,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what was found fitted stands above everything, with what to do and that it is not proven safe', () => {
  const records = [...equipmentRecords, ...later([[found, 'found fitted', foundFitted]])]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  const text = document.body.textContent ?? ''
  expect(text).toContain('Fitted December 2024, by us.')
  expect(text.indexOf('Gas and power off, if that is safe.')).toBeGreaterThan(0)
  expect(text.indexOf('Gas and power off, if that is safe.')).toBeLessThan(
    text.indexOf('Low fire, Orrinmoor'),
  )
  expect(text).toContain('The furnace is not proven safe until the factory part is back.')
})

test('a furnace of the same range gets no warning from what was found in another', () => {
  const records = [
    ...equipmentRecords,
    ...later([[found, 'found fitted', { ...foundFitted, furnaceId: ids.bareFurnace }]]),
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.queryByText(/Found fitted/)).toBeNull()
})

test.each([
  ['the factory part of that position, afterwards', { fittedPart: ids.newPart, on: '2026-01-13' }, true],
  ['the factory part of the sister position', { fittedPart: ids.highPart, on: '2026-01-13' }, false],
  ['the factory part, before it was found', { fittedPart: ids.newPart, on: '2026-01-08' }, false],
  ['no part', { on: '2026-01-13' }, false],
])('a repair with %s', (_, body, isBack) => {
  const done = { furnaceId: ids.furnace, positionId: ids.low, done: 'Factory switch fitted', ...body }
  const records = [
    ...equipmentRecords,
    ...later([
      [found, 'found fitted', foundFitted],
      [repair, 'repair', done],
    ]),
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.queryAllByText(/That is proven only by readings taken afterwards/).length > 0).toBe(isBack)
  expect(screen.queryAllByText('Gas and power off, if that is safe.').length > 0).toBe(!isBack)
  const repairs = screen.getByRole('article', { name: 'Repairs' })
  expect(within(repairs).getByRole('link', { name: 'Factory switch fitted' })).toBeTruthy()
  expect(repairs.textContent).toContain('Ines Talvik')
})

test('a furnace without a range gets no setpoint, but the ranges whose patterns stand for its model', () => {
  openAt(`/furnace?id=${ids.bareFurnace}`)
  renderOn(fakeDevice({ records: disputedRecords }), <FurnaceScreen />)
  const question = screen.getByRole('article', { name: 'Which furnace range is it of?' })
  expect(within(question).getByRole('link', { name: 'Low fire' }).getAttribute('href')).toBe(
    `/setpoint?position=${ids.low}&furnace=${ids.bareFurnace}`,
  )
  expect(screen.queryByText(/make point/)).toBeNull()
})

test('while it is left off that stands above everything: since when, by whom, why, until what, and the notice', async () => {
  const notice: Row = [of.notice, 'shut-down notice', { ...fullNotice }, '2026-01-12T17:00:00.000Z']
  openAt(`/furnace?id=${ids.furnace}`)
  const { container } = renderOn(
    fakeDevice({ records: recordsOf([...endedProvenRows, notice]) }),
    <FurnaceScreen />,
  )
  const banner = screen.getByRole('region', { name: 'Left off' })
  expect(banner.textContent).toContain(
    'Left off 12 Jan 2026 by Ines Talvik, because: The heat exchanger is cracked.',
  )
  expect(banner.textContent).toContain('Do not relight until: the heat exchanger is replaced')
  expect(within(banner).getByRole('link').getAttribute('href')).toBe(`/notice?id=${of.notice}`)
  expect(banner.compareDocumentPosition(screen.getByRole('article', { name: 'The furnace' }))).toBe(
    Node.DOCUMENT_POSITION_FOLLOWING,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a visit that left it off without a notice has a banner too, with the way to write the notice', async () => {
  const rows = endedProvenRows.map(
    (row): Row =>
      row[1] === 'ending'
        ? [row[0], row[1], { caseId: row[2].caseId, visitId: row[2].visitId, how: 'left off' }, row[3]]
        : row,
  )
  const ended = rows.find(([, kind]) => kind === 'ending')![2]
  openAt(`/furnace?id=${ids.furnace}`)
  const { container } = renderOn(fakeDevice({ records: recordsOf(rows) }), <FurnaceScreen />)
  const banner = screen.getByRole('region', { name: 'Left off' })
  expect(banner.textContent).toContain('by Ines Talvik, and no shut-down notice says why.')
  expect(banner.textContent).toContain('Do not relight until the notice is written and lifted.')
  expect(within(banner).getByRole('link', { name: 'Write the shut-down notice' }).getAttribute('href')).toBe(
    `/case/shut-down?furnace=${ids.furnace}&case=${ended.caseId}&visit=${ended.visitId}`,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a notice that was lifted leaves no banner', () => {
  const rows: Row[] = [
    [of.notice, 'shut-down notice', { ...fullNotice }],
    [of.lifting, 'lifting', { noticeId: of.notice, on: '2026-01-14', because: 'Heat exchanger replaced' }],
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records: recordsOf(rows) }), <FurnaceScreen />)
  expect(screen.queryByRole('region', { name: 'Left off' })).toBeNull()
})

test('its cases are listed, the newest first, with standing and cause, and none of another furnace', () => {
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records: someCases }), <FurnaceScreen />)
  const past = screen.getByRole('article', { name: 'Cases' })
  expect(
    within(past)
      .getAllByRole('link')
      .map((link) => link.getAttribute('href')),
  ).toEqual([`/case?id=${cases.proven}`, `/case/history?id=${cases.before}`, `/case?id=${cases.before}`])
  expect(past.textContent).toContain('Repaired and proven.')
  expect(past.textContent).toContain('Cause, presumed: Vent end blocked.')
})

test('a baseline shows its value in both units, its stage, phase, day, occasion and person, and leads to its record', () => {
  const baseline: Row = [
    of.more,
    'baseline',
    { furnaceId: ids.furnace, readingId: of.lowAfter, occasion: 'after a proven repair', on: '2026-01-12' },
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records: recordsOf([...endedProvenRows, baseline]) }), <FurnaceScreen />)
  const row = within(screen.getByRole('article', { name: 'Baselines' })).getAllByRole('row')[1]!
  expect(row.textContent).toContain('0.92 in. w.c. 229 Pa')
  expect(row.textContent).toContain('Low fire, low fire')
  expect(row.textContent).toContain('steady hot, contact closed')
  expect(row.textContent).toContain('Ines Talvik')
  expect(
    within(row).getByRole('link', { name: '12 Jan 2026, after a proven repair' }).getAttribute('href'),
  ).toBe(`/record?id=${of.more}`)
})

test('a baseline whose reading was withdrawn is no baseline any more', () => {
  const rows: Row[] = [
    ...endedProvenRows,
    [
      of.more,
      'baseline',
      { furnaceId: ids.furnace, readingId: of.lowAfter, occasion: 'annual service', on: '2026-01-12' },
    ],
    [found, 'withdrawal', { record: of.lowAfter, reason: 'Hose was off its port' }],
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records: recordsOf(rows) }), <FurnaceScreen />)
  expect(screen.getByText('No baseline is on record')).toBeTruthy()
})

test('what was asked for at this furnace and is not answered is listed; what was asked elsewhere is not', () => {
  const ask = (id: string, furnaceId: string): Row => [
    id,
    'rating request',
    { furnaceId, positionId: ids.high, printed: 'nothing', needs: [] },
  ]
  openAt(`/furnace?id=${ids.furnace}`)
  const records = recordsOf([ask(found, ids.furnace), ask(repair, ids.bareFurnace)])
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  const asked = screen.getByRole('article', { name: 'Ratings asked for here' })
  expect(
    within(asked)
      .getAllByRole('heading', { level: 3 })
      .map((each) => each.textContent),
  ).toEqual(['Not answered yet'])
  expect(within(asked).getAllByRole('listitem')).toHaveLength(1)
  expect(
    within(asked)
      .getByRole('link', { name: /^High fire/ })
      .getAttribute('href'),
  ).toBe(`/record?id=${found}`)
})

test('what was asked for at this furnace and is answered stays, and leads to its card', () => {
  openAt(`/furnace?id=${ids.furnace}`)
  const records = recordsOf([
    [found, 'rating request', { furnaceId: ids.furnace, positionId: ids.low, printed: 'nothing', needs: [] }],
    [repair, 'report', spokenAnswer(found)],
  ])
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  const asked = screen.getByRole('article', { name: 'Ratings asked for here' })
  expect(within(asked).getByRole('heading', { level: 3 }).textContent).toBe('Answered')
  expect(
    within(asked)
      .getByRole('link', { name: /^Low fire/ })
      .getAttribute('href'),
  ).toBe(`/setpoint?position=${ids.low}&furnace=${ids.furnace}`)
})

test('a case and a baseline are begun from here', () => {
  openAt(`/furnace?id=${ids.furnace}`)
  renderOn(fakeDevice({ records: equipmentRecords }), <FurnaceScreen />)
  const facts = within(screen.getByRole('article', { name: 'The furnace' }))
  expect(facts.getByRole('link', { name: 'New case' }).getAttribute('href')).toBe(
    `/cases/new?furnace=${ids.furnace}`,
  )
  expect(facts.getByRole('link', { name: 'Record a baseline' }).getAttribute('href')).toBe(
    `/furnace/baseline?id=${ids.furnace}`,
  )
})

test('a replaced furnace and the one in its place lead to each other, and each has its own cases', () => {
  const newer: Row = [
    found,
    'furnace',
    { siteLabel: 'Mill Row 12', model: 'LF2-080-C', fuel: 'not stated', replaces: ids.furnace },
  ]
  const records = recordsOf([...beforeRows, newer])
  openAt(`/furnace?id=${ids.furnace}`)
  const { unmount } = renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.getByRole('link', { name: 'Mill Row 12: LF2-080-C' }).getAttribute('href')).toBe(
    `/furnace?id=${found}`,
  )
  expect(within(screen.getByRole('article', { name: 'Cases' })).getAllByRole('listitem')).toHaveLength(1)
  unmount()
  openAt(`/furnace?id=${found}`)
  renderOn(fakeDevice({ records }), <FurnaceScreen />)
  expect(screen.getByRole('link', { name: /^Mill Row 12: LF2-080-B/ }).getAttribute('href')).toBe(
    `/furnace?id=${ids.furnace}`,
  )
  expect(screen.getByText('No case is on record')).toBeTruthy()
})

test('a furnace that is not on this device is said to be missing', () => {
  openAt('/furnace')
  renderOn(fakeDevice(), <FurnaceScreen />)
  expect(screen.getByText('This furnace is not on this device')).toBeTruthy()
})
