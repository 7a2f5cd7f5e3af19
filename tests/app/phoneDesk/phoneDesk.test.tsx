import { act, screen, within } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import { laterWords } from '@/app/phoneDesk/OrganisationsSection'
import { PhoneDeskScreen } from '@/app/phoneDesk/PhoneDeskScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { dispatcher, fakeDevice, held, renderOn, technician } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { press } from '../setup/hands'
import { equipmentRecords, ids, spokenAnswer } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const id = (end: string) => `01920000-0000-7000-8000-0000000001${end}`
type Told = [end: string, kind: string, body: Record<string, unknown>, author: string, time: string]

/** The equipment, and after it what is told, each of 1 February 2026. */
const log = (told: Told[]): HeldRecord[] => [
  ...equipmentRecords,
  ...told.map(([end, kind, body, author, time], index) => ({
    ...held([[id(end), kind, body, `2026-02-01T${time}:00.000Z`]])[0]!,
    author,
    seq: 100 + index,
  })),
]

const asked: Told[] = [
  ['a1', 'rating request', { positionId: ids.high, printed: 'nothing', needs: [] }, technician.id, '06:00'],
  [
    'a2',
    'rating request',
    { positionId: ids.low, furnaceId: ids.furnace, printed: 'PR .58', measured: '0.41', needs: ['infants'] },
    technician.id,
    '07:00',
  ],
  ['a3', 'asks too', { requestId: id('a2'), needs: ['no other heat'] }, 'person-3', '07:30'],
  [
    'b0',
    'organisation',
    { name: 'Hobb & Lane counter', source: 'distributor', makerIds: [ids.maker], number: '555-0142' },
    dispatcher.id,
    '07:40',
  ],
]
const names = new Map([
  [technician.id, technician.name],
  [dispatcher.id, dispatcher.name],
  ['person-3', 'Lale Brook'],
])
const open = (told: Told[], me = dispatcher) => {
  openAt('/phone-desk')
  const device = fakeDevice({ records: log(told), me, names })
  return { device, ...renderOn(device, <PhoneDeskScreen />) }
}
const sheet = (name: string) => screen.getByRole('article', { name })
const low = 'Low fire, Orrinmoor Larkfell 2'

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date', 'setInterval', 'clearInterval'] })
  vi.setSystemTime('2026-02-01T08:00:00.000Z')
})
afterEach(() => {
  vi.useRealTimers()
})

