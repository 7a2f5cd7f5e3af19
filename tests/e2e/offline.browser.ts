import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ott } = demoPeople
let browser: Browser
let context: BrowserContext
let page: Page

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())
beforeEach(async () => {
  context = await openContext(browser, phone, 'light', 'allow')
  page = await context.newPage()
  await signIn(page, url, ott.name, ott.password)
  await page.getByText(/^Team file from/).waitFor()
  // The first visit with a signal: the pages are kept once the worker is at work.
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await context.setOffline(true)
  return () => context.close()
})

describe('a phone without a signal', () => {
  test('opens cold, finds a setpoint, and keeps what is recorded until there is a signal again', async () => {
    const cold = await context.newPage()
    await page.close()
    await cold.goto(url)
    // They are a program of their own, which no page's HTML names: the worker has kept it all the same.
    await cold.getByRole('navigation', { name: /^Today’s furnaces/ }).waitFor()
    await cold.getByRole('searchbox').fill('sallow 110')
    await cold.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    await cold.getByRole('article').first().waitFor()
    await cold.goto(`${url}/ask?model=ZZ-9917`)
    await cold.getByLabel('What is printed on the switch').fill('nothing')
    await cold.getByRole('button', { name: 'Ask', exact: true }).click()
    // It leads on by itself; a reload in the middle of that would be refused.
    await cold.waitForURL(`${url}/phone-desk`)
    await cold.getByText('1 record waiting to be sent').waitFor()
    await cold.reload()
    await cold.getByText('1 record waiting to be sent').waitFor()
    await context.setOffline(false)
    await cold.evaluate(() => window.dispatchEvent(new Event('online')))
    await cold.getByText('Everything is sent').waitFor()
  })

  test('a deep link to a case opens, and a finding is recorded', async () => {
    await page.goto(`${url}/cases`)
    const link = page.getByRole('list', { name: 'Cases' }).getByRole('link').first()
    await link.click()
    await page.getByRole('heading', { level: 1 }).waitFor()
    await page.reload()
    expect(await page.getByRole('heading', { level: 1 }).textContent()).not.toMatch(/not on this device/)
  })

  test('its files came as brotli made them', async () => {
    const file = await page.evaluate(async () => {
      const [name] = await caches.keys()
      const kept = await (await caches.open(name!)).keys()
      return kept.map(({ url }) => url).find((address) => address.endsWith('.js'))
    })
    const response = await context.request.get(file!, { headers: { 'accept-encoding': 'gzip, br' } })
    expect(response.status()).toBe(200)
    expect(response.headers()).toMatchObject({
      'content-encoding': 'br',
      'x-content-type-options': 'nosniff',
    })
    expect((await response.body()).length).toBeGreaterThan(Number(response.headers()['content-length']))
  })

  test('keeps nobody’s data in what the worker holds: pages and files only', async () => {
    const kept = await page.evaluate(async () => {
      const names = await caches.keys()
      const requests = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()))
      return requests.flat().map((request) => new URL(request.url).pathname)
    })
    expect(kept.length).toBeGreaterThan(30)
    expect(kept.filter((path) => path.startsWith('/api/'))).toEqual([])
    const shells = await page.evaluate(async () => {
      const [name] = await caches.keys()
      const shell = await (await caches.open(name!)).match('/')
      return shell!.text()
    })
    expect(shells).not.toContain('Ott')
  })
})
