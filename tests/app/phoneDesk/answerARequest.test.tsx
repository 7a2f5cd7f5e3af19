import { cleanup, screen, within } from '@testing-library/react'
import type { ReactElement } from 'react'
import { expect, test, vi } from 'vitest'
import { AddMakerScreen } from '@/app/equipment/AddMakerScreen'
import { AddPositionScreen } from '@/app/equipment/AddPositionScreen'
import { AddRangeScreen } from '@/app/equipment/AddRangeScreen'
import { EquipmentScreen } from '@/app/equipment/EquipmentScreen'
import { RangeScreen } from '@/app/equipment/RangeScreen'
import { PhoneDeskScreen } from '@/app/phoneDesk/PhoneDeskScreen'
import { ReportScreen } from '@/app/report/ReportScreen'
import { addedId, type FakeDevice, fakeDevice, held, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, fill, press, select } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const request = '01920000-0000-7000-8000-0000000000c1'
const asking = (body: Record<string, unknown>) => [
  ...equipmentRecords,
  ...held([[request, 'rating request', { printed: 'nothing', needs: [], ...body }]]).map((record) => ({
    ...record,
    seq: 60,
  })),
]
const unknownModel = asking({ model: 'TN4-1', positionName: 'Low fire', furnaceId: ids.bareFurnace })

const at = (href: string, device: FakeDevice, page: ReactElement) => {
  cleanup()
  openAt(href)
  renderOn(device, page)
}
const hrefOf = (name: string | RegExp) => screen.getByRole('link', { name }).getAttribute('href')!
const lastWentTo = () => wentTo().at(-1)!

test('a request of a model that is not on file leads through its range and its switch to its answer', async () => {
  const device = fakeDevice({ records: unknownModel })
  at('/phone-desk', device, <PhoneDeskScreen />)
  at(hrefOf('Add the range and switch, then the answer'), device, <EquipmentScreen />)
  expect(document.body.textContent).toContain('For the question of Ines Talvik')
  at(hrefOf('Add the furnace range, then its switches'), device, <AddRangeScreen />)
  expect(document.body.textContent).toContain('switch Low fire. Its answer comes next.')

  at(hrefOf(/^Not in the list\? Add the maker/), device, <AddMakerScreen />)
  fill('The maker’s name', 'Vellamark')
  await press('Add this maker')
  at(lastWentTo(), device, <AddRangeScreen />)
  fill('Name of the range', 'Tarn 4')
  await press('Add this range')
  at(lastWentTo(), device, <AddPositionScreen />)
  expect(screen.getByLabelText<HTMLInputElement>('What the position is called').value).toBe('Low fire')
  choose('Start from a usual position', /^Low fire/)
  await press('Add this position')
  const position = addedId(3)
  expect(lastWentTo()).toBe(`/report?request=${request}&position=${position}&furnace=${ids.bareFurnace}`)

  at(lastWentTo(), device, <ReportScreen />)
  fill('Letter for letter, as printed, written or said', 'CLOSE -.58 WC')
  select('What does the number rest on?', 'Hand-written or remembered')
  choose('Which furnaces does the source say it holds for?', 'Every one of this range')
  await press('Save the report')
  expect(device.added.at(-1)).toMatchObject({
    kind: 'report',
    body: { positionId: position, requestId: request },
  })
  at('/phone-desk', device, <PhoneDeskScreen />)
  expect(screen.getByText('Nobody is waiting for a rating')).toBeDefined()
})

test('a request whose range turns out to be on file is answered for the switch that is chosen there', () => {
  const device = fakeDevice({ records: asking({ model: 'LF2-080-B' }) })
  at('/phone-desk', device, <PhoneDeskScreen />)
  at(hrefOf('Add the range and switch, then the answer'), device, <EquipmentScreen />)
  expect(hrefOf('Record the answer for High fire')).toBe(`/report?request=${request}&position=${ids.high}`)
  expect(hrefOf('Add its switch position')).toBe(
    `/equipment/add-position?range=${ids.range}&request=${request}`,
  )
  at(hrefOf('Orrinmoor Larkfell 2'), device, <RangeScreen />)
  const high = screen.getByRole('article', { name: 'High fire' })
  expect(within(high).getByRole('link', { name: 'Record the answer' }).getAttribute('href')).toBe(
    `/report?request=${request}&position=${ids.high}`,
  )
})

test('a range near in name that is used instead carries the request along', async () => {
  const device = fakeDevice({ records: unknownModel })
  at(`/equipment/add-range?maker=${ids.maker}&model=TN4-1&request=${request}`, device, <AddRangeScreen />)
  fill('Name of the range', 'Larkfel 2')
  await press('Use Orrinmoor Larkfell 2')
  expect(lastWentTo()).toBe(`/equipment/range?id=${ids.range}&request=${request}`)
})

test('a request that was withdrawn is carried no further', () => {
  const gone = held([
    ['01920000-0000-7000-8000-0000000000c2', 'withdrawal', { record: request, reason: 'Asked twice.' }],
  ]).map((record) => ({ ...record, seq: 61 }))
  const device = fakeDevice({ records: [...unknownModel, ...gone] })
  at(`/equipment?model=TN4-1&request=${request}`, device, <EquipmentScreen />)
  expect(hrefOf('Add the furnace range, then its switches')).toBe('/equipment/add-range?model=TN4-1')
})
