import { fireEvent, screen, within } from '@testing-library/react'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { LetterScreen } from '@/app/callbacks/letter/LetterScreen'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { at, base, ending, notice, opened } from '../../../records/view/case/team'
import { fakeDevice, renderOn } from '../../setup/fakeDevice'
import { openAt, wentTo } from '../../setup/fakeNavigation'
import { accessibilityFaults } from '../../ui/accessibilityFaults'

vi.mock('next/navigation', () => import('../../setup/fakeNavigation'))

const hash = 'ab12'.repeat(16)
const manager = { id: 'person-3', name: 'Ragna Holm', role: 'manager' } as const

beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'] })
  vi.setSystemTime(new Date(at(40)))
  vi.stubGlobal('fetch', async () => Response.json({ ok: true, value: { seq: 41, hash } }))
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const open = async (
  records: readonly HeldRecord[] = [],
  me: Parameters<typeof fakeDevice>[0] = {},
  month = '',
) => {
  openAt(`/letter${month}`)
  const drawn = renderOn(fakeDevice({ records: [...base, ...records], ...me }), <LetterScreen />)
  await screen.findByRole('article')
  await screen.findByText(new RegExp(hash))
  return drawn
}
const cellsOf = (words: string): (string | null)[] =>
  within(screen.getByRole('rowheader', { name: words }).closest('tr')!)
    .getAllByRole('cell')
    .map((cell) => cell.textContent)

test('shows the last whole month beside the one before, with what changed and the hash of the log', async () => {
  const { container } = await open([...opened, notice(), ending({ how: 'left off' })])
  expect(screen.getByRole('heading', { name: 'Letter for January 2026' })).toBeTruthy()
  expect(cellsOf('Cases opened')).toEqual(['1', '0', '1 more'])
  expect(cellsOf('Furnaces left off by a notice')).toEqual(['1', '0', '1 more'])
  expect(screen.getByText(/41 entries/).textContent).toContain(hash)
  expect(await accessibilityFaults(container)).toEqual([])
})

test('what to do leads to its list', async () => {
  await open([...opened, notice()])
  expect(screen.getByRole('link', { name: 'Furnaces left off: 1' }).getAttribute('href')).toBe(
    '/left-undone#leftOff',
  )
})

test('a figure leads to the list behind it, of its own month', async () => {
  await open(opened)
  const hrefOf = (name: string) => screen.getByRole('link', { name }).getAttribute('href')
  expect(hrefOf('Cases opened, January 2026: 1')).toBe('/log?kind=case&from=2026-01-01&to=2026-01-31')
  expect(hrefOf('Jobs that came back, December 2025: none')).toBe(
    '/callbacks?period=chosen&from=2025-12&to=2025-12&open=month-2025-12',
  )
})

test('another month is another address', async () => {
  await open()
  fireEvent.change(screen.getByRole('combobox', { name: 'Month' }), { target: { value: '2025-11' } })
  expect(wentTo()).toEqual(['/letter?month=2025-11'])
  await screen.findByRole('heading', { name: 'Letter for November 2025' })
})

test('a manager gets the same letter as a PDF; others are told that they do not', async () => {
  await open([], { me: manager }, '?month=2026-01')
  expect(screen.getByRole('link', { name: 'As a PDF' }).getAttribute('href')).toMatch(
    /^\/api\/letter\?month=2026-01&ahead=-?\d+$/,
  )
})

test('for others the page prints, and the PDF is a manager’s', async () => {
  await open()
  expect(screen.queryByRole('link', { name: 'As a PDF' })).toBeNull()
  expect(screen.getByText(/The PDF is made on the server for a manager/)).toBeTruthy()
})

test('without a signal it says that the hash is not known here', async () => {
  vi.stubGlobal('fetch', async () => {
    throw new TypeError('Failed to fetch')
  })
  openAt('/letter')
  renderOn(fakeDevice({ records: base }), <LetterScreen />)
  expect(await screen.findByText(/The log’s head hash is not known here/)).toBeTruthy()
})
