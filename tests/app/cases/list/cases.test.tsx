import { fireEvent, screen, within } from '@testing-library/react'
import { describe, expect, test, vi } from 'vitest'
import { CasesScreen } from '@/app/cases/list/CasesScreen'
import { fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt } from '../../setup/fakeNavigation'
import { fill, press, select } from '../../setup/hands'
import { equipmentRecords, ids } from '../../setup/smallFile'
import { accessibilityFaults } from '../../ui/accessibilityFaults'
import { fullNotice, type Row, recordsOf } from '../end/provenCase'
import { beforeRows, cases, someCases } from './someCases'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const open = (query = '', records = someCases) => {
  openAt(`/cases${query}`)
  return renderOn(fakeDevice({ records }), <CasesScreen />)
}
const list = () => screen.getByRole('list', { name: 'Cases' })
/** The cases that are listed, by the address that each opens. */
const listed = (): string[] =>
  within(list())
    .queryAllByRole('link')
    .flatMap((link) => /^\/case\?id=(.+)$/.exec(link.getAttribute('href') ?? '')?.[1] ?? [])
const lineOf = (id: string) =>
  within(list())
    .getAllByRole('listitem')
    .find((item) => item.querySelector(`a[href="/case?id=${id}"]`))!
const counted = () => screen.getByRole('status').textContent

