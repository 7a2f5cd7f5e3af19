import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { RepairScreen } from '@/app/furnace/RepairScreen'
import { addedId, fakeDevice, renderOn } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press, select } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (query = `furnace=${ids.furnace}&position=${ids.low}`) => {
  openAt(`/furnace/repair?${query}`)
  const device = fakeDevice({ records: equipmentRecords })
  return { device, ...renderOn(device, <RepairScreen />) }
}

const pickPart = (partNumber: string) => {
  fill('Which switch was fitted: look for it by part number', partNumber)
  choose('Which switch was fitted?', new RegExp(`^${partNumber}`))
}

test('a repair with the factory part of its position is recorded, and only such parts are offered', async () => {
  const { device, container } = open()
  const parts = screen.getByRole('group', { name: 'Which switch was fitted?' })
  expect(
    within(parts)
      .getAllByRole('radio')
      .map((radio) => radio.getAttribute('value')),
  ).toEqual(['', ids.oldPart, ids.newPart])
  fill('What was done', 'Factory switch fitted')
  choose('Which switch was fitted?', /^OM-8802/)
  fill('On which day', '2026-01-13')
  await press('Record the repair')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'repair',
      body: {
        furnaceId: ids.furnace,
        positionId: ids.low,
        done: 'Factory switch fitted',
        fittedPart: ids.newPart,
        on: '2026-01-13',
      },
    },
  ])
  expect(wentTo()).toEqual([`/furnace?id=${ids.furnace}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a repair that fitted no switch needs no position', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  fill('What was done', 'Drain cleared')
  fill('On which day', '2026-01-13')
  await press('Record the repair')
  expect(device.added.map(({ body }) => body)).toEqual([
    { furnaceId: ids.furnace, done: 'Drain cleared', on: '2026-01-13' },
  ])
})

test.each([
  ['a general-purpose switch', 'GP-ADJ-1'],
  ['a part of which nobody has said what it is', 'XR-55'],
])(
  '%s is refused by its rule, with a link to record it as found fitted, and nothing typed is lost',
  async (_, part) => {
    const { device } = open()
    fill('What was done', 'Switch fitted')
    pickPart(part)
    await press('Record the repair')
    const refusal = screen.getByRole('alert')
    expect(refusal.textContent).toContain('no general-purpose switch')
    expect(refusal.textContent).toContain(
      'Only a part that the maker names for this furnace can be recorded as a repair.',
    )
    expect(
      within(refusal)
        .getByRole('link', { name: 'It is already in: record it as found fitted, when and by whom.' })
        .getAttribute('href'),
    ).toBe(`/found-fitted?position=${ids.low}&furnace=${ids.furnace}`)
    expect(screen.getByLabelText<HTMLInputElement>('What was done').value).toBe('Switch fitted')
    expect(device.added).toEqual([])
  },
)

test('the factory part of another position is refused: a rating is never carried over', async () => {
  const { device } = open()
  fill('What was done', 'Switch fitted')
  pickPart('OM-9140')
  await press('Record the repair')
  expect(screen.getByRole('alert').textContent).toContain('named for another switch position of the furnace')
  expect(device.added).toEqual([])
  select('Switch position', 'High fire')
  await press('Record the repair')
  expect(device.added.map(({ body }) => body.positionId)).toEqual([ids.high])
})

test('a part without its position, and a repair without words, are asked for at the field', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  pickPart('OM-7731')
  await press('Record the repair')
  expect(describedBy(screen.getByLabelText('What was done'))).toContain('Say what was done.')
  expect(describedBy(screen.getByLabelText('Switch position'))).toContain(
    'which switch position the part went into',
  )
  expect(device.added).toEqual([])
})

test('without a furnace it asks which one, instead of recording a repair of none', () => {
  open('')
  expect(screen.getByText('Which furnace was repaired?')).toBeTruthy()
})
