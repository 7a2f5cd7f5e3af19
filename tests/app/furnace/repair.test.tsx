import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { RepairScreen } from '@/app/furnace/RepairScreen'
import { repairHref } from '@/app/furnace/repairForm'
import { addedId, fakeDevice, held, renderOn } from '../setup/fakeDevice'
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
  choose('Was a pressure switch replaced?', 'Yes')
  fill('Which switch was fitted: look for it by part number', partNumber)
  choose('Which switch was fitted?', new RegExp(`^${partNumber}`))
}

test('a repair with the factory part of its position is recorded, and only such parts are offered', async () => {
  const { device, container } = open()
  expect(screen.queryByRole('group', { name: 'Which switch was fitted?' })).toBeNull()
  choose('Was a pressure switch replaced?', 'Yes')
  const parts = screen.getByRole('group', { name: 'Which switch was fitted?' })
  expect(
    within(parts)
      .getAllByRole('radio')
      .map((radio) => radio.getAttribute('value')),
  ).toEqual([ids.oldPart, ids.newPart])
  fill('What was done', 'Factory switch fitted')
  choose('Which switch was fitted?', /^OM-8802/)
  fill('Where the switch came from', 'Van stock')
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
        switchReplaced: true,
        fittedPart: ids.newPart,
        partFrom: 'Van stock',
        on: '2026-01-13',
      },
    },
  ])
  expect(wentTo()).toEqual([`/furnace?id=${ids.furnace}`])
  expect(await accessibilityFaults(container)).toEqual([])
})

test('a repair that fitted no switch needs no position, and keeps its other parts and its minutes', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  fill('What was done', 'Drain cleared')
  choose('Was a pressure switch replaced?', 'No')
  fill('Other parts and material', 'Drain hose, 1 m, from the van')
  fill('Minutes of work', '35')
  fill('On which day', '2026-01-13')
  await press('Record the repair')
  expect(device.added.map(({ body }) => body)).toEqual([
    {
      furnaceId: ids.furnace,
      done: 'Drain cleared',
      switchReplaced: false,
      parts: 'Drain hose, 1 m, from the van',
      minutes: 35,
      on: '2026-01-13',
    },
  ])
})

test('whether a switch was replaced is never taken for granted, and minutes are a whole number', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  fill('What was done', 'Drain cleared')
  fill('Minutes of work', 'half an hour')
  await press('Record the repair')
  expect(describedBy(screen.getByRole('group', { name: 'Was a pressure switch replaced?' }))).toContain(
    'Say whether a pressure switch was replaced.',
  )
  expect(describedBy(screen.getByLabelText('Minutes of work'))).toContain('for instance 40')
  choose('Was a pressure switch replaced?', 'Yes')
  expect(describedBy(screen.getByRole('group', { name: 'Which switch was fitted?' }))).toContain(
    'Record it as found fitted.',
  )
  expect(device.added).toEqual([])
})

test('a part chosen before it turned out that no switch was replaced is not recorded as fitted', async () => {
  const { device } = open()
  fill('What was done', 'Hose put back')
  pickPart('OM-8802')
  choose('Was a pressure switch replaced?', 'No')
  await press('Record the repair')
  expect(device.added[0]?.body).toMatchObject({ switchReplaced: false })
  expect(device.added[0]?.body).not.toHaveProperty('fittedPart')
})

const caseId = '01920000-0000-7000-8000-0000000000ca'
const visitId = '01920000-0000-7000-8000-0000000000cb'
const ending = '01920000-0000-7000-8000-0000000000cc'
const caseRecords: Parameters<typeof held>[0] = [
  [caseId, 'case', { furnaceId: ids.furnace, complaint: 'No heat', circuit: 'proving circuit' }],
  [visitId, 'visit', { caseId, on: '2026-01-13' }],
]

const openInVisit = (extra: Parameters<typeof held>[0] = [], then = '') => {
  openAt(`${repairHref({ furnaceId: ids.furnace, caseId, visitId })}&position=${ids.low}${then}`)
  const records = [...equipmentRecords, ...held([...caseRecords, ...extra])]
  const device = fakeDevice({ records: records.map((record, index) => ({ ...record, seq: index + 1 })) })
  renderOn(device, <RepairScreen />)
  return device
}

test('opened from a visit it belongs to it, and a switch swap that nothing on record speaks for is taken in', async () => {
  const device = openInVisit()
  expect(screen.getByRole('link', { name: 'The case at Mill Row 12' }).getAttribute('href')).toBe(
    `/case?id=${caseId}`,
  )
  fill('What was done', 'Switch swapped, it clicked')
  pickPart('OM-8802')
  fill('On which day', '2026-01-13')
  await press('Record the repair')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'repair',
      body: {
        furnaceId: ids.furnace,
        caseId,
        visitId,
        positionId: ids.low,
        done: 'Switch swapped, it clicked',
        switchReplaced: true,
        fittedPart: ids.newPart,
        on: '2026-01-13',
      },
    },
  ])
  expect(wentTo()).toEqual([`/case?id=${caseId}`])
})

