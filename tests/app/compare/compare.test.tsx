import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { CompareScreen } from '@/app/compare/CompareScreen'
import { fullNotice } from '../cases/end/provenCase'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, fill, press, select, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids, pascals } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

/** One make point, 0.58 ± 0.05 in. w.c., from the data plate. */
const rated = [
  ...equipmentRecords,
  ...held([
    [
      ids.label,
      'report',
      {
        ...disputedRecords.at(-2)!.body,
        pascals: pascals.make,
        toleranceAbove: 0.05 * 249.08891,
        toleranceBelow: 0.05 * 249.08891,
      },
    ],
  ]).map((record) => ({ ...record, seq: 50 })),
]

/** The same with a break point, 0.45 ± 0.05 in. w.c., from the data plate as well. */
const ratedTwice = [
  ...rated,
  ...held([
    [
      ids.counter,
      'report',
      {
        ...rated.at(-1)!.body,
        action: 'opens',
        asWritten: 'OPEN -.45 ±.05 WC',
        pascals: 0.45 * 249.08891,
      },
    ],
  ]).map((record) => ({ ...record, seq: 51 })),
]

const open = (records = rated, furnace = '') => {
  openAt(`/compare?position=${ids.low}${furnace && `&furnace=${furnace}`}`)
  const device = fakeDevice({ records })
  renderOn(device, <CompareScreen />)
  return device
}
const read = (typed: string, phase: RegExp | string = 'At the click', contact = /^Open/) => {
  fill('What the gauge shows', typed)
  choose('When in the run?', phase)
  choose('The contact, at that same moment', contact)
  select('Gauge', 'G-07')
  tick(/^Zeroed just before/)
}
/** A healthy furnace's hot reading of 0.60 in. w.c. at its low-fire switch. */
const withBaseline = [
  ...rated,
  ...held([
    [
      '01920000-0000-7000-8000-0000000000ba',
      'reading',
      {
        furnaceId: ids.furnace,
        positionId: ids.low,
        samples: [0.6 * 249.08891],
        sense: 'suction',
        kind: 'one-port',
        between: 'port and room',
        tap: 'collector box',
        stage: 'low fire',
        door: 'on',
        phase: 'steady hot',
        contacts: 'closed',
        situation: 'as found',
        when: 'as found',
        byTeeAtTheSwitch: true,
        gaugeId: ids.gauge,
        zeroed: true,
        asTyped: '0.60 in. w.c.',
      },
    ],
    [
      '01920000-0000-7000-8000-0000000000bb',
      'baseline',
      {
        furnaceId: ids.furnace,
        readingId: '01920000-0000-7000-8000-0000000000ba',
        occasion: 'annual service',
        on: '2025-09-30',
      },
    ],
  ]).map((record, index) => ({ ...record, seq: 60 + index })),
]
const title = (name: string) => screen.getByRole('heading', { level: 2, name })

