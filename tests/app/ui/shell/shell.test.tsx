import { render, screen, within } from '@testing-library/react'
import { renderToStaticMarkup } from 'react-dom/server'
import { beforeEach, expect, test, vi } from 'vitest'
import { belongsTo, mainPlaces, morePlaces } from '@/app/ui/navigation'
import { FreshnessLine } from '@/app/ui/shell/FreshnessLine'
import { Shell } from '@/app/ui/shell/Shell'
import { chooseTheme, themeCookie, themeOf } from '@/app/ui/shell/theme'
import { accessibilityFaults } from '../accessibilityFaults'

const address = vi.hoisted(() => ({ now: '/' }))
vi.mock('next/navigation', () => ({ usePathname: () => address.now }))
beforeEach(() => {
  address.now = '/'
})

const linksOf = (name: string) => {
  // The places of "More" are hidden until they are asked for, and what is hidden has no name to be found by.
  const place = document.querySelector<HTMLElement>(`nav[aria-label="${name}"]`)
  return place ? within(place).getAllByRole('link', { hidden: true }) : []
}

test('Shell offers every place of the list, in its order, as plain links', async () => {
  const { container } = render(<Shell>page</Shell>)
  expect(linksOf('Main').map((link) => [link.textContent, link.getAttribute('href')])).toEqual(
    mainPlaces.map(({ words, path }) => [words, path]),
  )
  expect(linksOf('More').map((link) => link.textContent)).toEqual(morePlaces.map(({ words }) => words))
  expect(await accessibilityFaults(container)).toEqual([])
})

test('Shell marks the place where one is, also on a page below it', () => {
  address.now = '/phone-desk/7'
  render(<Shell>page</Shell>)
  const current = linksOf('Main').filter((link) => link.getAttribute('aria-current') === 'page')
  expect(current.map((link) => link.textContent)).toEqual(['Phone desk'])
})

test('Shell has a way past the navigation, before it', () => {
  render(<Shell>page</Shell>)
  const [first] = screen.getAllByRole('link')
  expect(first?.textContent).toBe('Skip to the content')
  expect(screen.getByRole('main').id).toBe(first?.getAttribute('href')?.slice(1))
})

test('Shell has the danger sheet everywhere, the places only for people it knows', () => {
  address.now = '/sign-in'
  render(<Shell>page</Shell>)
  expect(screen.getByRole('link', { name: 'Danger sheet' })).toBeTruthy()
  expect(screen.queryByRole('navigation', { hidden: true })).toBeNull()
})

test('Shell is served without a style attribute or a script', () => {
  expect(renderToStaticMarkup(<Shell>page</Shell>)).not.toMatch(/ style=|<script/)
})

test('belongsTo counts whole parts of an address, and nothing belongs to the root but itself', () => {
  expect(belongsTo('/phone-desk/7', '/phone-desk')).toBe(true)
  expect(belongsTo('/logbook', '/log')).toBe(false)
  expect(belongsTo('/log', '/')).toBe(false)
})

test('FreshnessLine says how old the file is and what is waiting', () => {
  render(<FreshnessLine fetchedAt="2026-01-12T09:46:00Z" now="2026-01-12T10:00:00Z" waiting={2} />)
  expect(screen.getByText('Team file from 14 min ago')).toBeTruthy()
  expect(screen.getByRole('status').textContent).toBe('2 records waiting to be sent')
})

test('FreshnessLine says that there is no file yet, and that a record was refused', () => {
  render(<FreshnessLine now="2026-01-12T10:00:00Z" waiting={0} refused={1} refusedHref="/outbox" />)
  expect(screen.getByText('No team file on this device yet')).toBeTruthy()
  expect(screen.getByRole('status').textContent).toBe(
    'Everything is sent. 1 record refused, and waiting for you',
  )
  expect(screen.getByRole('link').getAttribute('href')).toBe('/outbox')
})

test('themeOf takes light and dark and nothing else', () => {
  expect(['light', 'dark', '', 'blue', undefined].map(themeOf)).toEqual([
    'light',
    'dark',
    undefined,
    undefined,
    undefined,
  ])
})

test('chooseTheme puts a choice into effect at once, and keeps it where the browser can', async () => {
  const cookieStore = { set: vi.fn(), delete: vi.fn() }
  vi.stubGlobal('cookieStore', cookieStore)
  await chooseTheme('dark')
  expect(document.documentElement.dataset.theme).toBe('dark')
  expect(cookieStore.set).toHaveBeenCalledWith(expect.objectContaining({ name: themeCookie, value: 'dark' }))
  await chooseTheme(undefined)
  expect(document.documentElement.hasAttribute('data-theme')).toBe(false)
  expect(cookieStore.delete).toHaveBeenCalledWith(themeCookie)
  vi.unstubAllGlobals()
  await chooseTheme('light')
  expect(document.documentElement.dataset.theme).toBe('light')
})
