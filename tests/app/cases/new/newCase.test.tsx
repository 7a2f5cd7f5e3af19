import { act, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { NewCaseScreen } from '@/app/cases/new/NewCaseScreen'
import { leadingBack } from '@/app/equipment/form/returnTo'
import { dispatcher, type FakeDevice, fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt, wentTo } from '../../setup/fakeNavigation'
import { choose, describedBy, fill, press } from '../../setup/hands'
import { equipmentRecords, ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import { fullNotice, of, type Row, recordsOf } from '../end/provenCase'
import { beforeRows, cases, endedProvenRows, someCases } from '../list/someCases'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const open = async (query = `?furnace=${ids.furnace}`, options: Parameters<typeof fakeDevice>[0] = {}) => {
  openAt(`/cases/new${query}`)
  window.history.replaceState(null, '', `/cases/new${query}`)
  const device = fakeDevice({ records: equipmentRecords, ...options })
  const drawn = await act(async () => renderOn(device, <NewCaseScreen />))
  return { device, ...drawn }
}
const said = (device: FakeDevice) => device.added.map(({ kind, body }) => [kind, body])
const furnaces = () =>
  within(screen.getByRole('group', { name: 'Which furnace?' }))
    .getAllByRole('radio')
    .map((radio) => radio.getAttribute('value'))

describe('NewCaseScreen', () => {
  test('adds the case and its first visit in one step, and goes to the case', async () => {
    const { device, container } = await open()
    fill('What is complained of', ' No heat, three blinks ')
    choose('What is it about?', /^Proving circuit/)
    fill('Day of the visit', '2026-02-01')
    fill('Weather', '-14 °C, wind from the north')
    fill('Licence of this visit', 'HV-2207')
    fill('Note', 'Side door.')
    await press('Open the case')
    const [theCase, visit] = device.added
    expect(said(device)).toEqual([
      [
        'case',
        {
          furnaceId: ids.furnace,
          complaint: 'No heat, three blinks',
          circuit: 'proving circuit',
          note: 'Side door.',
        },
      ],
      [
        'visit',
        {
          caseId: theCase!.id,
          on: '2026-02-01',
          weather: '-14 °C, wind from the north',
          licence: 'HV-2207',
        },
      ],
    ])
    expect(visit!.id).not.toBe(theCase!.id)
    expect(wentTo()).toEqual([`/case?id=${theCase!.id}`])
    expect([...device.drafts.keys()]).toEqual([])
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('says what is missing at its field, adds nothing, and loses nothing', async () => {
    const { device } = await open('')
    fill('Weather', 'thaw')
    await press('Open the case')
    expect(describedBy(screen.getByRole('group', { name: 'Which furnace?' }))).toContain('Choose the furnace')
    expect(describedBy(screen.getByLabelText('What is complained of'))).toContain(
      'in the words of the caller',
    )
    expect(describedBy(screen.getByRole('group', { name: 'What is it about?' }))).toContain('Say whether')
    expect(screen.getByLabelText<HTMLInputElement>('Weather').value).toBe('thaw')
    expect(device.added).toEqual([])
  })

  test('a complaint longer than the record takes is refused at its field', async () => {
    const { device } = await open()
    fill('What is complained of', 'x'.repeat(201))
    choose('What is it about?', /^Something else/)
    await press('Open the case')
    expect(describedBy(screen.getByLabelText('What is complained of'))).toContain(
      'The complaint is longer than 200 characters.',
    )
    expect(device.added).toEqual([])
  })

  test('offers today’s furnaces first, then the others; the one that is chosen stands in the address', async () => {
    await open('', { records: someCases })
    expect(furnaces()).toEqual([ids.bareFurnace, ids.furnace])
    choose('Which furnace?', /^Mill Row 12/)
    expect(window.location.search).toBe(`?on=${ids.furnace}`)
    expect(screen.getByRole('link', { name: /^Mill Row 12: LF2-080-B/ })).toBeTruthy()
    await press('Choose another furnace')
    expect(furnaces()).toHaveLength(2)
  })

  test('of many furnaces only today’s are offered before anything is typed, and any is found by its serial', async () => {
    const more: Row[] = Array.from({ length: 9 }, (_, index) => [
      `01920000-0000-7000-8000-00000000e10${index}`,
      'furnace',
      { siteLabel: `Weir ${index}`, model: 'LF2-060-A', serial: `W-90${index}`, fuel: 'not stated' },
    ])
    await open('', { records: recordsOf([...beforeRows, ...more]) })
    expect(furnaces()).toEqual([ids.furnace])
    fill(/look for it by site, model or serial/, 'w904')
    expect(furnaces()[0]).toBe(more[4]![0])
  })

  test('a furnace that is not on file is added first, and the way back keeps what was typed', async () => {
    vi.useFakeTimers()
    const { device, unmount } = await open('')
    expect(screen.getByRole('link', { name: /^Not on file\?/ }).getAttribute('href')).toBe(
      '/furnace/add?then=%2Fcases%2Fnew',
    )
    fill('What is complained of', 'No heat')
    await act(async () => vi.advanceTimersByTime(300))
    vi.useRealTimers()
    unmount()
    await open(`?on=${ids.bareFurnace}`, { drafts: Object.fromEntries(device.drafts) })
    expect(screen.getByLabelText<HTMLInputElement>('What is complained of').value).toBe('No heat')
    expect(screen.getByRole('link', { name: /^Tarn Gate 3/ })).toBeTruthy()
    await press('Start afresh')
    expect(screen.getByLabelText<HTMLInputElement>('What is complained of').value).toBe('')
  })

  test('an earlier case on the same circuit is repeated: what was fixed, the cause, and the readings', async () => {
    await open(undefined, { records: recordsOf(endedProvenRows) })
    expect(screen.getByRole('complementary', { name: 'The last case here' }).textContent).toContain(
      'The last case here was that of 12 Jan 2026, proving circuit',
    )
    choose('What is it about?', /^Proving circuit/)
    const earlier = screen.getByRole('complementary', { name: 'This repeats an earlier case' })
    expect(earlier.textContent).toContain(
      'This repeats the case of 12 Jan 2026, proving circuit: No heat since the night.',
    )
    expect(earlier.textContent).toContain('Fixed then: Trap taken out, flushed and primed.')
    expect(earlier.textContent).toMatch(/Cause, (confirmed|proven durable)/)
    expect(
      within(earlier)
        .getAllByRole('listitem')
        .map((item) => item.textContent),
    ).toEqual([
      '.41 WC, Low fire, pre-purge, contact open, as found',
      '.92 WC, Low fire, steady hot, contact closed, after repair',
      '.92 WC, High fire, steady hot, contact closed, after repair',
    ])
    expect(
      within(earlier).getByRole('link', { name: 'Read the case of 12 Jan 2026' }).getAttribute('href'),
    ).toBe(`/case/history?id=${of.case}`)
    choose('What is it about?', /^Something else/)
    expect(screen.queryByRole('complementary', { name: 'This repeats an earlier case' })).toBeNull()
  })

  test('a case that is still open is where the work goes on', async () => {
    await open(undefined, { records: recordsOf(beforeRows) })
    choose('What is it about?', /^Proving circuit/)
    const still = screen.getByRole('complementary', { name: 'A case is still open' })
    expect(still.textContent).toContain('The case of 4 Dec 2025 is still open, repaired, not proven')
    expect(within(still).getByRole('link').getAttribute('href')).toBe(`/case?id=${cases.before}`)
  })

  test('another serial on the plate warns, is recorded, and offers to add the new furnace in its place', async () => {
    const { device } = await open()
    fill('Serial number on the plate today', 'S2511-400')
    const warning = screen
      .getByText(/Is it another furnace\? Then record that it was replaced/)
      .closest('div')!
    expect(warning.textContent).toContain('S2204-118')
    expect(warning.textContent).toContain('A replaced furnace starts its own history')
    expect(
      within(warning)
        .getByRole('link', { name: /^Add the new furnace in its place/ })
        .getAttribute('href'),
    ).toBe(
      leadingBack(
        `/furnace/add?replaces=${ids.furnace}&serial=S2511-400`,
        `/cases/new?furnace=${ids.furnace}`,
      ),
    )
    fill('What is complained of', 'No heat')
    choose('What is it about?', /^Proving circuit/)
    await press('Open the case')
    expect(device.added[0]!.body.serialSeen).toBe('S2511-400')
  })

  test.each([
    ['the serial on file', 'S2204-118', undefined],
    ['the same with a look-alike and a blank', 's22O4 118', 's22O4 118'],
  ])('%s is no other furnace', async (_, typed, seen) => {
    const { device } = await open()
    fill('Serial number on the plate today', typed)
    expect(screen.queryByText(/Is it another furnace/)).toBeNull()
    fill('What is complained of', 'No heat')
    choose('What is it about?', /^Proving circuit/)
    await press('Open the case')
    expect(device.added[0]!.body.serialSeen).toBe(seen)
  })

  test('a serial that is on file for another furnace offers that one', async () => {
    const newer: Row = [
      '01920000-0000-7000-8000-00000000e200',
      'furnace',
      {
        siteLabel: 'Mill Row 12',
        model: 'LF2-080-C',
        serial: 'S2511-400',
        fuel: 'not stated',
        replaces: ids.furnace,
      },
    ]
    const { device } = await open(undefined, { records: recordsOf([newer]) })
    expect(screen.getByText(/^It was replaced by Mill Row 12: LF2-080-C/)).toBeTruthy()
    fill('Serial number on the plate today', 'S2511-400')
    await press('It is Mill Row 12: LF2-080-C, serial S2511-400')
    expect(screen.queryByText(/Is it another furnace/)).toBeNull()
    fill('What is complained of', 'No heat')
    choose('What is it about?', /^Proving circuit/)
    await press('Open the case')
    expect(device.added[0]!.body.furnaceId).toBe(newer[0])
    expect(device.added[0]!.body.serialSeen).toBeUndefined()
  })

  test('a furnace that is left off says so first of all', async () => {
    const notice: Row = ['01920000-0000-7000-8000-00000000e300', 'shut-down notice', { ...fullNotice }]
    await open(undefined, { records: recordsOf([...endedProvenRows, notice]) })
    const banner = screen.getByRole('region', { name: 'Left off' })
    expect(banner.textContent).toContain('Do not relight until: the heat exchanger is replaced')
    const caution = screen.getByRole('complementary', { name: 'Caution' })
    expect(banner.compareDocumentPosition(caution)).toBe(Node.DOCUMENT_POSITION_FOLLOWING)
  })

  test('a technician’s last licence is there already, nobody else’s', async () => {
    const { unmount } = await open(undefined, { records: recordsOf(beforeRows) })
    expect(screen.getByLabelText<HTMLInputElement>('Licence of this visit').value).toBe('HV-2207')
    unmount()
    await open(undefined, { records: recordsOf(beforeRows), me: dispatcher })
    expect(screen.getByLabelText<HTMLInputElement>('Licence of this visit').value).toBe('')
  })
})
