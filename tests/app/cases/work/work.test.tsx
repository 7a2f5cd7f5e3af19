import { act, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { WorkCaseScreen } from '@/app/cases/work/WorkCaseScreen'
import { type FakeDevice, fakeDevice, held, renderOn } from '../../setup/fakeDevice'
import { openAt } from '../../setup/fakeNavigation'
import { choose, fill, press, select, tick } from '../../setup/hands'
import { ids as on, pascals, settleableRecords } from '../../setup/smallFile'
import { fullNotice } from '../end/provenCase'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
const ids = {
  case: id('c1'),
  visit: id('c2'),
  old: id('c3'),
  oldVisit: id('c4'),
  repair: id('c5'),
  end: id('c6'),
}

// The browser of these tests lays nothing out: what is brought into view is noted instead.
const broughtIn = vi.fn()
HTMLElement.prototype.scrollIntoView = function (this: HTMLElement) {
  broughtIn(this)
}

const open = (records: readonly ReturnType<typeof held>[number][]): FakeDevice => {
  openAt(`/case?id=${ids.case}`)
  const device = fakeDevice({ records })
  renderOn(device, <WorkCaseScreen />)
  return device
}
const after = (records: ReturnType<typeof held>) =>
  records.map((record, index) => ({ ...record, seq: 200 + index }))
const theCase = held([
  [
    ids.case,
    'case',
    { furnaceId: on.furnace, complaint: 'No heat since the night', circuit: 'proving circuit' },
  ],
  [ids.visit, 'visit', { caseId: ids.case, on: '2026-02-01' }],
])
const fresh = [...settleableRecords, ...after(theCase)]

const unfold = (summary: string): void => {
  const folded = screen.getByText(summary).closest('details')!
  act(() => {
    folded.open = true
    folded.dispatchEvent(new Event('toggle'))
  })
}
const causes = () => within(screen.getByRole('article', { name: 'Likely causes' }))
const topCause = () => causes().getAllByRole('heading', { level: 3 })[0]!.textContent
const see = async (finding: string, value: string): Promise<void> => {
  fill('Search the findings', finding)
  const matching = within(screen.getByRole('region', { name: 'Findings that match' }))
  const row = within(matching.getByRole('group', { name: finding }))
  await act(async () => row.getByRole('button', { name: value }).click())
  fill('Search the findings', '')
}

describe('WorkCaseScreen', () => {
  test('asks about danger before it shows anything else, and names site, complaint and furnace', () => {
    open(fresh)
    expect(screen.getByRole('heading', { level: 1, name: 'Mill Row 12' })).toBeTruthy()
    expect(screen.getByText(/No heat since the night/).textContent).toContain('Being worked on')
    const caution = screen.getByRole('complementary', { name: 'Caution' })
    const findings = screen.getByRole('article', { name: 'What you see' })
    expect(caution.compareDocumentPosition(findings)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
  })

  test('another serial on the plate than on file says so, and leads to the form that replaces the furnace', () => {
    const other = theCase.map((record) =>
      record.kind === 'case' ? { ...record, body: { ...record.body, serialSeen: 'WRONG-99' } } : record,
    )
    open([...settleableRecords, ...other.map((record, index) => ({ ...record, seq: 200 + index }))])
    expect(screen.getByText(/The plate says/).textContent).toContain('WRONG-99')
    expect(screen.getByRole('link', { name: 'record that it was replaced' }).getAttribute('href')).toBe(
      `/furnace/add?replaces=${on.furnace}&serial=WRONG-99`,
    )
  })

  test('a number that says that the switch is adjustable is a danger, with the way to record it as found fitted', () => {
    const printed = 'ADJUSTABLE 0.1-1.0 UNIV-9'
    const of = { furnaceId: on.furnace, positionId: on.low, caseId: ids.case }
    const ofVisit = { caseId: ids.case, visitId: ids.visit }
    const finding = 'general-purpose-switch-fitted'
    const more = held([
      [id('d1'), 'fitted part', { ...of, printed }],
      [id('d2'), 'finding', { ...ofVisit, finding, value: 'ruled out' }],
    ]).map((record, index) => ({ ...record, seq: 220 + index }))
    open([...fresh, ...more])
    const warning = within(screen.getByRole('region', { name: 'A switch that should not be in' }))
    expect(warning.getByRole('link', { name: 'Record it as found fitted' }).getAttribute('href')).toBe(
      `/found-fitted?${new URLSearchParams({ position: on.low, furnace: on.furnace, printed })}`,
    )
    const danger = screen.getByRole('region', { name: 'Stop: leave it off' })
    expect(danger.textContent).toContain(
      '“Adjustable or general-purpose switch fitted” was ruled out, and something else on record shows it.',
    )
  })

  test('a rating that depends on the height shows no number where the furnace’s record gives none', () => {
    const { elevationMetres: _, ...lowland } = fresh.find(({ id }) => id === on.furnace)!.body
    const banded = held([
      [
        '01920000-0000-7000-8000-0000000000d1',
        'report',
        {
          ...fresh.findLast(({ kind }) => kind === 'report')!.body,
          positionId: on.high,
          source: 'current literature',
          proof: { kind: 'document', name: 'LF2 manual', page: '31' },
          pascals: 0.91 * 249.08891,
          elevationBand: { fromMetres: 1158 },
        },
      ],
    ]).map((record) => ({ ...record, seq: 221 }))
    const records = fresh.map((record) => (record.id === on.furnace ? { ...record, body: lowland } : record))
    open([...records, ...banded])
    expect(screen.getAllByText(/^What is on file depends on the elevation/).length).toBeGreaterThan(0)
    expect(document.body.textContent).not.toContain('0.91')
  })

  test('while its furnace is left off, the notice stands above everything else', () => {
    const notice = held([
      [
        '01920000-0000-7000-8000-0000000000c1',
        'shut-down notice',
        { ...fullNotice, furnaceId: on.furnace, caseId: ids.case },
      ],
    ]).map((record) => ({ ...record, seq: 220 }))
    open([...fresh, ...notice])
    const banner = screen.getByRole('region', { name: 'Left off' })
    expect(banner.textContent).toContain('Do not relight until: the heat exchanger is replaced')
    expect(banner.compareDocumentPosition(screen.getByRole('complementary', { name: 'Caution' }))).toBe(
      Node.DOCUMENT_POSITION_FOLLOWING,
    )
  })

  test('asks the Phone desk from the case, for this furnace: for what is not on file, and for what is in dispute', () => {
    open(fresh)
    const asks = (name: RegExp) =>
      screen.getAllByRole('link', { name }).map((link) => link.getAttribute('href'))
    expect(asks(/^Ask the Phone desk/)).toEqual([`/ask?position=${on.low}&furnace=${on.furnace}`])
    expect(asks(/^Ask for it/)).toEqual([`/ask?position=${on.high}&furnace=${on.furnace}`])
  })

  test('records a finding by one tap, ranks the causes anew, and undoes it with a withdrawal', async () => {
    const device = open(fresh)
    const before = topCause()
    await see('Trap', 'Sludge in it')
    expect(device.added[0]).toMatchObject({
      kind: 'finding',
      body: { caseId: ids.case, visitId: ids.visit, finding: 'trap', value: 'sludge in it' },
    })
    await see('Drain when water is poured in', 'Slow or stop-start')
    expect(topCause()).not.toBe(before)
    await press('Undo')
    expect(device.added.at(-1)).toMatchObject({
      kind: 'withdrawal',
      body: { record: device.added[1]!.id, reason: 'Tapped by mistake' },
    })
  })

  test('one tap rules out all that a look did not show, and one undoes it', async () => {
    const device = open(fresh)
    unfold('At the door: 0 of 18 checked')
    unfold('Ask about alarm, gas and health: 0 of 3 checked')
    await press('Looked: none of these 3')
    expect(device.added.map(({ body }) => [body.finding, body.value])).toEqual([
      ['smell-of-gas', 'ruled out'],
      ['co-alarm-sounding', 'ruled out'],
      ['anyone-unwell', 'ruled out'],
    ])
    await press('Undo')
    expect(device.added.filter(({ kind }) => kind === 'withdrawal')).toHaveLength(3)
  })

  test('“Not checked” takes back every record of the finding, so that an older value does not return', async () => {
    const device = open(fresh)
    await see('Trap', 'Dry')
    await see('Trap', 'Sludge in it')
    await see('Trap', 'Not checked')
    const withdrawn = device.added.filter(({ kind }) => kind === 'withdrawal').map(({ body }) => body.record)
    expect(withdrawn).toEqual([device.added[0]!.id, device.added[1]!.id])
    expect(device.state().file.findings.get(device.added[0]!.id)?.withdrawn).toBeDefined()
  })

  test('says with how many past cases it ranks, and that the trade’s experience stands for the rest', () => {
    open(fresh)
    expect(causes().getByText(/your team has no case with a cause on file yet/)).toBeTruthy()
    expect(causes().getByRole('link', { name: 'How good is this helper?' })).toBeTruthy()
  })

  test('names few checks to do next, each with minutes, state, and why', () => {
    open(fresh)
    const next = within(screen.getByRole('article', { name: 'Look at next' }))
    expect(next.getAllByRole('heading', { level: 3 })).toHaveLength(3)
    for (const item of next.getAllByRole('listitem').filter((one) => within(one).queryByRole('heading')))
      expect(item.textContent).toMatch(/\d+ min, .+Why: /)
  })

  test('a danger finding stands above all, and hides the causes until it is said what was done', async () => {
    const device = open(fresh)
    await see('Scorching', 'Seen')
    const danger = screen.getByRole('region', { name: 'Stop: leave it off' })
    const headline = within(danger).getByRole('heading', { name: 'Stop: leave it off' })
    expect(document.activeElement).toBe(headline)
    expect(broughtIn).toHaveBeenLastCalledWith(headline)
    expect(
      within(danger)
        .getByText(/^The maker’s instructions/)
        .closest('ol'),
    ).toBeNull()
    expect(danger.textContent).toContain('Gas and power off, if that is safe.')
    expect(screen.queryByRole('article', { name: 'Likely causes' })).toBeNull()
    await press('Record what was done')
    expect(within(danger).getByRole('alert').textContent).toContain(
      'Not done yet: gas off, tagged, occupant told',
    )
    tick('Gas off')
    tick('Tagged')
    tick('Occupant told')
    expect(screen.queryByRole('article', { name: 'The switch comes last' })).toBeNull()
    await press('Record what was done')
    expect(device.added.at(-1)).toMatchObject({
      kind: 'danger answer',
      body: { dangers: ['scorching'], done: ['gas off', 'tagged', 'occupant told'] },
    })
    expect(screen.getByRole('article', { name: 'Likely causes' })).toBeTruthy()
    expect(screen.getByRole('region', { name: 'Stop: leave it off' })).toBeTruthy()
    fill('Search the findings', 'Scorching')
    const scorching = within(screen.getByRole('group', { name: 'Scorching' }))
    expect(scorching.queryByRole('button', { name: 'Not checked' })).toBeNull()
    fill('Search the findings', '')
    await see('Scorching', 'Ruled out')
    expect(screen.queryByRole('region', { name: 'Stop: leave it off' })).toBeNull()
  })

  test('where everybody has to leave, only an all-clear lets the work go on', async () => {
    const device = open(fresh)
    await see('Smell of gas', 'Seen')
    const danger = within(screen.getByRole('region', { name: 'Everybody out now' }))
    expect(danger.queryByRole('checkbox', { name: 'Gas off' })).toBeNull()
    tick('Called from outside')
    await press('Record what was done')
    expect(device.added.filter(({ kind }) => kind === 'danger answer')).toEqual([])
    tick('All clear from the gas supplier or the emergency service')
    await press('Record what was done')
    expect(device.added.filter(({ kind }) => kind === 'danger answer')).toHaveLength(1)
  })

  test('a reading is judged as it is typed, and kept with the limit as it stands at this moment', async () => {
    const records = fresh.filter((record) => record.id !== on.counter)
    const device = open(records)
    unfold('Add a reading at Low fire')
    fill('What the gauge shows', '0.31')
    choose('When in the run?', 'At the click')
    choose('The contact, at that same moment', /^Open/)
    select('Gauge', 'G-07')
    tick(/^Zeroed just before/)
    tick('Taken at the switch with a tee, the switch still connected')
    expect(screen.getByRole('heading', { level: 2, name: 'Too low to close it' })).toBeTruthy()
    await press('Save this reading')
    const { body } = device.added.find(({ kind }) => kind === 'reading')!
    expect(body).toMatchObject({
      furnaceId: on.furnace,
      positionId: on.low,
      situation: 'as found',
      when: 'as found',
      byTeeAtTheSwitch: true,
      zeroed: true,
      asTyped: '0.31 in. w.c.',
    })
    expect(body.against).toMatchObject([{ action: 'closes', pascals: pascals.make }])
  })

  test('a case that repeats an earlier one says what was fixed then', () => {
    open([
      ...settleableRecords,
      ...after(
        held([
          [
            ids.old,
            'case',
            { furnaceId: on.furnace, complaint: 'No heat', circuit: 'proving circuit' },
            '2026-01-04T09:00:00.000Z',
          ],
          [ids.oldVisit, 'visit', { caseId: ids.old, on: '2026-01-04' }, '2026-01-04T09:01:00.000Z'],
          [
            ids.repair,
            'repair',
            {
              furnaceId: on.furnace,
              caseId: ids.old,
              visitId: ids.oldVisit,
              done: 'Drained the trap',
              switchReplaced: false,
              on: '2026-01-04',
            },
            '2026-01-04T09:30:00.000Z',
          ],
          [
            ids.end,
            'ending',
            {
              caseId: ids.old,
              visitId: ids.oldVisit,
              how: 'repaired, not proven',
              mainCause: 'trap-plugged',
            },
            '2026-01-04T09:40:00.000Z',
          ],
          ...theCase.map(({ id: of, kind, body }): [string, string, Record<string, unknown>] => [
            of,
            kind,
            body,
          ]),
        ]),
      ),
    ])
    const repeat = screen.getByRole('complementary', { name: 'Repeats an earlier case' })
    expect(repeat.textContent).toContain('4 Jan 2026')
    expect(repeat.textContent).toMatch(/Cause then, presumed: .+Drained the trap/)
    expect(repeat.textContent).toContain('No reading was taken then')
  })

  test('the switch comes last: what is missing is listed, and ticks itself off as it is recorded', async () => {
    open(fresh)
    const last = () => within(screen.getByRole('article', { name: 'The switch comes last' }))
    const count = () => last().getByRole('status').textContent!
    const before = count()
    expect(before).toMatch(/^1 of \d+ are on record/)
    expect(last().queryByText(/Replace it with/)).toBeNull()
    await see('Hose', 'On, whole, tight and clear')
    unfold('Record the part number on the switch')
    fill('Part number, as the switch prints it', 'OM-7731')
    await press('Save the part number')
    expect(count()).not.toBe(before)
  })

  test('after a visit has ended nothing can be tapped until a new one begins', async () => {
    const ended = held([
      [ids.end, 'ending', { caseId: ids.case, visitId: ids.visit, how: 'waiting for part' }],
    ]).map((record) => ({ ...record, seq: 300 }))
    const device = open([...fresh, ...ended])
    expect(screen.getByText(/It lacks:/)).toBeTruthy()
    expect(screen.getByText('The part number that is waited for.')).toBeTruthy()
    unfold('Sound: 0 of 6 checked')
    for (const button of screen.getAllByRole<HTMLButtonElement>('button', { name: 'Not checked' }))
      expect(button.disabled).toBe(true)
    await press('Begin a visit today')
    expect(device.added.at(-1)).toMatchObject({ kind: 'visit', body: { caseId: ids.case } })
    expect(screen.getByRole('link', { name: 'End the visit' })).toBeTruthy()
  })

  test('a CO test asks for the limit and where it is printed, and fills in none', async () => {
    const device = open(fresh)
    unfold('Add a CO test')
    fill('CO in the room, ppm', '3')
    fill('The limit your employer has set for the room, ppm', '9')
    fill('CO in the flue, ppm', '24 26 25')
    await press('Save this CO test')
    expect(screen.getByText(/Type the oxygen, or tick/)).toBeTruthy()
    fill('Oxygen in the flue, per cent', '8')
    fill('The limit for CO in the flue, air-free, ppm', '100')
    await press('Save this CO test')
    expect(device.added.filter(({ kind }) => kind === 'combustion test')).toEqual([])
    fill('Where that limit is printed', 'Unit manual, page 31')
    await press('Save this CO test')
    expect(device.added.at(-1)).toMatchObject({
      kind: 'combustion test',
      body: { roomCoPpm: 3, flueCoPpm: [24, 26, 25], oxygenPercent: 8, flueCoLimitPpm: 100 },
    })
  })

  test('a case that is not on this device says so, and leads to the list', () => {
    openAt('/case?id=nothing')
    renderOn(fakeDevice({ records: fresh }), <WorkCaseScreen />)
    expect(screen.getByRole('heading', { level: 1 }).textContent).toBe('This case is not on this device')
  })
})