describe('CompareScreen', () => {
  test('asks first about danger, and opens the danger sheet in one tap', () => {
    open()
    expect(screen.getByRole('complementary', { name: 'Caution' }).textContent).toMatch(
      /Room CO meter on\? Anything smelling, scorched, leaking or anyone unwell\?/,
    )
    expect(screen.getByRole('link', { name: 'Open the danger sheet' })).toBeDefined()
  })

  test('names what is missing before there is a verdict: reading, phase, contact, gauge', () => {
    open()
    const gaps = title('No verdict yet').closest('article')!.textContent
    expect(gaps).toContain('Type what the gauge shows')
    expect(gaps).toContain('Say when in the run')
    expect(gaps).toContain('Say what the contact showed')
    expect(gaps).toContain('Choose the gauge')
  })

  test('too low with contacts open: the switch agrees, leave it fitted', () => {
    open()
    read('0.44')
    expect(title('Too low to close it')).toBeDefined()
    expect(screen.getByText(/Leave the switch fitted/)).toBeDefined()
    expect(screen.getByText('Data plate on the unit, Data plate, page 1')).toBeDefined()
  })

  test('the margin stands in both units, and the verdict’s line stays in sight', () => {
    open()
    read('0.44')
    expect(document.body.textContent).toContain('−0.14 in. w.c.')
    expect(document.body.textContent).toContain('−35 Pa')
    expect(screen.getByRole('status', { name: '' })).toBeDefined()
  })

  test('enough names combustion all the same', () => {
    open()
    read('0.80', 'At the click', /^Closed/)
    expect(title('Enough to close it')).toBeDefined()
    expect(screen.getByText(/says nothing about combustion/)).toBeDefined()
  })

  test('enough with contacts open: lists what must be on record, and the switch comes last', () => {
    open()
    read('0.80')
    const missing = screen.getByRole('region', { name: 'Before the switch may be called faulty' })
    const items = [...missing.querySelectorAll('li')].map((item) => item.textContent ?? '')
    expect(items.length).toBeGreaterThan(8)
    expect(items[0]).toMatch(/^Vent end outdoors/)
    expect(missing.textContent).toMatch(/drain/i)
  })

  test('too close to call, hot and open: what it needs to close again, with its standing, and the air path in order', () => {
    open(ratedTwice)
    read('0.46', 'Hot, steady')
    expect(title('Too close to call')).toBeDefined()
    const judged = screen.getByRole('heading', { level: 3, name: 'Will it stay on?' }).closest('section')!
    expect(judged.textContent).toContain('against opens at 0.45 in. w.c.')
    expect(judged.textContent).toContain('To close again it needs:')
    expect(judged.textContent).toMatch(
      /Closes \(make\u00a0point\)0\.58 in\. w\.c\.± 0\.05144 PaSupported 5 Jan 2026/,
    )
    const steps = [...title('Too close to call').closest('article')!.querySelectorAll('ol li')].map(
      (step) => step.textContent ?? '',
    )
    const at = (words: RegExp) => steps.findIndex((step) => words.test(step))
    expect(at(/Leave it fitted/)).toBeGreaterThan(-1)
    expect(at(/^Outside: Outside first/)).toBeGreaterThan(at(/Leave it fitted/))
    expect(at(/Open the vent at the furnace for a moment/)).toBeGreaterThan(at(/^Outside: Outside first/))
  })

  test('a switch that holds hot says what it would need once it has opened', () => {
    open(ratedTwice)
    read('0.80', 'Hot, steady', /^Closed/)
    expect(screen.getByText('Once it has opened, to close again it needs:')).toBeDefined()
  })

  test('without a make point on file none is named', () => {
    open([...equipmentRecords, ratedTwice.at(-1)!])
    read('0.46', 'Hot, steady')
    expect(title('Too close to call')).toBeDefined()
    expect(screen.queryByText(/To close again/)).toBeNull()
  })

  test('more than the gauge can show gets no verdict, and says where the gauge ends', () => {
    open()
    read('85')
    expect(title('No verdict yet')).toBeDefined()
    expect(screen.getByText(/more than this gauge can show: it ends at 20/)).toBeDefined()
  })

  test('an unusual size is looked at again before there is a verdict', () => {
    open()
    read('5.8')
    expect(title('No verdict yet')).toBeDefined()
    tick(/^I looked again/)
    expect(screen.queryByRole('heading', { level: 2, name: 'No verdict yet' })).toBeNull()
  })

  test('two numbers with opposite signs are no reading', () => {
    open()
    fill('Lowest seen', '+0.40')
    read('-0.44')
    expect(screen.getByText(/One number says suction, another pressure/)).toBeDefined()
  })

  test('closed though too low from a cold start: stop, and nothing else is advised', () => {
    open()
    read('0.30', 'At the click', /^Closed/)
    expect(screen.getByRole('alert', { name: '' }).textContent ?? '').toBeDefined()
    // In the sheet, and in the line that stays in sight while the keys are pressed.
    expect(screen.getAllByText(/^Stop: it is closed at a reading too low/)).toHaveLength(2)
    expect(screen.getByRole('heading', { level: 2, name: 'Stop' })).toBeTruthy()
    expect(screen.queryByRole('heading', { name: 'What to do, in this order' })).toBeNull()
  })

  test('with a furnace in the address its own baseline says what is higher than expected', () => {
    open(withBaseline, ids.furnace)
    read('0.80', 'Hot, steady', /^Closed/)
    expect(title('Higher than expected')).toBeDefined()
    expect(screen.getByText(/^Higher than expected is not good margin/)).toBeDefined()
  })

  test('a reading no higher than weather alone can make it is not called higher than expected', () => {
    open(withBaseline, ids.furnace)
    read('0.68', 'Hot, steady', /^Closed/)
    expect(screen.queryByText(/igher than expected|higher than it should be/)).toBeNull()
  })

  test.each([
    ['no furnace in the address', '', 'Hot, steady'],
    ['another furnace', ids.bareFurnace, 'Hot, steady'],
    ['another phase', ids.furnace, 'After light-off'],
  ])('with %s nothing says what to expect, and that is said', (_, furnace, phase) => {
    open(withBaseline, furnace)
    read('0.80', phase, /^Closed/)
    expect(screen.queryByRole('heading', { level: 2, name: 'Higher than expected' })).toBeNull()
    expect(screen.getByText(/^Whether it is higher than it should be can’t be judged/)).toBeDefined()
  })

  test('a gauge that was not zeroed comes first', () => {
    open()
    read('0.44')
    tick(/^Zeroed just before/)
    expect(title('Zero first')).toBeDefined()
  })

  test('a minus sign is more suction, not less pressure', () => {
    open()
    read('-0.44')
    expect(title('Too low to close it')).toBeDefined()
  })

  test('the keypad types, and a kept start keeps its unit when the unit is changed', async () => {
    open()
    for (const key of ['0', 'Decimal point', '4', '4']) await press(key)
    expect((screen.getByLabelText('What the gauge shows') as HTMLInputElement).value).toBe('0.44')
    await press('Keep it, and add another start')
    choose('Unit', 'Pa')
    expect(screen.getByRole('list', { name: 'Separate starts kept' }).textContent).toContain('0.44 in. w.c.')
  })

  test('the uncertainty budget and what was taken for granted are folded away', () => {
    open()
    read('0.44')
    const folded = screen.getByText('What the verdict rests on').closest('details')!
    expect(folded.open).toBe(false)
    expect(folded.textContent).toContain('Gauge accuracy')
  })

  test('a rating that nobody has can be compared with nothing, and says so', () => {
    open(equipmentRecords)
    expect(screen.getByText('There is nothing to compare it with')).toBeDefined()
    expect(screen.getByRole('link', { name: 'Ask for this rating' })).toBeDefined()
  })

  test('between two disputed values the rating is settled first', () => {
    open(disputedRecords)
    read('0.50')
    expect(title('Settle the rating first')).toBeDefined()
  })

  test('what was typed is there after a reload', async () => {
    vi.useFakeTimers()
    const device = open()
    fill('What the gauge shows', '0.44')
    await act(async () => vi.advanceTimersByTime(300))
    vi.useRealTimers()
    expect([...device.drafts.values()]).toContainEqual(expect.objectContaining({ typed: '0.44' }))
  })

  test('lowest above highest gets no verdict, and is refused at the field', () => {
    open()
    read('0.65', 'Hot, steady', /^Closed/)
    fill('Lowest seen', '0.9')
    fill('Highest seen', '0.5')
    expect(title('No verdict yet')).toBeDefined()
    expect(screen.getByLabelText('Lowest seen').getAttribute('aria-invalid')).toBe('true')
    expect(screen.getAllByText('The lowest value is above the highest. Swap the two.')).toHaveLength(2)
  })

  test.each([
    ['Lowest seen', '0.80', 'The lowest value is above a reading.'],
    ['Highest seen', '0.60', 'The highest value is below a reading.'],
  ])('%s of %s with a reading of 0.65 is refused at the field', (label, typed, why) => {
    open(ratedTwice)
    read('0.65', 'Hot, steady', /^Closed/)
    expect(title('Enough to hold it closed')).toBeDefined()
    fill(label, typed)
    expect(title('No verdict yet')).toBeDefined()
    expect(screen.getByLabelText(label).getAttribute('aria-invalid')).toBe('true')
    expect(screen.getAllByText(new RegExp(`^${why}`))).toHaveLength(2)
    fill(label, '0.65')
    expect(title('Enough to hold it closed')).toBeDefined()
  })

  const of = {
    notice: '01920000-0000-7000-8000-0000000000c1',
    lifting: '01920000-0000-7000-8000-0000000000c2',
    found: '01920000-0000-7000-8000-0000000000c3',
  }
  const leftOff = [
    ...ratedTwice,
    ...held([[of.notice, 'shut-down notice', { ...fullNotice, furnaceId: ids.furnace }]]).map((record) => ({
      ...record,
      seq: 70,
    })),
  ]

  test('for a furnace that is left off the notice stands on top, and no step runs it', () => {
    open(leftOff, ids.furnace)
    const banner = screen.getByRole('region', { name: 'Left off' })
    expect(banner.textContent).toContain('Do not relight until:')
    expect(banner.compareDocumentPosition(screen.getByLabelText('What the gauge shows'))).toBe(
      Node.DOCUMENT_POSITION_FOLLOWING,
    )
    read('0.80', 'Hot, steady', /^Closed/)
    const verdict = title('Left off: do not relight').closest('article')!
    expect(verdict.textContent).toContain('Enough to hold it closed')
    expect(verdict.textContent).not.toMatch(
      /Running:|inducer only:|Watch the display|says nothing about combustion/,
    )
    expect(verdict.textContent).toContain('what would run it is left out here')
    expect(screen.getAllByRole('status').map((line) => line.textContent)).toContainEqual(
      expect.stringMatching(/^Left off: do not relight\. Enough to hold it closed/),
    )
  })

  test('left off, what must be on record before the switch is called faulty leads nobody to run it', () => {
    open(leftOff, ids.furnace)
    read('0.80')
    expect(title('Left off: do not relight')).toBeDefined()
    expect(screen.queryByRole('region', { name: 'Before the switch may be called faulty' })).toBeNull()
  })

  test.each([
    ['another furnace', leftOff, ids.bareFurnace],
    [
      'a furnace whose notice was lifted',
      [
        ...leftOff,
        ...held([
          [
            of.lifting,
            'lifting',
            { noticeId: of.notice, on: '2026-01-14', because: 'Heat exchanger replaced' },
          ],
        ]).map((record) => ({ ...record, seq: 71 })),
      ],
      ids.furnace,
    ],
  ])('%s has no notice, and every step', (_, records, furnace) => {
    open(records, furnace)
    read('0.80', 'Hot, steady', /^Closed/)
    expect(screen.queryByRole('region', { name: 'Left off' })).toBeNull()
    expect(title('Enough to hold it closed').closest('article')!.textContent).toMatch(
      /Running: Watch the display for at least a minute/,
    )
  })

  test('an unsuitable switch of that furnace is named, also where nobody knows the position', () => {
    const found = {
      furnaceId: ids.furnace,
      printed: 'GP-ADJ-1',
      what: 'adjustable or general-purpose switch',
      fittedWhen: 'last winter',
      fittedBy: 'us',
      foundOn: '2026-01-09',
    }
    const records = [
      ...rated,
      ...held([[of.found, 'found fitted', found]]).map((record) => ({ ...record, seq: 72 })),
    ]
    open(records, ids.furnace)
    expect(screen.getByText(/Adjustable or general-purpose switch/)).toBeDefined()
    expect(screen.getByText('GP-ADJ-1')).toBeDefined()
    expect(screen.getByText(/not proven safe until the factory part is back/)).toBeDefined()
  })

  test('a general-purpose number read off the switch of that furnace is named', () => {
    const records = [
      ...rated,
      ...held([
        [of.found, 'fitted part', { furnaceId: ids.furnace, positionId: ids.low, printed: 'GP-ADJ-1' }],
      ]).map((record) => ({ ...record, seq: 72 })),
    ]
    open(records, ids.furnace)
    expect(screen.getByText(/Read off the switch that is fitted, Low fire/)).toBeDefined()
  })

  /** 0.58 up to 1372 m and 0.42 above. */
  const banded = [
    ...equipmentRecords,
    ...held(
      [
        { pascals: pascals.make, elevationBand: { toMetres: 1372 } },
        { pascals: pascals.other, elevationBand: { fromMetres: 1373 } },
      ].map((body, at): [string, string, Record<string, unknown>] => [
        `01920000-0000-7000-8000-00000000aaa${at}`,
        'report',
        {
          ...disputedRecords.at(-1)!.body,
          source: 'current literature',
          proof: { kind: 'document', name: 'LF2 manual', page: '31' },
          ...body,
        },
      ]),
    ).map((record, at) => ({ ...record, seq: 50 + at })),
  ]

  test('where the rating depends on the height nothing is compared before it is typed; what was typed stays', async () => {
    open(banded)
    read('0.50')
    expect(title('Needs the elevation')).toBeDefined()
    expect(screen.queryByText(/Enough|Too low/)).toBeNull()
    fill('Elevation of the site, in feet', '5000')
    await press('Show its rating')
    expect(wentTo()).toEqual([`/compare?position=${ids.low}&elevation=1524`])
    expect(title('Enough to close it')).toBeDefined()
    const forWhat = screen.getByRole('region', { name: 'For which furnace' })
    expect(forWhat.textContent).toContain('For 5,000 ft (1,524 m).')
    await press('Change')
    fill('Elevation of the site, in feet', '500')
    await press('Show its rating')
    expect(title('Too low to close it')).toBeDefined()
  })

  test('what was typed before comes back with its time and a way to start afresh, but not that the gauge was zeroed', async () => {
    vi.useFakeTimers({ now: new Date('2026-01-12T09:40:00.000Z') })
    const device = open()
    read('0.44')
    await act(async () => vi.advanceTimersByTime(300))
    vi.useRealTimers()
    cleanup()
    await act(async () => renderOn(device, <CompareScreen />))
    expect(screen.getByText(/^This is what you typed here before, 12 Jan 2026, \d{2}:\d{2}/)).toBeDefined()
    expect((screen.getByLabelText('What the gauge shows') as HTMLInputElement).value).toBe('0.44')
    expect((screen.getByLabelText(/^Zeroed just before/) as HTMLInputElement).checked).toBe(false)
    expect(title('Zero first')).toBeDefined()
    await press('Start afresh')
    expect((screen.getByLabelText('What the gauge shows') as HTMLInputElement).value).toBe('')
    expect(screen.queryByText(/^This is what you typed here before/)).toBeNull()
    expect(device.drafts.size).toBe(0)
  })

  test('a unit that is typed beside another that is chosen gets no verdict before it is said which was meant', async () => {
    open()
    read('0.65 Pa')
    expect(title('No verdict yet')).toBeDefined()
    expect(
      screen.getByText(/^“0\.65 Pa” says Pa, and in\. w\.c\. is chosen\. Was in\. w\.c\. meant\?/),
    ).toBeDefined()
    fill('What the gauge shows', '0.65')
    expect(screen.queryByText(/is chosen\. Was/)).toBeNull()
    fill('What the gauge shows', '162 Pa')
    choose('Unit', 'Pa')
    expect(screen.queryByText(/is chosen\. Was/)).toBeNull()
    await press('Keep it, and add another start')
    choose('Unit', 'in. w.c.')
    fill('What the gauge shows', '0.66')
    expect(screen.queryByText(/is chosen\. Was/)).toBeNull()
  })

  test('nonsense is named at the field and keeps what was typed', () => {
    open()
    fireEvent.change(screen.getByLabelText('What the gauge shows'), { target: { value: '0.4x.4' } })
    expect((screen.getByLabelText('What the gauge shows') as HTMLInputElement).value).toBe('0.4x.4')
    expect(screen.queryByRole('heading', { name: 'Too low to close it' })).toBeNull()
  })
})
