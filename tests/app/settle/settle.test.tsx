import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { SettleScreen } from '@/app/settle/SettleScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { addedId, dispatcher, fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, tick } from '../setup/hands'
import { disputedRecords, equipmentRecords, ids, pascals, settleableRecords } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (records: readonly HeldRecord[], me = dispatcher) => {
  openAt(`/settle?position=${ids.low}&action=closes`)
  const device = fakeDevice({ records, me })
  return { device, ...renderOn(device, <SettleScreen />) }
}

test('both sides stand with their numbers, their proof, their dates and what each says letter for letter', async () => {
  const { container } = open(settleableRecords)
  const one = screen.getByRole('article', { name: 'One side: likelier by what is on file' })
  const other = screen.getByRole('article', { name: 'Another side' })
  expect(one.textContent).toContain('0.58')
  expect(one.textContent).toContain(
    'Factory technical support, read back, Orrinmoor technical line, ref. T-5512',
  )
  expect(one.textContent).toContain('12 Jan 2026')
  expect(one.textContent).toContain('-.58 WC CLOSE')
  expect(other.textContent).toContain('0.42')
  expect(other.textContent).toContain('Hobb & Lane counter, ref. C-91')
  expect(other.textContent).toContain('6 Jan 2026')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a dispute is settled by the report that qualifies, against the reports of another value, with a reason', async () => {
  const { device } = open(settleableRecords)
  choose('Which report settles it?', /closes at zero point five eight/)
  const against = within(screen.getByRole('group', { name: 'Which reports does it overrule?' }))
  expect(
    against.getAllByRole<HTMLInputElement>('checkbox', { checked: true }).map(({ name }) => name),
  ).toEqual([`overruled-${ids.counter}`])
  expect(screen.getByRole('status').textContent).toMatch(
    /It would then stand as 0\.58 in\. w\.c\., (Verified|Supported)/,
  )
  fill('Why does it settle the dispute?', 'The counter read the break point.')
  await press('Settle the dispute')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'settlement',
      body: {
        positionId: ids.low,
        action: 'closes',
        pascals: pascals.make,
        limit: 'nominal',
        evidenceReportId: ids.support,
        overruledReportIds: [ids.counter],
        reason: 'The counter read the break point.',
      },
    },
  ])
  expect(wentTo()).toEqual([`/setpoint?position=${ids.low}`])
})

test('whoever is led here by an answer finds it chosen, with what stands against it ticked', async () => {
  openAt(`/settle?position=${ids.low}&action=closes&evidence=${ids.support}`)
  const device = fakeDevice({ records: settleableRecords, me: dispatcher })
  renderOn(device, <SettleScreen />)
  fill('Why does it settle the dispute?', 'Read back digit by digit.')
  await press('Settle the dispute')
  expect(device.added.map(({ body }) => body)).toMatchObject([
    { evidenceReportId: ids.support, overruledReportIds: [ids.counter] },
  ])
})

test('only reports that can settle a dispute are offered', () => {
  open(settleableRecords)
  const offered = within(screen.getByRole('group', { name: 'Which report settles it?' })).getAllByRole(
    'radio',
  )
  expect(offered.map((radio) => radio.getAttribute('value'))).toEqual([ids.support])
})

test('what is open is asked at its place, and nothing typed is lost', async () => {
  const { device } = open(settleableRecords)
  fill('Why does it settle the dispute?', 'Asked twice.')
  await press('Settle the dispute')
  expect(describedBy(screen.getByRole('group', { name: 'Which report settles it?' }))).toContain(
    'Choose the report',
  )
  choose('Which report settles it?', /closes at zero point five eight/)
  tick(/closes at zero point four two/)
  await press('Settle the dispute')
  expect(screen.getByText('Tick the reports that it overrules.')).toBeTruthy()
  expect(screen.getByLabelText<HTMLInputElement>('Why does it settle the dispute?').value).toBe(
    'Asked twice.',
  )
  expect(device.added).toEqual([])
})

test('evidence that is older than what it should overrule is shown to settle nothing, before it is saved', () => {
  const records = settleableRecords.map((record) =>
    record.id === ids.support ? { ...record, body: { ...record.body, saidOn: '2025-11-01' } } : record,
  )
  open(records)
  choose('Which report settles it?', /closes at zero point five eight/)
  expect(screen.getByRole('status').textContent).toContain('It would still be in dispute:')
})

test('without a report that can settle it, the way to add one is shown first', () => {
  open(disputedRecords)
  expect(screen.getByText('No report on file can settle it yet')).toBeTruthy()
  expect(
    screen.getByRole('link', { name: 'Add that report first, then settle with it' }).getAttribute('href'),
  ).toBe(`/report?position=${ids.low}`)
})

test('a technician is told who settles it, and what can be done meanwhile', () => {
  open(settleableRecords, technician)
  expect(screen.getByRole('alert').textContent).toContain('A dispatcher or manager settles it')
  expect(screen.queryByRole('button', { name: 'Settle the dispute' })).toBeNull()
  expect(screen.getByRole('link', { name: 'ask the Phone desk for it' })).toBeTruthy()
})

test('a rating that is not in dispute, or not on file, is said to need no settling', () => {
  open(equipmentRecords)
  expect(screen.getByText('This rating is not in dispute')).toBeTruthy()
})