describe('waiting questions', () => {
  test('the one with people at risk comes first, with everybody who asks and everything they said', async () => {
    const { container } = open(asked)
    const titles = screen.getAllByRole('heading', { level: 2 }).map((heading) => heading.textContent)
    expect(titles.slice(0, 2)).toEqual([low, 'High fire, Orrinmoor Larkfell 2'])
    const text = sheet(low).textContent!
    for (const said of [
      'infants · no other heat',
      'Ines Talvik',
      'Lale Brook',
      'PR .58',
      '0.41',
      'Mill Row 12',
      '4,800 ft',
    ])
      expect(text).toContain(said)
    expect(within(sheet(low)).getByRole('link', { name: 'Ring about it' }).getAttribute('href')).toBe(
      `/call?request=${id('a2')}`,
    )
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('“I’ll ring” is a promise that others see with its end, and that can be renewed and put back', async () => {
    const { device } = open(asked)
    await act(async () => within(sheet(low)).getByRole('button', { name: 'I’ll ring' }).click())
    expect(device.added).toMatchObject([{ kind: 'promise', body: { requestId: id('a2'), minutes: 30 } }])
    // The fake device says everything at 08:00 of that day.
    expect(sheet(low).textContent).toContain('You have promised to ring.')
    await act(async () => within(sheet(low)).getByRole('button', { name: 'I’ll ring: renew' }).click())
    await act(async () => within(sheet(low)).getByRole('button', { name: 'Put back' }).click())
    expect(device.added.at(-1)).toMatchObject({
      kind: 'withdrawal',
      body: { record: device.added.at(-2)!.id, reason: 'Put back.' },
    })
  })

  test('another dispatcher’s promise is seen, and lapses by itself while the screen is open', () => {
    const promised: Told = ['a4', 'promise', { requestId: id('a2'), minutes: 30 }, 'person-3', '07:45']
    open([...asked, promised])
    expect(sheet(low).textContent).toContain('Lale Brook has promised to ring.')
    act(() => {
      vi.advanceTimersByTime(16 * 60_000)
    })
    expect(sheet(low).textContent).not.toContain('has promised')
  })

  test('calls that came to nothing are listed, so that nobody repeats them', () => {
    const call: Told = [
      'b1',
      'call attempt',
      { organisationId: id('b0'), requestIds: [id('a2')], outcome: 'doesn’t know', person: 'Counter' },
      dispatcher.id,
      '07:50',
    ]
    open([...asked, call])
    expect(
      within(sheet(low)).getByRole('link', { name: /^Hobb & Lane counter: doesn’t know, Counter\. Bram/ }),
    ).toBeDefined()
  })
})

test('a reminder leads to the call with its questions, and says when it is due', () => {
  const call: Told = [
    'b1',
    'call attempt',
    {
      organisationId: id('b0'),
      requestIds: [id('a1'), id('a2')],
      outcome: 'ring back',
      ringBackAt: '2026-02-01T08:05:00.000Z',
      person: 'Odo',
    },
    dispatcher.id,
    '07:50',
  ]
  open([...asked, call])
  const reminders = sheet('Ring back')
  expect(reminders.textContent).toContain('Ask for Odo')
  expect(reminders.textContent).not.toContain('Due now')
  expect(within(reminders).getByRole('link').getAttribute('href')).toBe(
    `/call?request=${id('a1')}&request=${id('a2')}&organisation=${id('b0')}`,
  )
  act(() => {
    vi.advanceTimersByTime(6 * 60_000)
  })
  expect(sheet('Ring back').textContent).toContain('Due now.')
  for (const [minutes, late] of [
    [60, 'Due now, 1 hour late.'],
    [22 * 60, 'Due now, 23 hours late.'],
    [9 * 24 * 60, 'Due now, 9 days late.'],
    [24 * 60, 'Due now, 10 days late.'],
  ] as const) {
    act(() => {
      vi.setSystemTime(Date.now() + minutes * 60_000)
      vi.advanceTimersByTime(60_000)
    })
    expect(sheet('Ring back').textContent).toContain(late)
  }
})

describe('answers that have not reached everybody', () => {
  const answer: Told = ['c1', 'report', spokenAnswer(id('a2')), dispatcher.id, '07:55']

  test('the desk is told whom to ring, with the whole answer to read out', async () => {
    const seen: Told = [
      'c2',
      'answer seen',
      { requestId: id('a2'), reportIds: [id('c1')], personId: 'person-3', how: 'shown on the screen' },
      'person-3',
      '07:58',
    ]
    const { device } = open([...asked, answer, seen])
    const section = screen.getByRole('region', { name: 'Answered, and not reached yet' })
    expect(section.textContent).toContain('Ines Talvik: not reached. Ring the house.')
    expect(section.textContent).toContain('Lale Brook: on their device, seen at 1 Feb 2026, 07:58')
    // The server has not said what lies on whose device: nothing is claimed of it.
    expect(section.textContent).not.toContain('It is')
    expect(section.textContent).toContain(
      'Low fire: negative zero point five eight inches, closes, low fire, port to room. Supported. ' +
        'Distributor, read back, Hobb & Lane counter, ref. C-91, 1 Feb 2026.',
    )
    await press('I have read it out to Ines Talvik')
    expect(device.added).toMatchObject([
      {
        kind: 'answer seen',
        body: {
          requestId: id('a2'),
          reportIds: [id('c1')],
          personId: technician.id,
          how: 'read out over the telephone',
        },
      },
    ])
    expect(screen.queryByRole('region', { name: 'Answered, and not reached yet' })).toBeNull()
  })
})

test('a break beyond its make is named in the line that is read out', () => {
  const make = { ...spokenAnswer(id('a2')), pascals: 0.48 * 249.08891 }
  const beyond = { ...make, action: 'opens', pascals: 0.62 * 249.08891 }
  open([
    ...asked,
    ['c1', 'report', make, dispatcher.id, '07:55'],
    ['c2', 'report', beyond, dispatcher.id, '07:55'],
  ])
  const lines = screen.getAllByText(/^Low fire: negative/).map(({ textContent }) => textContent)
  expect(lines).toHaveLength(2)
  for (const line of lines)
    expect(line).toMatch(
      /Look again: The break point on file is beyond .* been swapped\. Ask which is which\./,
    )
})

describe('what lies on whose device', () => {
  const answer: Told = ['c1', 'report', spokenAnswer(id('a2')), dispatcher.id, '07:55']
  const holders = (personIds: string[]) => {
    const asked = vi.fn(async (_address: string) =>
      Response.json({ ok: true, value: [{ id: id('c1'), personIds }] }),
    )
    vi.stubGlobal('fetch', asked)
    return asked
  }
  afterEach(() => {
    vi.unstubAllGlobals()
  })
  const section = () => screen.getByRole('region', { name: 'Answered, and not reached yet' })

  test('the desk asks the server, and says it beside the call that still has to be made', async () => {
    const askedOf = holders([technician.id])
    open([...asked, answer])
    await screen.findByText(/It is on their device, and they have not opened it\./)
    expect(askedOf.mock.calls[0]![0]).toBe(`/api/devices/holding?record=${id('c1')}`)
    expect(section().textContent).toContain(
      'Ines Talvik: not reached. Ring the house. It is on their device, and they have not opened it.',
    )
    expect(section().textContent).toContain(
      'Lale Brook: not reached. Ring the house. It is not on their device yet.',
    )
  })

  test('it asks again, so that an answer that arrives is seen to arrive', async () => {
    holders([])
    open([...asked, answer])
    await screen.findAllByText(/It is not on their device yet\./)
    holders([technician.id])
    await act(() => vi.advanceTimersByTimeAsync(5_000))
    await screen.findByText(/It is on their device, and they have not opened it\./)
  })

  test('a technician, who does not ring, is told nothing of others’ devices', async () => {
    const askedOf = holders([technician.id])
    open([...asked, answer], technician)
    await act(() => vi.advanceTimersByTimeAsync(5_000))
    expect(askedOf).not.toHaveBeenCalled()
  })
})

test('an answer that nobody has opened for 14 days is no longer pressed, and is kept among the answered questions', async () => {
  const answer: Told = ['c1', 'report', spokenAnswer(id('a2')), dispatcher.id, '07:55']
  vi.setSystemTime('2026-02-20T08:00:00.000Z')
  open([...asked, answer])
  expect(screen.queryByRole('region', { name: 'Answered, and not reached yet' })).toBeNull()
  const fold = screen.getByText('Answered questions (1)').closest('details')!
  fold.open = true
  const line = await within(fold).findByRole('listitem')
  expect(line.textContent).toMatch(/answered by Bram Osterlo.*Not seen by Ines Talvik, Lale Brook\./)
  expect(within(line).getByRole('link').getAttribute('href')).toBe(
    `/setpoint?position=${ids.low}&furnace=${ids.furnace}`,
  )
})

test('a quiet hour: what is worth verifying, and whom we ring, for those who keep the file', () => {
  open(asked)
  expect(screen.getByRole('table').textContent).toContain(low)
  expect(screen.getByRole('region', { name: 'Whom we ring' }).textContent).toContain(
    'No answer of theirs was judged by others yet.',
  )
})

describe('laterWords(organisation)', () => {
  const report = { id: '', by: '', at: '', waiting: false, body: {} as never }
  const answers = (right: number, wrong: number, open: number) => ({
    answers: (['right', 'wrong', 'not judged'] as const).flatMap((later, index) =>
      Array.from({ length: [right, wrong, open][index]! }, () => ({ parts: [{ report, later }], later })),
    ),
  })

  test('says how little a few answers say, with Wilson’s interval', () => {
    // Wilson, JASA 22 (1927): 2 of 3 at 95 % is 0.2077 to 0.9385, worked by hand from his formula with z = 1.959964.
    expect(laterWords(answers(2, 1, 4))).toBe(
      '2 of 3 answers were right later (95 % interval 21 to 94 %). Few answers: this says little. 4 not judged by others yet.',
    )
  })

  test('says nothing of an organisation that nobody has judged', () => {
    expect(laterWords(answers(0, 0, 0))).toBe('No answer of theirs was judged by others yet.')
  })
})

describe('worth verifying next', () => {
  const openWith = (lookUps?: [string, number][]) => {
    openAt('/phone-desk')
    const device = fakeDevice({
      records: log(asked),
      me: dispatcher,
      names,
      lookUps: lookUps && { at: '2026-02-01T07:57:00.000Z', timesByPosition: new Map(lookUps) },
    })
    return renderOn(device, <PhoneDeskScreen />)
  }
  const table = () => screen.getByRole('table', { name: /^The number that proves the draft/ })
  const rows = () =>
    within(table())
      .getAllByRole('row')
      .slice(1)
      .map((row) => [
        within(row).getByRole('rowheader').textContent,
        within(row).getByRole('cell').textContent,
      ])
  const high = 'High fire, Orrinmoor Larkfell 2'

  test('what the team looks up most comes first, and each row says why it stands there', async () => {
    const { container } = openWith([
      [ids.high, 14],
      [ids.low, 1],
    ])
    expect(rows()).toEqual([
      [high, 'Looked up 14 times by the team in 90 days, 1 open question, Not on file'],
      [low, 'Looked up 1 time by the team in 90 days, 1 open question, Not on file'],
    ])
    expect(screen.getByText(/Look-ups as the server had them 3 min ago\./)).toBeDefined()
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('before the team’s look-ups have reached the device, it says that the order is without them', () => {
    openWith()
    expect(rows().map(([, why]) => why)).toEqual([
      '1 open question, Not on file',
      '1 open question, Not on file',
    ])
    expect(screen.getByText(/have not reached this device yet/)).toBeDefined()
  })
})
