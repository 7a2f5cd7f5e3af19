import { screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { BaselineScreen } from '@/app/furnace/baseline/BaselineScreen'
import { checkRecord } from '@/lib/records/checkRecord'
import { expectedAt } from '@/lib/records/view/case/expectedAt'
import { fullNotice, inches, of, type Row, recordsOf } from '../cases/end/provenCase'
import { endedProvenRows } from '../cases/list/someCases'
import { type FakeDevice, fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { openAt } from '../setup/fakeNavigation'
import { choose, fill, press, select, tick } from '../setup/hands'
import { equipmentRecords, ids, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (records = settleableRecords, furnace: string = ids.furnace) => {
  openAt(`/furnace/baseline?id=${furnace}`)
  const device = fakeDevice({ records })
  return { device, ...renderOn(device, <BaselineScreen />) }
}
/** Everything that a healthy hot reading at the low-fire switch says, in the order of the form. */
const readHealthy = (typed = '0.92', contact = /^Closed/): void => {
  choose('At which switch?', 'Low fire')
  fill('What the gauge shows', typed)
  choose('When in the run?', 'Hot, steady')
  choose('The contact, at that same moment', contact)
  select('Gauge', 'G-07')
  tick(/^Zeroed just before/)
  tick(/^Taken at the switch with a tee/)
  fill('On which day', '2026-01-30')
}
const why = () => screen.getByRole('article', { name: 'Not a baseline yet' }).textContent
const nothingAdded = async (device: FakeDevice) => {
  await press('Record the baseline')
  expect(device.added).toEqual([])
}

describe('BaselineScreen', () => {
  test('asks at which switch, and only then for the reading', async () => {
    const { container } = open()
    expect(screen.queryByLabelText('What the gauge shows')).toBeNull()
    choose('At which switch?', 'High fire')
    expect(screen.getByLabelText('What the gauge shows')).toBeTruthy()
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('records the reading and that it is a baseline in one step, as typed and with the limits of that moment', async () => {
    const { device } = open()
    readHealthy()
    fill('Note', 'Filter changed before it')
    await press('Record the baseline')
    const [reading, baseline] = device.added
    expect(reading!.kind).toBe('reading')
    expect(reading!.body).toEqual({
      furnaceId: ids.furnace,
      positionId: ids.low,
      samples: [inches(0.92)],
      sense: 'suction',
      kind: 'one-port',
      between: 'port and room',
      tap: 'collector box',
      stage: 'low fire',
      door: 'on',
      phase: 'steady hot',
      contacts: 'closed',
      averaging: false,
      separateStarts: false,
      situation: 'as found',
      when: 'as found',
      byTeeAtTheSwitch: true,
      gaugeId: ids.gauge,
      zeroed: true,
      asTyped: '0.92 in. w.c.',
      against: [expect.objectContaining({ action: 'closes', pascals: inches(0.58), limit: 'nominal' })],
    })
    expect(baseline).toMatchObject({
      kind: 'baseline',
      body: {
        furnaceId: ids.furnace,
        readingId: reading!.id,
        occasion: 'annual service',
        on: '2026-01-30',
        note: 'Filter changed before it',
      },
    })
    expect([...device.drafts.keys()]).toEqual([])
  })

  test('what it records is taken in by the rules of both kinds, and is what “expected” uses from then on', async () => {
    const { device } = open()
    readHealthy()
    await press('Record the baseline')
    const { file } = device.state()
    const saying = { id: technician.id, role: technician.role, saidAt: '2026-02-01T08:00:00.000Z' }
    for (const { kind, body } of device.added)
      expect(checkRecord(kind, body, file, saying)).toEqual({ ok: true })
    const like = {
      phase: 'steady hot',
      stage: 'low fire',
      between: 'port and room',
      tap: 'collector box',
      sense: 'suction',
    } as const
    expect(expectedAt(file, ids.furnace, like)).toEqual({ kind: 'baselines', pascals: [inches(0.92)] })
  })

  test('shows it back beside the earlier ones of the same switch and phase, in words as well', async () => {
    const earlier: Row = [
      of.more,
      'baseline',
      { furnaceId: ids.furnace, readingId: of.lowAfter, occasion: 'after a proven repair', on: '2026-01-12' },
    ]
    open(recordsOf([...endedProvenRows, earlier]))
    expect(screen.getByRole('article', { name: 'Earlier baselines' }).textContent).toContain('12 Jan 2026')
    readHealthy('0.88')
    await press('Record the baseline')
    const recorded = screen.getByRole('article', { name: 'Recorded' })
    expect(within(recorded).getByRole('status').textContent).toContain(
      '0.88 in. w.c., steady hot, on 30 Jan 2026. One earlier baseline of this switch in this phase, fainter.',
    )
    expect(within(recorded).getByRole('img').getAttribute('aria-label')).toMatch(
      /Reading 0\.88 in\. w\.c\., give or take 0\.01\. Earlier: 0\.92\./,
    )
    expect(within(recorded).getAllByRole('row')).toHaveLength(3)
    await press('Record the next one')
    expect(screen.getByRole('group', { name: 'At which switch?' })).toBeTruthy()
  })

  test('several starts keep what was typed of each, with its unit', async () => {
    const { device } = open()
    readHealthy('0.92')
    await press('Keep it, and add another start')
    choose('Unit', 'Pa')
    fill('What the gauge shows', '230 Pa')
    await press('Record the baseline')
    expect(device.added[0]!.body.asTyped).toBe('0.92 in. w.c., 230 Pa')
    expect(device.added[0]!.body.samples).toHaveLength(2)
  })

  test('at rest it is no baseline', async () => {
    const { device } = open()
    readHealthy()
    choose('When in the run?', 'At rest')
    expect(why()).toContain('At rest no air moves')
    await nothingAdded(device)
  })

  test('without a phase, a contact, a gauge or a tee it is none yet, and each is named', async () => {
    const { device } = open()
    choose('At which switch?', 'Low fire')
    fill('What the gauge shows', '0.92')
    expect(why()).toContain('Say when in the run')
    expect(why()).toContain('Say what the contact showed')
    expect(why()).toContain('Choose the gauge')
    await nothingAdded(device)
    choose('When in the run?', 'Pre-purge')
    choose('The contact, at that same moment', /^Not read/)
    select('Gauge', 'G-07')
    expect(why()).toContain('Zero the gauge first')
    expect(why()).toContain('Tee the gauge in at the switch')
    await nothingAdded(device)
  })

  test('with the contact open while it runs hot it is no healthy furnace: it leads to a case', async () => {
    const { device } = open()
    readHealthy('0.92', /^Open/)
    expect(why()).toContain('so it is no healthy furnace')
    expect(screen.getByRole('link', { name: 'Open a case' }).getAttribute('href')).toBe(
      `/cases/new?furnace=${ids.furnace}`,
    )
    await nothingAdded(device)
  })

  test('an unusual size is looked at again first', async () => {
    const { device } = open()
    readHealthy('9.2')
    await nothingAdded(device)
    tick(/^I looked again/)
    await press('Record the baseline')
    expect(device.added).toHaveLength(2)
  })

  test('without a rating on file a baseline is recorded all the same, held against nothing', async () => {
    const { device } = open(equipmentRecords)
    readHealthy()
    await press('Record the baseline')
    expect(device.added).toHaveLength(2)
    expect(device.added[0]!.body).not.toHaveProperty('against')
  })

  test('a furnace that is left off gives none', () => {
    const notice: Row = [of.notice, 'shut-down notice', { ...fullNotice }]
    open(recordsOf([...endedProvenRows, notice]))
    expect(screen.getByRole('region', { name: 'Left off' })).toBeTruthy()
    expect(screen.getByText('No baseline while the furnace is left off')).toBeTruthy()
    expect(screen.queryByRole('button', { name: 'Record the baseline' })).toBeNull()
  })

  test('a furnace whose range is not on record says so and leads there', () => {
    open(equipmentRecords, ids.bareFurnace)
    expect(
      screen.getByRole('link', { name: 'Record the furnace anew with its range' }).getAttribute('href'),
    ).toBe(`/furnace/add?again=${ids.bareFurnace}`)
  })

  test('a furnace that is not on this device is asked for', () => {
    open(equipmentRecords, '')
    expect(screen.getByRole('heading', { level: 1, name: 'Which furnace is it a baseline of?' })).toBeTruthy()
  })
})
