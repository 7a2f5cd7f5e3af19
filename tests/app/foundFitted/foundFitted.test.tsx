import { screen, within } from '@testing-library/react'
import { expect, test, vi } from 'vitest'
import { dayOf } from '@/app/equipment/form/today'
import { FoundFittedScreen } from '@/app/foundFitted/FoundFittedScreen'
import { fittedDangers } from '@/app/foundFitted/fittedWords'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { type FoundFittedBody, foundFittedBody } from '@/lib/records/kinds/foundFitted'
import { addedId, fakeDevice, renderOn, technician } from '../setup/fakeDevice'
import { openAt, wentTo } from '../setup/fakeNavigation'
import { choose, describedBy, fill, press } from '../setup/hands'
import { equipmentRecords, ids } from '../setup/smallFile'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

const open = (query: string) => {
  openAt(`/found-fitted?${query}`)
  const device = fakeDevice({ records: equipmentRecords, me: technician })
  return { device, ...renderOn(device, <FoundFittedScreen />) }
}

test('what was found is recorded letter for letter, also when it was us, and then says plainly what to do', async () => {
  const { device, container } = open(`position=${ids.low}&furnace=${ids.furnace}`)
  choose('What is in?', /^Adjustable or general-purpose switch/)
  fill('What is printed on it', 'GP-ADJ-1 .20–1.0')
  choose('Is it one of the parts on file?', /^GP-ADJ-1/)
  fill('When was it fitted?', 'December 2024')
  choose('Who fitted it?', /^Us/)
  fill('Found on', '2026-01-09')
  await press('Record what was found')
  expect(device.added).toEqual([
    {
      id: addedId(1),
      kind: 'found fitted',
      body: {
        furnaceId: ids.furnace,
        positionId: ids.low,
        partId: ids.generic,
        printed: 'GP-ADJ-1 .20–1.0',
        what: 'adjustable or general-purpose switch',
        fittedWhen: 'December 2024',
        fittedBy: 'us',
        foundOn: '2026-01-09',
      },
    },
  ])
  expect(wentTo()).toEqual([`/found-fitted?position=${ids.low}&furnace=${ids.furnace}&saved=${addedId(1)}`])
  const now = screen.getByRole('region', { name: 'What to do now' })
  expect(document.activeElement).toBe(now)
  expect(
    within(now)
      .getAllByRole('listitem')
      .map((step) => step.textContent),
  ).toEqual([
    'Gas and power off, if that is safe.',
    'Leave it off.',
    'Tag it.',
    'Tell the occupant, and whoever your local rules name.',
  ])
  expect(now.textContent).toContain('The furnace is not proven safe until the factory part is back.')
  const part = screen.getByRole('article', { name: 'The factory part' })
  expect(part.textContent).toContain('OM-7731')
  expect(
    within(part)
      .getByRole('link', { name: 'The factory part is in: record the repair' })
      .getAttribute('href'),
  ).toBe(`/furnace/repair?position=${ids.low}&furnace=${ids.furnace}`)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what a refusal knew of the switch is in the form already, and can be changed', async () => {
  const { device } = open(`position=${ids.low}&fitted=${ids.generic}&printed=.20–1.0`)
  fill('When was it fitted?', 'not known')
  choose('Who fitted it?', 'Not known')
  await press('Record what was found')
  expect(device.added.map(({ body }) => body)).toMatchObject([
    {
      positionId: ids.low,
      partId: ids.generic,
      printed: '.20–1.0',
      what: 'adjustable or general-purpose switch',
    },
  ])
})

test('a number that was read off the switch names its part on file', async () => {
  const { device } = open(`furnace=${ids.furnace}&printed=gp adj 1`)
  fill('When was it fitted?', 'not known')
  choose('Who fitted it?', 'Not known')
  await press('Record what was found')
  expect(device.added.map(({ body }) => body)).toMatchObject([{ partId: ids.generic, printed: 'gp adj 1' }])
})

test('it is accepted with nothing known but that something is there', async () => {
  const { device } = open('')
  choose('What is in?', /^Not known yet/)
  fill('What is printed on it', 'nothing')
  fill('When was it fitted?', 'not known')
  choose('Who fitted it?', 'Not known')
  await press('Record what was found')
  expect(device.added.map(({ body }) => body)).toEqual([
    {
      printed: 'nothing',
      what: 'not known',
      fittedWhen: 'not known',
      fittedBy: 'not known',
      foundOn: dayOf(new Date()),
    },
  ])
  expect(screen.getByRole('region', { name: 'What to do now' }).textContent).toContain('Leave it off.')
})

test('somebody else can be named, and a furnace that is not on file by its model', async () => {
  const { device } = open('')
  choose('What is in?', /^Jumper or bypass/)
  fill('What is printed on it', 'nothing')
  fill('When was it fitted?', '2023')
  choose('Who fitted it?', 'Somebody else')
  fill('Who, as far as it matters', 'the seller of the house')
  fill('Model number, as the data plate prints it', 'QZ-1')
  await press('Record what was found')
  expect(device.added.map(({ body }) => body)).toMatchObject([
    { what: 'jumper or bypass', fittedBy: 'the seller of the house', model: 'QZ-1' },
  ])
})

test('what is left open is asked at its place, and nothing typed is lost', async () => {
  const { device } = open(`furnace=${ids.furnace}`)
  fill('What is printed on it', 'GP-ADJ-1')
  await press('Record what was found')
  expect(describedBy(screen.getByRole('group', { name: 'What is in?' }))).toContain('not known yet')
  expect(describedBy(screen.getByRole('group', { name: 'Who fitted it?' }))).toContain('“Us” is an answer')
  expect(describedBy(screen.getByLabelText('When was it fitted?'))).toContain('or not known')
  expect(screen.getByLabelText<HTMLInputElement>('What is printed on it').value).toBe('GP-ADJ-1')
  expect(device.added).toEqual([])
})

test('every sort of thing that can be found has a sentence that says why it is a danger', () => {
  const file = foldTeamFile(equipmentRecords)
  const body = (what: FoundFittedBody['what'], partId?: string): FoundFittedBody => ({
    printed: 'nothing',
    what,
    fittedWhen: '2023',
    fittedBy: 'us',
    foundOn: '2026-01-09',
    ...(partId === undefined ? {} : { partId }),
  })
  for (const what of foundFittedBody.shape.what.options)
    expect(fittedDangers(body(what), file).join(' ')).toMatch(/proven|proves|prove/)
  expect(fittedDangers(body('not known', ids.generic), file)).toEqual([
    'An adjustable or general-purpose switch is fitted: nobody has proven that it shows too little air.',
  ])
})