describe('CasesScreen', () => {
  test('lists the cases, the newest first, and says how many there are', async () => {
    const { container } = open()
    expect(listed()).toEqual([cases.begun, cases.waiting, cases.proven, cases.before])
    expect(counted()).toBe('4 cases')
    expect(await accessibilityFaults(container)).toEqual([])
  })

  test('a line says site, model, complaint, day, standing, cause and how well it is known, and what it repeats', () => {
    open()
    const proven = lineOf(cases.proven)
    expect(proven.textContent).toContain('Mill Row 12 LF2-080-B')
    expect(proven.textContent).toContain('No heat since the night')
    expect(proven.textContent).toContain('Opened 12 Jan 2026, North.')
    expect(proven.textContent).toContain('Repaired and proven.')
    expect(proven.textContent).toMatch(/Cause, (confirmed by readings after the repair|proven durable): /)
    expect(
      within(proven).getByRole('link', { name: 'Repeats the case of 4 Dec 2025' }).getAttribute('href'),
    ).toBe(`/case/history?id=${cases.before}`)
    const before = lineOf(cases.before)
    expect(before.textContent).toContain('Repaired, not proven.')
    expect(before.textContent).toContain('Cause, presumed: Vent end blocked.')
    expect(before.textContent).not.toContain('Repeats')
    expect(lineOf(cases.begun).textContent).not.toContain('Cause')
  })

  test.each([
    ['the site', 'mill row', [cases.proven, cases.before]],
    ['the model', 'lf2-060', [cases.begun, cases.waiting]],
    ['the serial, with a look-alike', 'S22O4', [cases.proven, cases.before]],
    ['a word of the complaint', 'blinks', [cases.begun]],
    ['words of site and complaint', 'tarn hums', [cases.waiting]],
  ])('is searched by %s', (_, typed, found) => {
    open()
    fill('Site, model, serial or complaint', typed)
    expect(listed()).toEqual(found)
    expect(counted()).toBe(`${found.length} of 4 cases`)
  })

  test.each([
    ['How it stands', 'Open: somebody has to go there again', [cases.begun, cases.waiting, cases.before]],
    ['How it stands', 'Over: nothing more is to be done', [cases.proven]],
    ['How it stands', 'Waiting for part', [cases.waiting]],
    ['How it stands', 'Being worked on', [cases.begun]],
    ['How it stands', 'Repaired, not proven', [cases.before]],
    ['Cause', 'Vent end blocked', [cases.before]],
    ['How well the cause is known', 'Presumed', [cases.before]],
    ['Model range', 'Orrinmoor Larkfell 2', [cases.proven, cases.before]],
    ['Branch', 'North', [cases.proven, cases.before]],
  ])('narrowed down by “%s”: %s', (label, words, found) => {
    open()
    select(label, words)
    expect(listed()).toEqual(found)
  })

  test('both days are in the span of days', () => {
    open()
    fill('Opened on this day or later', '2026-01-12')
    fill('Opened on this day or earlier', '2026-01-20')
    expect(listed()).toEqual([cases.waiting, cases.proven])
  })

  test('a furnace that a notice keeps off shows its case as left off', () => {
    const notice: Row = [
      '01920000-0000-7000-8000-000000000d05',
      'shut-down notice',
      { ...fullNotice, caseId: cases.before },
      '2025-12-04T15:45:00.000Z',
    ]
    open('?standing=left+off', recordsOf([...beforeRows, notice]))
    expect(listed()).toEqual([cases.before])
  })

  test('the address holds every filter, and a shared address narrows the list alike', () => {
    const { unmount } = open()
    fill('Site, model, serial or complaint', 'tarn')
    select('How it stands', 'Open: somebody has to go there again')
    fill('Opened on this day or later', '2026-01-21')
    expect(window.location.pathname + window.location.search).toBe(
      '/cases?q=tarn&standing=open&from=2026-01-21',
    )
    unmount()
    open(window.location.search)
    expect(listed()).toEqual([cases.begun])
    expect(screen.getByLabelText<HTMLInputElement>('Site, model, serial or complaint').value).toBe('tarn')
    expect(screen.getByText('Narrow it down (2 set)')).toBeTruthy()
  })

  test('what an address says that cannot be read narrows nothing', () => {
    open('?standing=sideways&from=yesterday&cause=gremlins')
    expect(counted()).toBe('4 cases')
  })

  test('with no case at all it says what a case is and how to open the first', () => {
    open('', equipmentRecords)
    expect(screen.getByText('No case yet')).toBeTruthy()
    expect(screen.getByRole('link', { name: 'Open the first case' }).getAttribute('href')).toBe('/cases/new')
    expect(screen.queryByLabelText('Site, model, serial or complaint')).toBeNull()
  })

  test('when none matches it says which filter to take off, and what that would show', async () => {
    open('?q=tarn&branch=North')
    expect(screen.getByText('No case matches all of this')).toBeTruthy()
    expect(screen.getByRole('button', { name: 'Take all off (4)' })).toBeTruthy()
    await press('Take off Branch North (2)')
    expect(listed()).toEqual([cases.begun, cases.waiting])
    expect(window.location.search).toBe('?q=tarn')
  })

  test('a filter that alone does not help says so', () => {
    open(`?q=tarn&branch=North&range=${ids.range}`)
    expect(screen.getByRole('button', { name: 'Take off Orrinmoor Larkfell 2 (still none)' })).toBeTruthy()
  })

  test('of many the first 50 are shown, and 50 more at a press, each time with how many are not', async () => {
    const many: Row[] = Array.from({ length: 120 }, (_, index) => [
      `01920000-0000-7000-8000-${(0xe000 + index).toString(16).padStart(12, '0')}`,
      'case',
      { furnaceId: ids.furnace, complaint: `Complaint ${index}`, circuit: 'proving circuit' },
      new Date(Date.UTC(2026, 0, 1) + index * 3_600_000).toISOString(),
    ])
    open('', recordsOf(many))
    expect(listed()).toHaveLength(50)
    expect(counted()).toBe('The first 50 of 120 cases')
    await press('Show 50 more (70 not shown)')
    expect(listed()).toHaveLength(100)
    await press('Show 20 more (20 not shown)')
    expect(listed()).toHaveLength(120)
    expect(screen.queryByRole('button', { name: /^Show/ })).toBeNull()
    fireEvent.change(screen.getByLabelText('Site, model, serial or complaint'), { target: { value: 'mill' } })
    expect(counted()).toBe('The first 50 of 120 cases')
  })
})
