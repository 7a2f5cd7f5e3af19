import { act, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { SetpointScreen } from '@/app/setpoint/SetpointScreen'
import { fullNotice } from '../cases/end/provenCase'
import { fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { fill, press } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids, pascals, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (records = disputedRecords, query = `position=${ids.low}`) => {
  openAt(`/setpoint?${query}`)
  return act(async () => renderOn(fakeDevice({ records }), <SetpointScreen />))
}

describe('SetpointScreen', () => {
  test('an opened setpoint counts as looked up; one that is not on the device does not', async () => {
    const device = fakeDevice({ records: disputedRecords })
    openAt(`/setpoint?position=${ids.low}`)
    const { unmount } = await act(async () => renderOn(device, <SetpointScreen />))
    unmount()
    openAt('/setpoint?position=01920000-0000-7000-8000-0000000000ff')
    await act(async () => renderOn(device, <SetpointScreen />))
    expect(device.lookedUp).toEqual([ids.low])
  })

  test('shows no number without its level, its sources and their dates', async () => {
    await open()
    const numbers = screen.getAllByText(/^(Closes|Opens) \((make|break) point\)$/)
    expect(numbers.length).toBeGreaterThan(0)
    for (const number of numbers) {
      const whole = number.parentElement!.parentElement!
      expect(whole.textContent).toMatch(/Verified|Supported|Unverified|In dispute/)
      expect(whole.textContent).toMatch(/\d{1,2} Jan 2026/)
    }
  })

  test('a dispute shows both values with their proof, and leads to settling it', async () => {
    await open()
    expect(screen.getAllByText('In dispute').length).toBeGreaterThanOrEqual(2)
    expect(screen.getByRole('heading', { name: 'What stands against it' })).toBeDefined()
    expect(screen.getAllByText(/Data plate, page 1/).length).toBeGreaterThan(0)
    expect(screen.getAllByText(/ref\. C-91/).length).toBeGreaterThan(0)
    expect(screen.getByRole('link', { name: 'Settle the dispute' }).getAttribute('href')).toBe(
      `/settle?position=${ids.low}&action=closes`,
    )
  })

  test('a break beyond its make is named on the face of the card, at both numbers, before anything is unfolded', async () => {
    const counter = disputedRecords.find(({ id }) => id === ids.counter)!
    const said = (end: string, action: string, value: number) => ({
      ...counter,
      id: `01920000-0000-7000-8000-0000000003${end}`,
      seq: 50 + value,
      body: { ...(counter.body as object), action, pascals: value * 249.08891 },
    })
    await open([...equipmentRecords, said('01', 'closes', 0.48), said('02', 'opens', 0.62)])
    const named = screen.getAllByText(/may have been swapped. Ask which is which/)
    expect(named.map((each) => each.closest('details'))).toEqual([null, null])
    expect(named[0]!.textContent).toMatch(/^Look again\. The break point on file is beyond the make point/)
  })

  test('a number of a source that was settled against for its other number says so on the face of the card', async () => {
    const of = (record: string) => settleableRecords.find(({ id }) => id === record)!
    const plate = of(ids.label)
    const opens = {
      ...plate,
      id: '01920000-0000-7000-8000-000000000301',
      seq: 50,
      body: { ...(plate.body as object), action: 'opens', pascals: 0.4 * 249.08891 },
    }
    const support = {
      ...of(ids.support),
      body: { ...(of(ids.support).body as object), pascals: 0.7 * 249.08891 },
    }
    const settled = held([
      [
        '01920000-0000-7000-8000-000000000302',
        'settlement',
        {
          positionId: ids.low,
          action: 'closes',
          pascals: 0.7 * 249.08891,
          limit: 'nominal',
          evidenceReportId: ids.support,
          overruledReportIds: [ids.label],
          reason: 'Asked the maker.',
        },
        '2026-01-13T09:00:00.000Z',
      ],
    ]).map((record) => ({ ...record, seq: 90 }))
    const unsettled = [...equipmentRecords, plate, opens, support]
    await open([...unsettled, ...settled])
    const said = screen.getByText(/^The same data plate was settled against for where it closes\./)
    expect(said.closest('details')).toBeNull()
    expect(said.closest('section')!.textContent).toMatch(/^Opens \(break\spoint\)/)
    expect(within(said).getByRole('link').getAttribute('href')).toBe(`/record?id=${settled[0]!.id}`)
  })

  test('a call without a reference still says on the card who was rung', async () => {
    const counter = disputedRecords.find(({ id }) => id === ids.counter)!
    await open([
      ...equipmentRecords,
      {
        ...counter,
        body: {
          ...(counter.body as object),
          proof: undefined,
          readBack: false,
          origin: 'call Hobb & Lane counter',
          saidBy: 'Odo, counter',
        },
      },
    ])
    expect(document.body.textContent).toContain(
      'Distributor, not read back, Hobb & Lane counter, no reference, said by Odo, counter',
    )
  })

  test('with no rating on file it says so, asks for one, and names work that needs none', async () => {
    await open(equipmentRecords)
    expect(screen.getByText('No rating is on file for this switch.')).toBeDefined()
    expect(screen.getByRole('link', { name: 'Ask for this rating' })).toBeDefined()
    expect(screen.queryByRole('link', { name: 'Compare a reading' })).toBeNull()
    expect(screen.getByText(/hose off the switch first/)).toBeDefined()
    expect(screen.queryByRole('img')).toBeNull()
  })

  test('says what each source says letter for letter', async () => {
    await open()
    const printed = screen.getByText(/What each source says, letter for letter/).closest('details')!
    expect(within(printed).getByText('-.58 WC CLOSE')).toBeDefined()
  })

  test('names the factory part, and the other switches with ratings of their own', async () => {
    await open()
    expect(screen.getByText('OM-8802')).toBeDefined()
    const others = screen.getByRole('navigation', { name: 'Other switches of this range' })
    expect(within(others).getByRole('link', { name: 'High fire' }).getAttribute('href')).toBe(
      `/setpoint?position=${ids.high}`,
    )
  })

  test('an unsuitable switch that was found is said above every number', async () => {
    const found = held([
      [
        '01920000-0000-7000-8000-00000000fffe',
        'found fitted',
        {
          positionId: ids.low,
          printed: 'GP-ADJ-1',
          what: 'adjustable or general-purpose switch',
          fittedWhen: 'last winter',
          fittedBy: 'us',
          foundOn: '2026-01-09',
        },
      ],
    ]).map((record) => ({ ...record, seq: 99 }))
    await open([...disputedRecords, ...found])
    expect(screen.getByText(/not proven safe until the factory part is back/)).toBeDefined()
  })

  const foundIn = (furnaceId: string, end: string): [string, string, Record<string, unknown>] => [
    `01920000-0000-7000-8000-00000000ff${end}`,
    'found fitted',
    {
      positionId: ids.low,
      furnaceId,
      printed: 'GP-ADJ-1',
      what: 'adjustable or general-purpose switch',
      fittedWhen: 'last winter',
      fittedBy: 'us',
      foundOn: '2026-01-09',
    },
  ]
  const factoryIn: [string, string, Record<string, unknown>] = [
    '01920000-0000-7000-8000-00000000ff09',
    'repair',
    {
      furnaceId: ids.furnace,
      positionId: ids.low,
      done: 'Factory switch fitted',
      fittedPart: ids.newPart,
      on: '2026-01-13',
    },
  ]
  const later = (rows: [string, string, Record<string, unknown>][]) =>
    held(rows).map((record, at) => ({ ...record, seq: 90 + at }))

  test('what was found and put right since says so, as the furnace’s page does', async () => {
    await open(
      [...disputedRecords, ...later([foundIn(ids.furnace, '01'), factoryIn])],
      `position=${ids.low}&furnace=${ids.furnace}`,
    )
    expect(screen.getByText(/^Since then, 13 Jan 2026/).textContent).toContain('factory part')
    expect(screen.queryByText(/not proven safe until the factory part is back/)).toBeNull()
  })

  test('what was found in other furnaces is folded behind one line; of this furnace it stands open', async () => {
    const found = later([foundIn(ids.furnace, '01'), foundIn(ids.bareFurnace, '02'), factoryIn])
    const { unmount } = await open([...disputedRecords, ...found])
    const folded = screen.getByText(/^An unsuitable switch was found 2 times/).closest('details')!
    expect(folded.open).toBe(false)
    expect(folded.querySelector('summary')!.textContent).toContain('1 not put right yet')
    expect(within(folded).getAllByText(/^Found fitted/)).toHaveLength(2)
    unmount()
    await open([...disputedRecords, ...found], `position=${ids.low}&furnace=${ids.bareFurnace}`)
    expect(screen.getByText(/^Found fitted/).closest('details')).toBeNull()
    expect(screen.queryByText(/^An unsuitable switch was found/)).toBeNull()
  })

  test('opened for a furnace that is left off, the notice stands above the card; for another it does not', async () => {
    const notice = held([
      ['01920000-0000-7000-8000-00000000fffd', 'shut-down notice', { ...fullNotice, furnaceId: ids.furnace }],
    ]).map((record) => ({ ...record, seq: 98 }))
    const { unmount } = await open(
      [...disputedRecords, ...notice],
      `position=${ids.low}&furnace=${ids.furnace}`,
    )
    const banner = screen.getByRole('region', { name: 'Left off' })
    expect(banner.textContent).toContain('Do not relight until:')
    expect(banner.compareDocumentPosition(screen.getByRole('article', { name: /^Low fire/ }))).toBe(
      Node.DOCUMENT_POSITION_FOLLOWING,
    )
    unmount()
    await open([...disputedRecords, ...notice], `position=${ids.low}&furnace=${ids.bareFurnace}`)
    expect(screen.queryByRole('region', { name: 'Left off' })).toBeNull()
  })

  test('a position that is not on this device says so and leads to Find', async () => {
    await open(equipmentRecords, 'position=01920000-0000-7000-8000-00000000dead')
    expect(screen.getByText('This switch position is not on this device')).toBeDefined()
  })

  const page = { source: 'current literature', proof: { kind: 'document', name: 'LF2 manual', page: '31' } }
  const reports = (bodies: Record<string, unknown>[]) => [
    ...equipmentRecords,
    ...held(
      bodies.map((body, at): [string, string, Record<string, unknown>] => [
        `01920000-0000-7000-8000-00000000aaa${at}`,
        'report',
        { ...disputedRecords.at(-1)!.body, ...page, ...body },
      ]),
    ).map((record, at) => ({ ...record, seq: 50 + at })),
  ]
  /** 0.58 up to 1372 m and 0.42 above, each from a page of the manual. */
  const banded = reports([
    { pascals: pascals.make, elevationBand: { toMetres: 1372 } },
    { pascals: pascals.other, elevationBand: { fromMetres: 1373 } },
  ])

  test('asks for the elevation only where the answer depends on it', async () => {
    const { unmount } = await open(banded)
    expect(screen.getByLabelText('Elevation of the site, in feet')).toBeDefined()
    unmount()
    await open(banded, `position=${ids.low}&elevation=2000`)
    expect(screen.queryByLabelText('Elevation of the site, in feet')).toBeNull()
    expect(screen.getByText('0.42')).toBeDefined()
  })

  test('a number that depends on the elevation is shown nowhere but folded away, under its band', async () => {
    const { container } = await open(banded)
    expect(screen.getByRole('heading', { name: 'Needs the elevation' })).toBeDefined()
    expect(screen.queryByRole('img')).toBeNull()
    const folded = screen.getByText('What sources say, by elevation').closest('details')!
    expect(folded.open).toBe(false)
    expect([...folded.querySelectorAll('section')].map((band) => band.textContent)).toEqual([
      expect.stringMatching(/^Up to 4,501 ft \(1,372 m\).*0\.58.*Unverified 6 Jan 2026.*LF2 manual/),
      expect.stringMatching(/^From 4,505 ft \(1,373 m\) up.*0\.42.*Unverified/),
    ])
    for (const number of screen.getAllByText(/^0\.(58|42)$/)) expect(folded.contains(number)).toBe(true)
    expect(screen.queryByRole('link', { name: 'Compare a reading' })).toBeNull()
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('the elevation is typed where the number would be, in feet, and then the number of its band is there', async () => {
    await open(banded)
    fill('Elevation of the site, in feet', '4,800')
    await press('Show its rating')
    expect(wentTo()).toEqual([`/setpoint?position=${ids.low}&elevation=1463.04`])
    expect(screen.getByText('0.42')).toBeDefined()
    expect(screen.queryByText('0.58')).toBeNull()
  })

  test('says for which height the answer holds, and lets it be changed', async () => {
    await open(banded, `position=${ids.low}&elevation=1524`)
    const forWhat = screen.getByRole('region', { name: 'For which furnace' })
    expect(forWhat.textContent).toContain('For 5,000 ft (1,524 m).')
    expect(screen.queryByLabelText('Elevation of the site, in feet')).toBeNull()
    await press('Change')
    expect((screen.getByLabelText('Elevation of the site, in feet') as HTMLInputElement).value).toBe('5000')
    fill('Elevation of the site, in feet', '500')
    await press('Show its rating')
    expect(wentTo()).toEqual([`/setpoint?position=${ids.low}&elevation=152.4`])
    expect(screen.getByRole('region', { name: 'For which furnace' }).textContent).toContain(
      'For 500 ft (152 m).',
    )
    expect(screen.getByText('0.58')).toBeDefined()
    expect(screen.queryByLabelText('Elevation of the site, in feet')).toBeNull()
  })

  test('a height on the furnace’s record is said too, and is changed there and not here', async () => {
    await open(banded, `position=${ids.low}&furnace=${ids.furnace}&elevation=10`)
    const forWhat = screen.getByRole('region', { name: 'For which furnace' })
    expect(forWhat.textContent).toContain('4,800 ft (1,463 m)')
    expect(within(forWhat).getByRole('link').getAttribute('href')).toBe(`/furnace?id=${ids.furnace}`)
    expect(within(forWhat).queryByRole('button')).toBeNull()
  })

  test.each(['99999', '-1700'])(
    'a height of %s ft is refused at its field: no furnace stands there',
    async (typed) => {
      await open(banded)
      fill('Elevation of the site, in feet', typed)
      await press('Show its rating')
      expect(wentTo()).toEqual([])
      expect(screen.getByLabelText('Elevation of the site, in feet').getAttribute('aria-invalid')).toBe(
        'true',
      )
      expect(screen.getByText(/Check the elevation\.$/)).toBeDefined()
    },
  )

  test('a height in the address at which no furnace can stand is asked for again', async () => {
    await open(banded, `position=${ids.low}&elevation=99999`)
    expect(screen.getByLabelText('Elevation of the site, in feet')).toBeDefined()
    expect(screen.queryByRole('region', { name: 'For which furnace' })).toBeNull()
  })

  test('a height at the very end of a band, typed in feet as the band was, is in it', async () => {
    await open(
      reports([{ pascals: pascals.other, elevationBand: { fromMetres: 3800 * 0.3048 } }]),
      `position=${ids.low}`,
    )
    fill('Elevation of the site, in feet', '3800')
    await press('Show its rating')
    expect(screen.getAllByText('0.42').length).toBeGreaterThan(0)
    expect(screen.queryByText(/^On file only/)).toBeNull()
  })

  test('where a rating is on file for other heights only, it says for which, and shows no number of them', async () => {
    await open(
      reports([{ pascals: pascals.other, elevationBand: { fromMetres: 3800 * 0.3048 } }]),
      `position=${ids.low}&elevation=152.4`,
    )
    expect(screen.getByText('On file only from 3,800 ft (1,158 m) up.')).toBeDefined()
    expect(screen.getByText(/This furnace stands at 500 ft \(152 m\)/)).toBeDefined()
    expect(screen.queryByText('No rating is on file for this switch.')).toBeNull()
    expect(screen.queryByText('0.42')).toBeNull()
    expect(screen.queryByRole('link', { name: 'Compare a reading' })).toBeNull()
  })

  test.each(['', 'high up', '99000'])(
    'no elevation (“%s”) is asked for again at its field',
    async (typed) => {
      await open(banded)
      fill('Elevation of the site, in feet', typed)
      await press('Show its rating')
      expect(wentTo()).toEqual([])
      expect(screen.getByLabelText('Elevation of the site, in feet').getAttribute('aria-invalid')).toBe(
        'true',
      )
      expect(document.activeElement).toBe(screen.getByLabelText('Elevation of the site, in feet'))
    },
  )

  test('a number that covers every elevation stays folded while a source of some elevations names another', async () => {
    await open(
      reports([{ pascals: pascals.make }, { pascals: pascals.other, elevationBand: { fromMetres: 1373 } }]),
    )
    expect(screen.getByRole('heading', { name: 'Needs the elevation' })).toBeDefined()
    const folded = screen.getByText('What sources say, by elevation').closest('details')!
    for (const number of screen.getAllByText(/^0\.(58|42)$/)) expect(folded.contains(number)).toBe(true)
  })

  test('a number that every source agrees on is shown, whatever the elevation may add to its level', async () => {
    await open(
      reports([
        { pascals: pascals.make, source: 'data plate' },
        { pascals: pascals.make, elevationBand: { toMetres: 1372 } },
      ]),
    )
    expect(screen.getByRole('heading', { name: 'Needs the elevation' })).toBeDefined()
    expect(screen.getByText('The rating below may be another once it is known.')).toBeDefined()
    expect(screen.queryByText('What sources say, by elevation')).toBeNull()
    expect(screen.getByRole('img', { name: /Closes at 0\.58/ })).toBeDefined()
  })

  test('of two numbers only the one that depends on the elevation is folded away', async () => {
    await open(
      reports([
        { action: 'opens', pascals: 0.3 * 249.08891 },
        { pascals: pascals.make, elevationBand: { toMetres: 1372 } },
        { pascals: pascals.other, elevationBand: { fromMetres: 1373 } },
      ]),
    )
    const folded = screen.getByText('What sources say, by elevation').closest('details')!
    expect(folded.contains(screen.getByText('0.30'))).toBe(false)
    expect(folded.contains(screen.getByText('0.58'))).toBe(true)
    expect(screen.getByRole('img').getAttribute('aria-label')).not.toContain('0.58')
  })

  test('a number for one serial is not shown as the range’s own: the serial is asked for', async () => {
    const oneSerial = reports([
      {
        pascals: pascals.make,
        serialRange: { from: 'K7', to: 'K7' },
        revisionRange: undefined,
        elevationBand: undefined,
        proof: undefined,
      },
    ])
    const { unmount } = await open(oneSerial)
    expect(screen.getByRole('heading', { name: 'Needs the serial' })).toBeDefined()
    expect(screen.queryByRole('img')).toBeNull()
    for (const number of screen.getAllByText('0.58')) expect(number.closest('details')?.open).toBe(false)
    unmount()
    await open(oneSerial, `position=${ids.low}&serial=K7`)
    expect(screen.queryByRole('heading', { name: 'Needs the serial' })).toBeNull()
    expect(screen.getByRole('img', { name: /Closes at 0\.58/ })).toBeDefined()
  })

  test('a lead that was made on another furnace says so beside its number, with what it holds for', async () => {
    await open(
      reports([
        { pascals: pascals.make, revisionRange: undefined, elevationBand: undefined, serialRange: undefined },
      ]),
    )
    expect(
      screen.getByText(/^A lead only\. It was made on another furnace.*Holds for: Which furnaces/),
    ).toBeDefined()
  })
})
