import { screen, within } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { LeftUndoneScreen } from '@/app/callbacks/leftUndone/LeftUndoneScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import {
  aCase,
  at,
  aVisit,
  base,
  ending,
  ids,
  notice,
  opened,
  repair,
  said,
} from '../../records/view/case/team'
import { fakeDevice, renderOn } from '../setup/fakeDevice'
import { press } from '../setup/hands'
import { accessibilityFaults } from '../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../setup/fakeNavigation'))

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] })
  vi.setSystemTime(new Date(at(20)))
})
afterEach(() => {
  vi.useRealTimers()
})

const id = (number: number): string => `01940000-0000-7000-8000-${String(600 + number).padStart(12, '0')}`
const open = async (...records: readonly (HeldRecord | readonly HeldRecord[])[]) => {
  const drawn = renderOn(fakeDevice({ records: [...base, ...records.flat()] }), <LeftUndoneScreen />)
  await screen.findByRole('navigation', { name: 'Lists on this page' })
  return drawn
}
const section = (name: RegExp) => screen.getByRole('region', { name })

test('with nothing left undone each list says what, why and what to do', async () => {
  const { container } = await open()
  for (const words of [
    'No unsuitable switch is on record as fitted',
    'No furnace is left off',
    'Every visit is ended',
    'Every repair is proven',
    'No furnace came back twice',
    'No rating is in dispute',
    'No request has grown old',
    'Nothing is worth a call just now',
    'No gauge is due',
  ])
    expect(screen.getByText(words)).toBeTruthy()
  expect(await accessibilityFaults(container)).toEqual([])
})

test('while it works it says so', () => {
  renderOn(fakeDevice({ records: base }), <LeftUndoneScreen />)
  expect(screen.getByRole('status').textContent).toContain('Going through your team’s records')
})

test('a visit never ended has its age and the way to end it', async () => {
  await open(opened)
  const list = section(/^Visits never ended 1$/)
  const link = within(list).getByRole('link', { name: 'Mill Row 12: LF2-080-B, serial S2204-118' })
  expect(link.getAttribute('href')).toBe(`/case/end?id=${ids.case}&visit=${ids.visit}`)
  expect(list.textContent).toContain('12 Jan 2026, 8 days ago: visit not ended')
})

test('a furnace left off leads to its notice, one without a notice to its case, and that one comes first', async () => {
  const other = id(50)
  const off = notice()
  await open(
    opened,
    off,
    said('furnace', { siteLabel: 'Tarn Gate 3', model: 'LF2-060-A', fuel: 'not stated' }, { id: other }),
    aCase({ furnaceId: other }, { id: id(51), at: at(14, '08:00') }),
    aVisit({ caseId: id(51) }, { id: id(52), at: at(14, '09:00') }),
    ending({ caseId: id(51), visitId: id(52), how: 'left off' }, { at: at(14, '13:00') }),
  )
  const links = within(section(/^Furnaces left off 2$/)).getAllByRole('link')
  expect(links.map((link) => [link.textContent, link.getAttribute('href')])).toEqual([
    ['Tarn Gate 3: LF2-060-A', `/case?id=${id(51)}`],
    ['Mill Row 12: LF2-080-B, serial S2204-118', `/notice?id=${off.id}`],
  ])
})

test('a repair that claims proof says what it lacks', async () => {
  await open(opened, repair(), ending())
  expect(section(/^Repairs not proven 1$/).textContent).toContain(
    'said to be proven, and lacks: High fire: a hot reading after the repair',
  )
})

test('the lists are named at the top with their counts, what can hurt people first', async () => {
  await open(opened, notice())
  const glance = screen.getByRole('navigation', { name: 'Lists on this page' })
  expect(
    within(glance)
      .getAllByRole('link')
      .map((link) => link.textContent),
  ).toEqual([
    '0 Unsuitable switches still fitted',
    '1 Furnaces left off',
    '1 Visits never ended',
    '0 Repairs not proven',
    '0 Furnaces with 2 or more repeats',
    '0 Ratings in dispute',
    '0 Rating requests grown old',
    '1 Ratings most used and least verified',
    '0 Gauges due',
  ])
})

test('a long list shows ten, says of how many, and shows the rest when asked', async () => {
  const many = Array.from({ length: 12 }, (_, index) => [
    said(
      'furnace',
      { siteLabel: `Row ${index}`, model: 'LF2', fuel: 'not stated' },
      { id: id(100 + 3 * index) },
    ),
    aCase({ furnaceId: id(100 + 3 * index) }, { id: id(101 + 3 * index), at: at(5, '08:00') }),
    aVisit({ caseId: id(101 + 3 * index) }, { id: id(102 + 3 * index), at: at(5, '09:00') }),
  ])
  const { container } = await open(...many)
  const list = section(/^Visits never ended 12$/)
  expect(within(list).getAllByRole('listitem')).toHaveLength(10)
  expect(list.textContent).toContain('The first 10 of 12.')
  await press('Show 2 more')
  expect(within(list).getAllByRole('listitem')).toHaveLength(12)
  expect(await accessibilityFaults(container)).toEqual([])
})
