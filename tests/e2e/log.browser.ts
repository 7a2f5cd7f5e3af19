import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna } = demoPeople
let browser: Browser
let context: BrowserContext
let page: Page

beforeAll(async () => {
  browser = await openBrowser()
  context = await openContext(browser, desk)
  page = await context.newPage()
  await signIn(page, url, ragna.name, ragna.password)
})
afterAll(() => browser?.close())

const entries = () => page.getByRole('list', { name: 'Entries' }).getByRole('listitem')

test('the log is reached from the navigation, narrowed down, and its address leads to the same entries again', async () => {
  await page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Log' }).click()
  await page.getByRole('heading', { level: 1, name: 'Log' }).waitFor()
  await page.getByText('Narrow it down').click()
  await page.getByLabel('Kind of record').selectOption('withdrawal')
  await page.getByText(/^[\d,]+ of [\d,]+ entries fits?\./).waitFor()
  const found = await entries().count()
  expect(found).toBeGreaterThan(0)
  expect(await entries().first().textContent()).toMatch(/Withdrew /)
  expect(page.url()).toContain('kind=withdrawal')
  await page.reload()
  await page.getByText(/^[\d,]+ of [\d,]+ entries fits?\./).waitFor()
  expect(await entries().count()).toBe(found)
})

test('every entry is checked by the server, which says that the log is whole, and its hash', async () => {
  await page.goto(`${url}/log`)
  await page.getByRole('button', { name: 'Check every entry' }).click()
  await page.getByText('The log is whole.').waitFor()
  await page.getByText(/^[0-9a-f]{64}$/).waitFor()
})

test('a manager withholds a note: it is gone from the record, from the log and from another device', async () => {
  const secret = 'Ring Tilda Quist at the side door'
  await page.goto(`${url}/furnace/add`)
  await page.getByLabel('Site label').fill('Withheld Lane 9')
  await page.getByLabel('Model number, as the data plate prints it').fill('WL-1')
  await page.getByLabel('Note').fill(secret)
  await page.getByRole('button', { name: 'Add this furnace' }).click()
  await page.getByText('Everything is sent').waitFor()

  await page.goto(`${url}/log?kind=furnace`)
  const entry = entries().filter({ hasText: 'Withheld Lane 9' })
  await entry.getByRole('link', { name: 'Withhold personal data' }).click()
  await page.getByText(secret).waitFor()
  await page.getByRole('checkbox', { name: 'Note' }).check({ force: true })
  await page.getByLabel('Why?').fill('A name got into it.')
  await page.getByRole('checkbox', { name: /^It can’t be undone/ }).check({ force: true })
  await page.getByRole('button', { name: 'Withhold “Note” for good' }).click()
  await page.getByText('Withheld: Note.').waitFor()
  await page.getByText('Everything is sent').waitFor()

  const other = await (await openContext(browser, phone)).newPage()
  await signIn(other, url, demoPeople.tobin.name, demoPeople.tobin.password)
  await other.goto(`${url}/log?kind=furnace`)
  const there = other.getByRole('list', { name: 'Entries' }).getByRole('listitem')
  const blanked = there.filter({ hasText: 'Withheld Lane 9' })
  await blanked.getByText(/^Withheld by/).waitFor()
  expect(await blanked.getByRole('link', { name: 'Withhold personal data' }).count()).toBe(0)
  await blanked.getByRole('link', { name: /Withheld Lane 9/ }).click()
  await other.getByText('[withheld]').waitFor()
  expect(await other.textContent('body')).not.toContain('Tilda')

  await page.goto(`${url}/log`)
  await page.getByRole('button', { name: 'Check every entry' }).click()
  await page
    .getByRole('list', { name: 'Withheld' })
    .getByText(/withheld by record \d+/)
    .first()
    .waitFor()
})

test.each([
  ['phone', phone],
  ['desk', desk],
] as const)(
  'the log with its filters and a finished check, on a %s, light and dark',
  async (_size, viewport) => {
    const complaints = complaintsOf(page)
    await page.setViewportSize(viewport)
    await page.goto(`${url}/log?kind=report`)
    await page.getByRole('button', { name: 'Check every entry' }).click()
    await page.getByText('The log is whole.').waitFor()
    // The whole page at once: what lies under the bar at the foot can be scrolled out of it.
    const height = 400 + (await page.evaluate(() => document.body.scrollHeight))
    await page.setViewportSize({ ...viewport, height })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await seriousFaults(page), colorScheme).toEqual([])
    }
    expect(await scrollsSideways(page)).toBe(false)
    expect(complaints).toEqual([])
  },
)
