import { act, screen, within } from '@testing-library/react'
import { afterEach, expect, test, vi } from 'vitest'
import { LogScreen } from '@/app/log/LogScreen'
import { WithholdScreen } from '@/app/record/WithholdScreen'
import type { Person } from '@/lib/device/transport'
import { dispatcher, fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { fill, press, select, tick } from '../setup/hands'
import { disputedRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))
afterEach(() => vi.unstubAllGlobals())

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
const manager: Person = { id: 'person-3', name: 'Oda Feldt', role: 'manager' }
const names = new Map([technician, dispatcher, manager].map((person) => [person.id, person.name]))
const last = disputedRecords.length
const report = disputedRecords.at(-1)!

const records = [
  ...disputedRecords,
  ...held([
    [
      id('c1'),
      'case',
      {
        furnaceId: ids.furnace,
        complaint: 'No heat since Monday',
        circuit: 'proving circuit',
        note: 'Ring Tilda first',
      },
      '2026-02-02T08:00:00.000Z',
    ],
    [id('c2'), 'withdrawal', { record: report.id, reason: 'Misread digit.' }, '2026-02-03T08:00:00.000Z'],
  ]).map((record, place) => ({
    ...record,
    seq: last + 1 + place,
    author: place === 0 ? dispatcher.id : technician.id,
  })),
]

const open = (href: string, me: Person = technician, all = records) => {
  openAt(href)
  const device = fakeDevice({ records: all, me, names })
  return { device, ...renderOn(device, href.startsWith('/log') ? <LogScreen /> : <WithholdScreen />) }
}
const entries = () => {
  const list = screen.queryByRole('list', { name: 'Entries' })
  return list === null ? [] : within(list).queryAllByRole('listitem')
}