test('it leads back to where it was opened from', async () => {
  openInVisit([], `&then=${encodeURIComponent(`/case/end?id=${caseId}&visit=${visitId}`)}`)
  fill('What was done', 'Drain cleared')
  choose('Was a pressure switch replaced?', 'No')
  await press('Record the repair')
  expect(wentTo()).toEqual([`/case/end?id=${caseId}&visit=${visitId}`])
})

test('a visit that has ended takes a repair all the same: many are written down in the van', async () => {
  const how = { caseId, visitId, how: 'repaired, not proven' }
  const device = openInVisit([[ending, 'ending', how, '2026-01-13T16:00:00.000Z']])
  fill('What was done', 'Drain cleared')
  choose('Was a pressure switch replaced?', 'No')
  await press('Record the repair')
  expect(device.added).toMatchObject([{ kind: 'repair', body: { caseId, visitId, done: 'Drain cleared' } }])
})

test.each([
  ['a general-purpose switch', 'GP-ADJ-1', ids.generic],
  ['a part of which nobody has said what it is', 'XR-55', ids.unknownPart],
])(
  '%s is refused by its rule, with a link to record it as found fitted, and nothing typed is lost',
  async (_, part, partId) => {
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
    ).toBe(`/found-fitted?position=${ids.low}&furnace=${ids.furnace}&fitted=${partId}`)
    expect(screen.getByLabelText<HTMLInputElement>('What was done').value).toBe('Switch fitted')
    expect(device.added).toEqual([])
  },
)

test.each([
  ['put a jumper across it and fitted a universal switch', '', 'no bypass'],
  ['Fitted a switch', 'universal adjustable switch, set to 0.30', 'no general-purpose switch'],
])('“%s”, parts “%s”, is refused by its words, and nothing typed is lost', async (done, parts, rule) => {
  const { device } = open()
  fill('What was done', done)
  choose('Was a pressure switch replaced?', 'No')
  fill('Other parts and material', parts)
  await press('Record the repair')
  const refusal = screen.getByRole('alert')
  expect(refusal.textContent).toContain(rule)
  expect(
    within(refusal)
      .getByRole('link', { name: /record it as found fitted/ })
      .getAttribute('href'),
  ).toBe(`/found-fitted?position=${ids.low}&furnace=${ids.furnace}`)
  expect(within(refusal).getByRole('link', { name: 'Ask which part and rating is right' })).toBeTruthy()
  expect(screen.getByLabelText<HTMLInputElement>('What was done').value).toBe(done)
  expect(device.added).toEqual([])
  fill('What was done', 'Took the universal switch out and the jumper off')
  fill('Other parts and material', '')
  await press('Record the repair')
  expect(device.added).toHaveLength(1)
})

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

test('everything that does not fit is told in one round', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  fill('What was done', 'd'.repeat(501))
  fill('Minutes of work', '2881')
  await press('Record the repair')
  expect(describedBy(screen.getByLabelText('What was done'))).toContain('longer than 500 characters')
  expect(describedBy(screen.getByLabelText('Minutes of work'))).toContain('More than two days is a slip.')
  expect(describedBy(screen.getByRole('group', { name: 'Was a pressure switch replaced?' }))).toContain(
    'Say whether a pressure switch was replaced.',
  )
  expect(device.added).toEqual([])
})

test('without a furnace it asks which one, instead of recording a repair of none', () => {
  open('')
  expect(screen.getByText('Which furnace was repaired?')).toBeTruthy()
})

test('what was found fitted and is still there can be named as put right', async () => {
  const found = '01920000-0000-7000-8000-0000000000ac'
  const jumper = {
    furnaceId: ids.furnace,
    positionId: ids.low,
    printed: 'nothing',
    what: 'jumper or bypass',
    fittedWhen: 'not known',
    fittedBy: 'not known',
    foundOn: '2026-01-12',
  }
  openAt(`/furnace/repair?furnace=${ids.furnace}`)
  const records = [
    ...equipmentRecords,
    ...held([[found, 'found fitted', jumper]]).map((each) => ({ ...each, seq: 60 })),
  ]
  const device = fakeDevice({ records })
  renderOn(device, <RepairScreen />)
  fill('What was done', 'Jumper taken out')
  choose('Was a pressure switch replaced?', 'No')
  select('Does it put right what was found fitted?', 'Jumper or bypass, found 12 Jan 2026')
  fill('On which day', '2026-01-13')
  await press('Record the repair')
  expect(device.added.map(({ body }) => body)).toEqual([
    {
      furnaceId: ids.furnace,
      done: 'Jumper taken out',
      switchReplaced: false,
      putsRight: found,
      on: '2026-01-13',
    },
  ])
})

test('where nothing was found fitted, that is not asked', () => {
  open()
  expect(screen.queryByText('Does it put right what was found fitted?')).toBeNull()
})
