import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { HistoryScreen } from '@/app/cases/history/HistoryScreen'
import { dayWords, momentWords, onTheClock } from '@/app/cases/history/momentWords'
import { fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt } from '../../setup/fakeNavigation'
import { ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import {
  at,
  changed,
  fullNotice,
  inches,
  of,
  ofFurnace,
  ofVisit,
  provenEnding,
  provenRows,
  type Row,
  reading,
  recordsOf,
  without,
} from '../end/provenCase'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const ended: Row[] = [...provenRows, [of.ending, 'ending', provenEnding, at('16:45')]]

const open = (rows: readonly Row[] = ended) => {
  openAt(`/case/history?id=${of.case}`)
  return renderOn(fakeDevice({ records: recordsOf(rows) }), <HistoryScreen />)
}
const page = () => document.body.textContent ?? ''
/** The line of the timeline that holds these words. */
const lineWith = (words: string | RegExp): HTMLElement => {
  const line = screen
    .getAllByRole('listitem')
    .find(
      (item) => item.closest('ol') === item.parentElement && new RegExp(words).test(item.textContent ?? ''),
    )
  if (line === undefined) throw new RangeError(`No line holds ${words}`)
  return line
}

test('the history tells the case in its order, each line with who, when and its record', async () => {
  const { container } = open()
  const text = page()
  const places = [
    'Case opened: No heat since the night',
    'Visit 1, 12 Jan 2026, licence HV-2207, weather: -12 °C, calm',
    'Trap: sludge in it',
    'Too low to close it',
    'Repair: Trap taken out, flushed and primed',
    'After the repair, Low fire',
    'After the repair, High fire',
    'CO, after repair: room 0 ppm',
    'Visit ended: Repaired and proven',
  ].map((words) => text.indexOf(words))
  expect(places.every((place) => place > 0)).toBe(true)
  expect([...places].sort((one, other) => one - other)).toEqual(places)
  const opened = lineWith('Case opened')
  expect(opened.textContent).toContain('Bram Osterlo')
  const time = onTheClock(at('14:40')).time
  expect(within(opened).getByRole('link', { name: time }).getAttribute('href')).toBe(`/record?id=${of.case}`)
  expect(opened.querySelector('time')?.getAttribute('datetime')).toBe(at('14:40'))
  expect(screen.getAllByRole('heading', { level: 2 })[1]?.textContent).toBe(
    `${dayWords(at('14:40'))} ${onTheClock(at('14:40')).zone}`,
  )
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a finding that was taken back stays readable, with who took it back, when and why', () => {
  open()
  const findings = screen.getByRole('list', { name: 'Findings' })
  const taken = within(findings).getByRole('link', { name: 'Water in the hose' }).closest('li')!
  expect(taken.textContent).toContain(
    `Withdrawn ${momentWords(at('15:07'))}, by Ines Talvik: Tapped by mistake`,
  )
  expect(within(taken).getByRole('link', { name: 'Withdrawn' }).getAttribute('href')).toBe(
    `/record?id=${of.takenBack}`,
  )
})

test('a reading shows its water column, the limit as it stood that day with level and sources, and its gauge', () => {
  open()
  const line = lineWith('Too low to close it, 0.17 in. w.c. below its limit')
  expect(within(line).getByRole('img').getAttribute('aria-label')).toContain(
    `Closes at 0.58 in. w.c. ± 0.05, Supported, ${dayWords(at('15:20'))}.`,
  )
  expect(line.textContent).toContain(
    'That day it closes at 0.58 in. w.c. ± 0.05 and opens at 0.43 in. w.c., Supported:',
  )
  expect(
    within(line)
      .getAllByRole('link', { name: /^Data plate on the unit/ })[0]
      ?.getAttribute('href'),
  ).toBe(`/record?id=${of.label}`)
  expect(line.textContent).toContain('5 Jan 2026')
  expect(line.textContent).toContain('Gauge G-07, zeroed, its calibration had run out on 30 Jun 2025.')
  expect(line.textContent).toContain('contact open')
})

test('what is on file today changes nothing in what was written down that day', () => {
  const { unmount } = open()
  const before = lineWith('Too low to close it').textContent
  unmount()
  const newer: Row = [
    of.more,
    'report',
    { ...provenRows[0]![2], pascals: inches(0.3), asWritten: '.30 CLOSE', saidOn: '2026-03-01' },
    '2026-03-01T09:00:00.000Z',
  ]
  open([...ended, newer])
  expect(lineWith('Too low to close it').textContent).toBe(before)
})

test('a gauge that was calibrated anew, and a part that was joined to another, change nothing of that day either', () => {
  const fitted = changed(ended, of.repair, {
    positionId: ids.low,
    switchReplaced: true,
    fittedPart: ids.oldPart,
  })
  const printed = () => page().replace(/As this device had it .*/, '')
  const { unmount } = open(fitted)
  const before = printed()
  unmount()
  const later = (end: string) => `01920000-0000-7000-8000-000000000a${end}`
  const time = '2026-06-01T09:00:00.000Z'
  const gauge = recordsOf([]).find(({ id }) => id === ids.gauge)!.body
  open([
    ...fitted,
    [later('01'), 'gauge', { ...gauge, calibrationDue: '2027-06-30', percentOfReading: 5 }, time],
    [later('02'), 'same as', { kept: later('01'), duplicate: ids.gauge, reason: 'Calibrated anew' }, time],
    [later('03'), 'same as', { kept: ids.newPart, duplicate: ids.oldPart, reason: 'One part' }, time],
  ])
  expect(printed()).toBe(before)
  expect(before).toContain('its calibration had run out on 30 Jun 2025')
  expect(before).toContain(
    'Factory part OM-7731, listed in Parts list LF2, page 9. Where it came from is not on record.',
  )
})

test('a limit that was in dispute that day shows the value on either side, each with its sources, in words and drawn', () => {
  const counter: Row = [
    ids.counter,
    'report',
    {
      ...provenRows[0]![2],
      pascals: inches(0.42),
      asWritten: '.42 CLOSE',
      source: 'distributor',
      readBack: true,
      proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-91' },
      saidOn: '2026-01-06',
    },
    '2026-01-06T09:00:00.000Z',
  ]
  const [closes] = reading.against
  const against = [{ ...closes, level: 'In dispute', rivals: [{ limit: 'nominal', pascals: inches(0.42) }] }]
  open([counter, ...changed(ended, of.found, { against })])
  const line = lineWith('Also possible that day')
  expect(line.textContent).toContain('That day it closes at 0.58 in. w.c. ± 0.05, In dispute: Data plate')
  expect(line.textContent).toContain(
    'Also possible that day: it closes at 0.42 in. w.c., In dispute: Distributor',
  )
  expect(
    within(line)
      .getByRole('link', { name: /ref\. C-91/ })
      .getAttribute('href'),
  ).toBe(`/record?id=${ids.counter}`)
  const drawn = within(line).getByRole('img').getAttribute('aria-label')
  expect(drawn).toContain('Closes at 0.58 in. w.c. ± 0.05, In dispute')
  expect(drawn).toContain('Closes at 0.42 in. w.c., In dispute')
})

test('a reading with a gauge that is not on record draws nothing and says why', () => {
  open(changed(ended, of.found, { gaugeId: undefined }))
  const line = lineWith('so its accuracy is not known')
  expect(within(line).queryByRole('img')).toBeNull()
  expect(line.textContent).toContain('so nothing is drawn')
})

test('a reading without a rating says that none was on file that day', () => {
  open(changed(ended, of.found, { against: [] }))
  expect(lineWith('No rating was on file for it that day').textContent).toContain('As found, Low fire')
})

test('an ending that lacked something says what, and keeps saying it when a later visit brings it', () => {
  const visit2 = '01920000-0000-7000-8000-000000000e01'
  const [low, high, co] = [of.lowAfter, of.highAfter, of.combustion].map(
    (which) => provenRows.find(([id]) => id === which)!,
  )
  const onVisit2 = (row: Row | undefined, time: string): Row => [
    row![0],
    row![1],
    { ...row![2], visitId: visit2 },
    `2026-01-14T${time}:00.000Z`,
  ]
  open([
    ...without(provenRows, of.lowAfter, of.highAfter, of.combustion),
    [of.ending, 'ending', { ...provenEnding, how: 'repaired and proven' }, at('16:45')],
    [visit2, 'visit', { caseId: of.case, on: '2026-01-14' }, '2026-01-14T09:00:00.000Z'],
    onVisit2(low, '09:30'),
    onVisit2(high, '09:40'),
    onVisit2(co, '09:50'),
    [of.otherEnding, 'ending', { ...provenEnding, visitId: visit2 }, '2026-01-14T10:00:00.000Z'],
  ])
  const endings = screen
    .getAllByRole('listitem')
    .filter(
      (item) =>
        /^.*Visit ended: (Repaired|Said to be repaired) and proven/.test(item.textContent ?? '') &&
        item.closest('ol') === item.parentElement,
    )
  expect(endings.map((item) => item.textContent?.includes('not finished. It lacked:'))).toEqual([true, false])
  expect(endings[0]?.textContent).toContain('High fire: a hot reading after the repair, as in service.')
})

test('a notice and its lifting are told with the way to the notice', () => {
  open([
    ...provenRows,
    [of.notice, 'shut-down notice', fullNotice, at('16:45')],
    [of.ending, 'ending', { ...ofVisit, how: 'left off', noticeId: of.notice }, at('16:46')],
    [
      of.lifting,
      'lifting',
      { noticeId: of.notice, on: '2026-01-14', because: 'Exchanger replaced' },
      '2026-01-14T15:00:00.000Z',
    ],
  ])
  const notice = lineWith('Not to be relit until the heat exchanger is replaced')
  expect(notice.textContent).toContain('Gas off, power off, tagged. Told: tenant, 12 Jan 2026, 09:40, UTC−7.')
  expect(within(notice).getByRole('link', { name: 'Left off' }).getAttribute('href')).toBe(
    `/notice?id=${of.notice}`,
  )
  expect(lineWith('Notice lifted: Exchanger replaced').textContent).toContain('Ines Talvik')
})

test('every other kind of record has its line', () => {
  const more = (end: string) => `01920000-0000-7000-8000-000000000f${end}`
  open([
    ...ended,
    [
      more('01'),
      'fitted part',
      { furnaceId: ids.furnace, positionId: ids.low, caseId: of.case, printed: 'OM-7731' },
      at('15:10'),
    ],
    [
      more('02'),
      'switch check',
      {
        ...ofFurnace,
        positionId: ids.low,
        what: 'off the furnace',
        pulls: [inches(0.58), 'did not close'],
        gaugeId: ids.gauge,
        heldForTenSeconds: 'held',
        pumpLineProvenTight: true,
      },
      at('15:11'),
    ],
    [
      more('03'),
      'switch check',
      {
        ...ofFurnace,
        positionId: ids.low,
        what: 'at rest',
        inducerStopped: true,
        hoseOff: true,
        wiresOff: false,
        contact: 'open',
      },
      at('15:12'),
    ],
    [
      more('04'),
      'switch check',
      {
        ...ofFurnace,
        positionId: ids.low,
        what: 'voltage across the closed contact',
        volts: [0.1, 0.2],
        underLoad: true,
        terminals: 'clear',
        contact: 'closed',
      },
      at('15:13'),
    ],
    [
      more('05'),
      'danger answer',
      { ...ofVisit, dangers: ['spillage'], done: ['gas off', 'tagged', 'occupant told'] },
      at('15:14'),
    ],
    [
      more('06'),
      'baseline',
      { furnaceId: ids.furnace, readingId: of.lowAfter, occasion: 'after a proven repair', on: '2026-01-12' },
      at('16:50'),
    ],
    [
      more('07'),
      'repair',
      {
        ...ofFurnace,
        positionId: ids.low,
        done: 'Switch replaced',
        switchReplaced: true,
        fittedPart: ids.newPart,
        partFrom: 'Van stock, bin 4',
        on: '2026-01-10',
      },
      at('15:55'),
    ],
  ])
  expect(lineWith('Part number on the switch, Low fire').textContent).toContain('OM-7731')
  expect(
    lineWith('pulls 0.58 in. w.c.; did not close; ten seconds: held; pump line proven tight'),
  ).toBeTruthy()
  expect(lineWith('contact open; inducer stopped, hose off, wires not off')).toBeTruthy()
  expect(lineWith('0.1, 0.2 V, under load; terminals clear; contact closed')).toBeTruthy()
  expect(lineWith('Done at once: gas off, tagged').textContent).toContain('spill into the room')
  expect(lineWith('Baseline, after a proven repair').textContent).toContain('.92 WC')
  const repair = lineWith('Repair: Switch replaced, Low fire')
  expect(repair.textContent).toContain(
    'Factory part OM-8802, listed in Kit sheet 44. It came from: Van stock, bin 4.',
  )
  expect(screen.getByRole('region', { name: 'For whoever checks this case' }).textContent).toContain(
    'OM-8802, listed in Kit sheet 44, from: Van stock, bin 4',
  )
  expect(repair.textContent).toContain(
    `It is said of 10 Jan 2026, and was recorded ${dayWords(at('15:55'))}.`,
  )
})

test('whoever checks the case finds who, the furnace, instruments, limits, decision, parts and corrections', () => {
  open()
  const audit = screen.getByRole('region', { name: 'For whoever checks this case' })
  for (const words of [
    'Bram Osterlo; Ines Talvik, licence HV-2207',
    'LF2-080-B',
    'S2204-118',
    '4,800 ft (1,463 m)',
    '2 findings, 1 reading and 0 CO tests as found',
    'G-07, calibration due 30 Jun 2025: run out at 3 of its 3 readings',
    'written down with 3 of 3 readings, each with level and sources',
    'Repaired and proven: Trap plugged, test: confirmed',
    'Trap gasket, from the van',
    '2 readings, 1 CO test',
    '1 record withdrawn; both the record and the reason stay below',
    'kept on paper, not in this file',
  ])
    expect(audit.textContent).toContain(words)
})

test('what is missing on record is said to be missing, and what was recorded after its day is listed', () => {
  open([...provenRows.slice(0, 2), [of.visit, 'visit', { caseId: of.case, on: '2026-01-10' }, at('15:00')]])
  const audit = screen.getByRole('region', { name: 'For whoever checks this case' })
  expect(audit.textContent).toContain('Instrumentsnot on record')
  expect(audit.textContent).toContain('no reading was taken')
  expect(audit.textContent).toContain('the visit is not ended')
  expect(within(audit).getByRole('link', { name: 'visit' }).getAttribute('href')).toBe(
    `/record?id=${of.visit}`,
  )
})

test('a case that repeats an earlier one says what was fixed the last time and what the readings were', () => {
  const again = '01920000-0000-7000-8000-000000000d00'
  openAt(`/case/history?id=${again}`)
  const rows: Row[] = [
    ...ended,
    [
      again,
      'case',
      { furnaceId: ids.furnace, complaint: 'No heat again', circuit: 'proving circuit' },
      '2026-01-20T09:00:00.000Z',
    ],
  ]
  renderOn(fakeDevice({ records: recordsOf(rows) }), <HistoryScreen />)
  const repeat = screen.getByRole('complementary', { name: 'Repeats an earlier case' })
  expect(repeat.textContent).toContain('Trap plugged')
  expect(repeat.textContent).toContain('Done then: Trap taken out, flushed and primed.')
  expect(repeat.textContent).toContain('.41 WC, low fire, pre-purge, as found: too low to close it')
  expect(within(repeat).getByRole('link').getAttribute('href')).toBe(`/case/history?id=${of.case}`)
})

test('a case that is not on this device is said to be missing', () => {
  openAt('/case/history?id=nothing')
  renderOn(fakeDevice(), <HistoryScreen />)
  expect(screen.getByRole('heading', { name: 'This case is not on this device' })).toBeTruthy()
})

test('a reading of another sense than its limit is drawn as what it was and judged as not comparable', () => {
  open(changed(ended, of.found, { ...reading, sense: 'pressure' }))
  const line = lineWith("Can't be compared")
  expect(within(line).getByRole('img').getAttribute('aria-label')).toContain('positive pressure')
})