test('the log lists what was said, the newest first, with its number, by whom, and what it changed', async () => {
  const { container } = open('/log')
  const [first, second] = entries().map((entry) => entry.textContent)
  expect(first).toContain(`${last + 2}`)
  expect(first).toContain('Withdrew Report: Distributor: Misread digit.')
  expect(first).toMatch(/Closes \(make\spoint\): In dispute → (Verified|Supported|Unverified)/)
  expect(first).toContain('Ines Talvik, 3 Feb 2026, 08:00')
  expect(second).toContain('Case: No heat since Monday')
  expect(second).toContain('Added to Mill Row 12')
  expect(second).toContain('Bram Osterlo')
  const third = entries()[2]!.textContent
  expect(third).toContain(`Withdrawn since by record ${last + 2}: Misread digit.`)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('no number is shown in the log: a level is said without one', () => {
  open('/log?kind=report')
  for (const entry of entries()) expect(entry.textContent).not.toMatch(/in\. w\.c\.|\bPa\b/)
})

test.each([
  ['person', 'Who said it', 'Bram Osterlo', 1],
  ['kind', 'Kind of record', 'Withdrawal', 1],
  ['furnace', 'Furnace', /Mill Row 12/, 2],
] as const)('the log is narrowed down by %s, and its address says so', (name, label, words, count) => {
  open('/log')
  const list = screen.getByRole('combobox', { name: label })
  select(label, within(list).getByRole('option', { name: words }).textContent!)
  expect(entries()).toHaveLength(count)
  expect(window.location.search).toMatch(new RegExp(`[?&]${name}=`))
})

test('the log is narrowed down by day, at both ends; what fits nothing says so and shows all again', async () => {
  open('/log?from=2026-02-02&to=2026-02-02')
  expect(entries()).toHaveLength(1)
  expect(screen.getByText(`1 of ${records.length} entries fits.`)).toBeDefined()
  fill('Said on this day or later', '2027-01-01')
  expect(screen.getByText('No entry fits all of that')).toBeDefined()
  await press(`Show all ${records.length} entries`)
  expect(entries()).toHaveLength(records.length)
})

test('a long log is drawn page by page, and the page is in the address', async () => {
  const many = held(
    Array.from({ length: 120 }, (_, at) => [id((5000 + at).toString(16)), 'maker', { name: `Maker ${at}` }]),
  )
  open('/log', technician, many)
  expect(entries()).toHaveLength(50)
  expect(entries()[0]?.textContent).toContain('Maker 119')
  expect(screen.queryByRole('button', { name: 'Newer entries' })).toBeNull()
  await press('Older entries')
  await press('Older entries')
  expect(entries()).toHaveLength(20)
  expect(window.location.search).toBe('?page=3')
  expect(screen.queryByRole('button', { name: 'Older entries' })).toBeNull()
  await press('Newer entries')
  expect(entries()[0]?.textContent).toContain('Maker 69')
})

test('an empty log says what to do', () => {
  open('/log', technician, [])
  expect(screen.getByText('Nothing is recorded yet')).toBeDefined()
})

/** A server that answers the check line by line, when it is told to. */
function serverThatWalks() {
  let say = (_line: string) => {}
  let end = () => {}
  const body = new ReadableStream<Uint8Array>({
    start(controller) {
      say = (line) => controller.enqueue(new TextEncoder().encode(line))
      end = () => controller.close()
    },
  })
  vi.stubGlobal('fetch', async () => new Response(body))
  return { say: (line: string) => act(async () => say(line)), end: () => act(async () => end()) }
}
const settle = () => act(() => new Promise((done) => setTimeout(done, 20)))
const hash = 'a1'.repeat(32)

test('the chain is checked by a button: it says how far it is, then that it is whole, what is withheld, and the hash', async () => {
  const server = serverThatWalks()
  const { container } = open('/log')
  await press('Check every entry')
  await server.say('{"done":500,"of":1000}\n{"done":')
  await settle()
  const bar = screen.getByRole<HTMLProgressElement>('progressbar', { name: 'How far the check is' })
  expect([bar.value, bar.max]).toEqual([500, 1000])
  expect(screen.getByText('500 of 1000 entries fit so far')).toBeDefined()
  const value = { entries: 1000, headHash: hash, withheld: [{ seq: 7, id: ids.furnace, bySeq: 9 }] }
  await server.say(`1000,"of":1000}\n${JSON.stringify({ ok: true, value })}\n`)
  await server.end()
  await settle()
  expect(screen.getByText('The log is whole.').parentElement?.textContent).toBe(
    'The log is whole. 1000 entries fit, from the first to the last.',
  )
  expect(within(screen.getByRole('list', { name: 'Withheld' })).getByRole('listitem').textContent).toBe(
    'Entry 7: withheld by record 9',
  )
  expect(screen.getByText(hash)).toBeDefined()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('the first entry that does not fit is named, with what to do', async () => {
  const server = serverThatWalks()
  open('/log')
  await press('Check every entry')
  const sentence = 'Entry 8 was changed: its hash is not the one of what it says.'
  const value = { entries: 7, headHash: hash, withheld: [], trouble: { seq: 8, sentence } }
  await server.say(`${JSON.stringify({ ok: true, value })}\n`)
  await settle()
  expect(screen.getByText(sentence).parentElement?.textContent).toContain(
    'The first 7 entries before it fit. Stop the server',
  )
})

test.each([
  [
    'no signal',
    () => Promise.reject(new TypeError('Failed to fetch')),
    /could not be checked: Failed to fetch/,
  ],
  ['an answer cut short', async () => new Response('{"done":1,"of":2}\n'), /the answer ended too soon/],
  ['an answer of another kind', async () => new Response('{"what":1}\n'), /could not be read/],
  [
    'a refusal',
    async () => new Response('{"ok":false,"problem":{"code":"not-signed-in","message":"Sign in again."}}'),
    /^Sign in again\.$/,
  ],
])('the check says what went wrong: %s', async (_what, answer, words) => {
  vi.stubGlobal('fetch', answer)
  open('/log')
  await press('Check every entry')
  await settle()
  expect(screen.getByRole('alert').textContent).toMatch(words)
  expect(screen.getByRole('button', { name: 'Check every entry' })).toBeDefined()
})

test('a manager withholds named fields for a reason, sees first what goes, and must say that it can’t be undone', async () => {
  const { device, container } = open(`/withhold?record=${id('c1')}`, manager)
  const note = screen.getByRole('checkbox', { name: 'Note' })
  expect(note.closest('div')?.textContent).toContain('Ring Tilda first')
  expect(await accessibilityFaults(container)).toEqual([])
  tick('Note')
  fill('Why?', 'The occupant asked for it.')
  await press('Withhold “Note” for good')
  expect(device.added).toEqual([])
  expect(screen.getByText('Tick this too: nobody can bring it back.')).toBeDefined()
  tick(/^It can’t be undone/)
  await press('Withhold “Note” for good')
  expect(device.added.map(({ kind, body }) => [kind, body])).toEqual([
    ['withholding', { record: id('c1'), fields: ['note'], reason: 'The occupant asked for it.' }],
  ])
  expect(wentTo()).toEqual([`/record?id=${id('c1')}`])
})

test('withholding who spoke names the reports of the call that hold the same words, and takes them along if ticked', async () => {
  const spoken = (end: string, saidBy: string) =>
    [id(end), 'report', { ...(report.body as object), saidBy }, '2026-02-04T08:00:00.000Z'] as const
  const call = held([
    [id('e0'), 'organisation', { name: 'Hobb counter', source: 'distributor', makerIds: [ids.maker] }],
    [id('e1'), 'rating request', { positionId: ids.low, printed: 'nothing', needs: [] }],
    [...spoken('e2', 'Berrit, counter')],
    [...spoken('e3', 'Berrit, counter')],
    [
      id('e4'),
      'call attempt',
      { organisationId: id('e0'), requestIds: [id('e1')], outcome: 'answered', person: 'Berrit, counter' },
      '2026-02-04T08:00:00.000Z',
    ],
  ]).map((record, place) => ({ ...record, seq: 200 + place }))
  const { device } = open(`/withhold?record=${id('e4')}`, manager, [...records, ...call])
  expect(screen.queryByText(/The same words stand in other records/)).toBeNull()
  tick(/^Who spoke/)
  expect(screen.getByText(/The same words stand in other records/)).toBeDefined()
  const others = screen.getAllByRole('checkbox', { name: /, in Report: Distributor$/ })
  expect(others).toHaveLength(2)
  expect(
    screen.getAllByRole('link', { name: 'See that record' }).map((link) => link.getAttribute('href')),
  ).toEqual([`/record?id=${id('e2')}`, `/record?id=${id('e3')}`])
  act(() => others[1]!.click())
  fill('Why?', 'She asked for it.')
  tick(/It can’t be undone/)
  await press(/^Withhold “Who spoke” for good, and from one other field$/)
  expect(device.added.map(({ body }) => body)).toEqual([
    { record: id('e4'), fields: ['person'], reason: 'She asked for it.' },
    { record: id('e3'), fields: ['saidBy'], reason: 'She asked for it.' },
  ])
})

test('withholding without a field or a reason is not said, and says what is missing', async () => {
  const { device } = open(`/withhold?record=${id('c1')}`, manager)
  tick(/^It can’t be undone/)
  await press('Withhold it for good')
  expect(device.added).toEqual([])
  expect(screen.getByText('Name the fields to withhold.')).toBeDefined()
})

test.each([
  ['a technician', technician, id('c1'), /Only a manager/],
  ['a record without personal data', manager, ids.maker, /holds no personal data/],
  ['a record that is not here', manager, id('999'), /not on this device/],
] as const)('there is nothing to withhold for %s', (_who, me, record, why) => {
  open(`/withhold?record=${record}`, me)
  expect(screen.getByText(why)).toBeDefined()
  expect(screen.queryByRole('button')).toBeNull()
})

test('only a manager is offered to export', () => {
  const { unmount } = open('/log', manager)
  expect(screen.getByRole('link', { name: 'Export' }).getAttribute('href')).toBe('/export')
  unmount()
  open('/log', technician)
  expect(screen.queryByRole('link', { name: 'Export' })).toBeNull()
})

test('only a manager is offered to withhold, and only what can be', () => {
  open('/log', technician)
  expect(screen.queryByRole('link', { name: 'Withhold personal data' })).toBeNull()
})

test('what is withheld says by which record', () => {
  const withholding = held([
    [id('d1'), 'withholding', { record: id('c1'), fields: ['note'], reason: 'Asked for.' }],
  ]).map((record) => ({ ...record, seq: 77 }))
  const blanked = records.map((record) =>
    record.id === id('c1')
      ? {
          ...record,
          body: { ...record.body, note: '[withheld]' },
          withheld: { by: id('d1'), fields: ['note'] },
        }
      : record,
  )
  open('/log?kind=case', manager, [...blanked, ...withholding])
  expect(entries()[0]?.textContent).toContain('Withheld by record 77: Note')
})
