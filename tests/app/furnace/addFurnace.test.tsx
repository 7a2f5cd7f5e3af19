import { screen } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { leadingBack } from '@/app/equipment/form/returnTo'
import { AddFurnaceScreen } from '@/app/furnace/AddFurnaceScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const model = 'Model number, as the data plate prints it'

test('a furnace is added letter for letter, its elevation in feet kept in metres, with the range its model fits', async () => {
  openAt('/furnace/add')
  const device = fakeDevice({ records: equipmentRecords })
  const { container } = renderOn(device, <AddFurnaceScreen />)
  fill('Site label', 'Quarry Lane 8')
  fill('Branch', 'North')
  fill(model, 'LF2-070-b')
  fill('Revision or series', 'B')
  fill('Serial number', 'S2301-007')
  choose('Which furnace range is it of?', /^Orrinmoor Larkfell 2.*stands for LF2-070-b/)
  fill('Elevation of the site, in feet', '4,800')
  expect(describedBy(screen.getByLabelText('Elevation of the site, in feet'))).toBe('4,800 ft (1,463 m)')
  choose('Fuel', 'propane')
  fill('Length of the vent, in feet', '25')
  fill('What the vent is made of', 'plastic, 2 in.')
  await press('Add this furnace')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'furnace',
      body: {
        siteLabel: 'Quarry Lane 8',
        branch: 'North',
        rangeId: ids.range,
        model: 'LF2-070-b',
        revision: 'B',
        serial: 'S2301-007',
        elevationMetres: 4800 * 0.3048,
        fuel: 'propane',
        ventLengthMetres: 25 * 0.3048,
        ventMaterial: 'plastic, 2 in.',
      },
    },
  ])
  expect(wentTo()).toEqual([`/furnace?id=${addedId(1)}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('another serial at a site label on file is pointed out, and can be recorded as its replacement', async () => {
  openAt('/furnace/add')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddFurnaceScreen />)
  fill('Site label', 'mill row 12')
  fill(model, 'LF2-080-C')
  fill('Serial number', 'S2511-400')
  expect(screen.getByText(/A replaced furnace starts its own history/)).toBeTruthy()
  await press('Add this furnace')
  expect(describedBy(screen.getByRole('group', { name: 'Is it the same furnace?' }))).toContain('Say whether')
  expect(device.added).toEqual([])
  choose('Is it the same furnace?', /^It replaces Mill Row 12/)
  await press('Add this furnace')
  expect(device.added.map(({ body }) => body)).toEqual([
    {
      siteLabel: 'mill row 12',
      model: 'LF2-080-C',
      serial: 'S2511-400',
      fuel: 'not stated',
      replaces: ids.furnace,
    },
  ])
  expect(wentTo()).toEqual([`/furnace?id=${addedId(1)}`])
})

test('the same serial is never offered as a replacement of itself', () => {
  openAt('/furnace/add')
  renderOn(fakeDevice({ records: equipmentRecords }), <AddFurnaceScreen />)
  fill('Site label', 'Mill Row 12')
  fill('Serial number', 's2204 118')
  expect(screen.getByRole('radio', { name: /^The same furnace as Mill Row 12/ })).toBeTruthy()
  expect(screen.queryByRole('radio', { name: /^It replaces/ })).toBeNull()
})

test('a furnace is recorded anew with what was missing, and the two are then joined', async () => {
  openAt(`/furnace/add?again=${ids.bareFurnace}`)
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddFurnaceScreen />)
  expect(screen.getByLabelText<HTMLInputElement>(model).value).toBe('LF2-060-A')
  choose('Which furnace range is it of?', /^Orrinmoor Larkfell 2/)
  await press('Add this furnace')
  expect(device.added.map(({ body }) => body)).toEqual([
    { siteLabel: 'Tarn Gate 3', rangeId: ids.range, model: 'LF2-060-A', fuel: 'not stated' },
  ])
  expect(wentTo()).toEqual([`/equipment/join?kind=furnace&kept=${addedId(1)}&duplicate=${ids.bareFurnace}`])
})

test('what cannot be read or cannot be is said at its field, and nothing typed is lost', async () => {
  openAt('/furnace/add')
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddFurnaceScreen />)
  fill('Site label', 'Quarry Lane 8')
  fill(model, 'QZ-1')
  fill('Elevation of the site, in feet', 'up high')
  await press('Add this furnace')
  const elevation = screen.getByLabelText('Elevation of the site, in feet')
  expect(describedBy(elevation)).toContain('Type the elevation in feet as a number')
  fill('Elevation of the site, in feet', '48000')
  await press('Add this furnace')
  expect(describedBy(elevation)).toContain('No furnace stands above 9,000 m.')
  expect(screen.getByLabelText<HTMLInputElement>('Site label').value).toBe('Quarry Lane 8')
  expect(device.added).toEqual([])
})

test('a furnace missing from a form is added and leads back there, named in the address', async () => {
  openAt('/furnace/add?then=%2Fcases%2Fnew')
  renderOn(fakeDevice({ records: equipmentRecords }), <AddFurnaceScreen />)
  fill('Site label', 'Quarry Lane 8')
  fill(model, 'QZ-1')
  await press('Add this furnace')
  expect(wentTo()).toEqual([`/cases/new?on=${addedId(1)}`])
})

test('the way back leads nowhere else than into this application', async () => {
  openAt('/furnace/add?then=https%3A%2F%2Fweir.example')
  renderOn(fakeDevice({ records: equipmentRecords }), <AddFurnaceScreen />)
  fill('Site label', 'Quarry Lane 8')
  fill(model, 'QZ-1')
  await press('Add this furnace')
  expect(wentTo()).toEqual([`/furnace?id=${addedId(1)}`])
})

test('in the place of a furnace: site and height stay, everything else is read off the new plate', async () => {
  openAt(
    leadingBack(`/furnace/add?replaces=${ids.furnace}&serial=S2511-400`, `/cases/new?furnace=${ids.furnace}`),
  )
  const device = fakeDevice({ records: equipmentRecords })
  renderOn(device, <AddFurnaceScreen />)
  expect(screen.getByLabelText<HTMLInputElement>(model).value).toBe('')
  fill(model, 'LF2-080-C')
  await press('Add this furnace')
  expect(device.added.map(({ body }) => body)).toEqual([
    {
      siteLabel: 'Mill Row 12',
      branch: 'North',
      model: 'LF2-080-C',
      serial: 'S2511-400',
      elevationMetres: 4800 * 0.3048,
      fuel: 'not stated',
      replaces: ids.furnace,
    },
  ])
  expect(wentTo()).toEqual([`/cases/new?furnace=${ids.furnace}&on=${addedId(1)}`])
})
