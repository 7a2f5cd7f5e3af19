import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { pagesOf, pdfText, withoutBlanks } from '../app/callbacks/letter/pdfText'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna } = demoPeople
let browser: Browser
let page: Page

beforeAll(async () => {
  browser = await openBrowser()
  page = await (await openContext(browser, desk)).newPage()
  await signIn(page, url, ragna.name, ragna.password)
})
afterAll(() => browser?.close())

/** The pages, each with what stands on it only once it is worked out. */
const screens = [
  ['/left-undone', 'Gauges due'],
  ['/swaps', 'Unsuitable switches still fitted'],
  ['/reports', 'Warranty credit denied'],
  ['/letter', 'What to do, as it stands now'],
] as const

test.each(screens)('%s works out its lists, light and dark, on a phone and at a desk', async (path, last) => {
  const complaints = complaintsOf(page)
  for (const viewport of [phone, desk]) {
    await page.setViewportSize(viewport)
    await page.goto(url + path)
    await page.getByRole('heading', { name: last }).waitFor()
    expect(await scrollsSideways(page)).toBe(false)
    // The whole page at once: what lies under the bar at the foot can be scrolled out of it.
    const height = 400 + (await page.evaluate(() => document.body.scrollHeight))
    await page.setViewportSize({ ...viewport, height })
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.emulateMedia({ colorScheme })
      expect(await seriousFaults(page), `${viewport.width}, ${colorScheme}`).toEqual([])
    }
  }
  expect(complaints).toEqual([])
})

test('the letter prints on one page, and the server’s PDF says the same', async () => {
  await page.setViewportSize(desk)
  await page.goto(`${url}/letter`)
  await page.getByText(/Head hash [0-9a-f]{64}/).waitFor()
  expect(pagesOf(await page.pdf({ format: 'A4', preferCSSPageSize: true }))).toBe(1)

  const href = await page.getByRole('link', { name: 'As a PDF' }).getAttribute('href')
  const answer = await page.request.get(url + href)
  expect(answer.headers()['content-type']).toBe('application/pdf')
  const pdf = await answer.body()
  expect(pagesOf(pdf)).toBe(1)
  const text = pdfText(pdf)
  const rows = await page.getByRole('table').getByRole('row').allTextContents()
  expect(rows.length).toBeGreaterThan(15)
  for (const row of rows) expect(text).toContain(withoutBlanks(row))
  const hash = /[0-9a-f]{64}/.exec((await page.getByText(/Head hash/).textContent()) ?? '')?.[0]
  expect(text).toContain(hash)
})

test('another month is chosen by its name, and what to do leads to its list', async () => {
  await page.goto(`${url}/letter`)
  await page.getByRole('heading', { name: /^Letter for/ }).waitFor()
  const months = await page.getByLabel('Month', { exact: true }).getByRole('option').allTextContents()
  await page.getByLabel('Month', { exact: true }).selectOption({ label: months[3]! })
  await page.getByRole('heading', { name: `Letter for ${months[3]}` }).waitFor()
  await page.setViewportSize(phone)
  await page.getByRole('link', { name: /^Furnaces left off: / }).click()
  const list = page.getByRole('heading', { name: /^Furnaces left off/ })
  await list.waitFor()
  expect(page.url()).toBe(`${url}/left-undone#leftOff`)
  // It is brought before the eyes once it is there.
  await expect.poll(async () => (await list.boundingBox())?.y ?? phone.height).toBeLessThan(phone.height)
})

test('Left undone prints its lists without what only a screen can do', async () => {
  await page.goto(`${url}/left-undone`)
  await page.getByRole('heading', { name: 'Gauges due' }).waitFor()
  await page.emulateMedia({ media: 'print' })
  expect(await page.getByRole('button', { name: 'Print it' }).isVisible()).toBe(false)
  expect(await page.getByRole('navigation', { name: 'Callbacks' }).isVisible()).toBe(false)
  expect(await page.getByRole('heading', { name: 'Gauges due' }).isVisible()).toBe(true)
  await page.emulateMedia({ media: 'screen' })
})
