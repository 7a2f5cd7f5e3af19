import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { AddGaugeScreen } from '@/app/gauges/AddGaugeScreen'
import { GaugesScreen } from '@/app/gauges/GaugesScreen'
import { toPascals } from '@/lib/core/pressure'
import { addedId, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, select } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const accuracy = 'How does its sheet state the accuracy?'

test('the register says of each gauge how far it can be trusted, and in words that it is past due', async () => {
  openAt('/gauges')
  const { container } = renderOn(fakeDevice({ records: equipmentRecords }), <GaugesScreen />)
  const sheet = screen.getByRole('article', { name: 'G-07' })
  expect(sheet.textContent).toContain('Past due: its calibration ran out on 30 Jun 2025.')
  expect(sheet.textContent).toContain('± 1 % of reading, plus 2 counts')
  expect(sheet.textContent).toContain('20 in. w.c.')
  expect(sheet.textContent).toContain('0.001 in. w.c.')
  expect(await accessibilityFaults(container)).toEqual([])
})

test('with no gauge on file it says why one is needed, and leads to the form', () => {
  openAt('/gauges')
  renderOn(fakeDevice(), <GaugesScreen />)
  expect(screen.getByRole('link', { name: /Add the first gauge/ }).getAttribute('href')).toBe('/gauges/add')
})

test('my usual gauge is kept as a preference, and the other preferences stay as they were', async () => {
  const records = [
    ...equipmentRecords,
    ...held([['01920000-0000-7000-8000-0000000000aa', 'preference', { unit: 'Pa', theme: 'dark' }]]).map(
      (record) => ({ ...record, seq: 40 }),
    ),
  ]
  openAt('/gauges')
  const device = fakeDevice({ records })
  renderOn(device, <GaugesScreen />)
  await press('Make G-07 my usual gauge')
  expect(device.added).toEqual([
    { id: addedId(1), kind: 'preference', body: { unit: 'Pa', theme: 'dark', gaugeId: ids.gauge } },
  ])
  expect(within(screen.getByRole('article', { name: 'G-07' })).getByText('My usual gauge')).toBeTruthy()
  expect(screen.queryByRole('button', { name: /my usual gauge/ })).toBeNull()
})

test('a gauge is added in pascals from what is typed in its own unit, and its accuracy is shown back first', async () => {
  openAt('/gauges/add')
  const device = fakeDevice()
  const { container } = renderOn(device, <AddGaugeScreen />)
  fill('The gauge’s name', 'G-09')
  choose(accuracy, /^Per cent of reading or of full scale/)
  fill('Per cent of the reading', '1')
  fill('Per cent of full scale', '0,5')
  fill('Full scale, in in. w.c.', '20')
  fill('Smallest step it shows, in in. w.c.', '0.01')
  fill('Calibration due', '2026-09-30')
  const shown = screen.getAllByRole('status').map((each) => each.textContent)
  expect(shown.join()).toContain(
    'When it shows 0.60 in. w.c., the pressure is within ± 0.10 in. w.c. of that.',
  )
  await press('Add this gauge')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'gauge',
      body: {
        name: 'G-09',
        unit: 'inH2O',
        percentOfReading: 1,
        percentOfSpan: 0.5,
        combine: 'greater',
        spanPascals: toPascals(20, 'inH2O'),
        resolutionPascals: toPascals(0.01, 'inH2O'),
        calibrationDue: '2026-09-30',
      },
    },
  ])
  expect(wentTo()).toEqual(['/gauges'])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('only the figures of the chosen accuracy form are asked for and recorded', async () => {
  openAt('/gauges/add')
  const device = fakeDevice()
  renderOn(device, <AddGaugeScreen />)
  fill('The gauge’s name', 'Tube 1')
  select('Unit it displays', 'Pa')
  choose(accuracy, /^Per cent of full scale/)
  fill('Per cent of full scale', '3')
  choose(accuracy, /^Only the resolution is known/)
  expect(screen.queryByLabelText('Per cent of full scale')).toBeNull()
  fill('Full scale, in Pa', '500')
  fill('Smallest step it shows, in Pa', '25')
  await press('Add this gauge')
  expect(device.added.map(({ body }) => body)).toEqual([
    { name: 'Tube 1', unit: 'Pa', combine: 'plus', spanPascals: 500, resolutionPascals: 25 },
  ])
})

test('what cannot be read or cannot be is said at its field, and nothing typed is lost', async () => {
  openAt('/gauges/add')
  const device = fakeDevice()
  renderOn(device, <AddGaugeScreen />)
  choose(accuracy, /^Per cent of full scale/)
  fill('Per cent of full scale', '150')
  fill('Full scale, in in. w.c.', 'twenty')
  fill('Smallest step it shows, in in. w.c.', '30')
  await press('Add this gauge')
  expect(describedBy(screen.getByLabelText('The gauge’s name'))).toContain(
    'Type what is written on the gauge',
  )
  expect(describedBy(screen.getByLabelText('Per cent of full scale'))).toContain('More than 100 per cent')
  expect(describedBy(screen.getByLabelText('Full scale, in in. w.c.'))).toContain(
    'as a number, for instance 20',
  )
  fill('The gauge’s name', 'G-09')
  fill('Per cent of full scale', '0.5')
  fill('Full scale, in in. w.c.', '20')
  await press('Add this gauge')
  expect(describedBy(screen.getByLabelText('Smallest step it shows, in in. w.c.'))).toContain(
    'The resolution is coarser than the whole span.',
  )
  expect(screen.getByLabelText<HTMLInputElement>('The gauge’s name').value).toBe('G-09')
  expect(device.added).toEqual([])
})

test('a name that reads the same as a gauge on file is pointed out before it is saved', async () => {
  openAt('/gauges/add')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddGaugeScreen />)
  fill('The gauge’s name', 'g 07')
  choose(accuracy, /^Only the resolution is known/)
  fill('Full scale, in in. w.c.', '20')
  fill('Smallest step it shows, in in. w.c.', '0.01')
  await press('Add this gauge')
  expect(device.added).toEqual([])
  choose('Is it the same gauge?', /^The same gauge as G-07/)
  await press('Add this gauge')
  expect(wentTo()).toEqual([`/equipment/join?kind=gauge&kept=${addedId(1)}&duplicate=${ids.gauge}`])
})
