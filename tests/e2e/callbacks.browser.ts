import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna, ott } = demoPeople
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

async function openAs(person: typeof ragna, size: typeof desk, path: string): Promise<Page> {
  const page = await (await openContext(browser, size)).newPage()
  await signIn(page, url, person.name, person.password)
  await page.goto(url + path)
  return page
}

const figuresOf = (page: Page) => page.getByRole('article', { name: 'What is shown' }).waitFor()

test('a manager asks why furnaces come back: from the navigation to a month’s mark, to a case, and back by the address', async () => {
  const page = await openAs(ragna, desk, '/')
  await page.getByRole('navigation', { name: 'Main' }).getByRole('link', { name: 'Callbacks' }).click()
  await figuresOf(page)
  await page.getByLabel('Jobs done in').selectOption({ label: 'Everything on file' })
  const chart = page.getByRole('article', { name: 'Jobs that came back, by month' })
  // The mark with most jobs behind it.
  const marks = await chart.getByRole('link', { name: /, settled: \d+ of \d+ jobs came back/ }).all()
  const names = await Promise.all(marks.map((mark) => mark.getAttribute('aria-label')))
  const jobs = names.map((name) => Number(/of (\d+)/.exec(name!)![1]))
  const most = jobs.indexOf(Math.max(...jobs))
  await marks[most]!.click()
  const behind = page.getByRole('region', { name: /^Cases behind “Jobs of / })
  await behind.waitFor()
  expect(await behind.getByRole('listitem').count()).toBe(jobs[most])
  expect(page.url()).toMatch(/\/callbacks\?period=all&open=month-/)
  const shared = page.url()
  await behind.getByRole('listitem').first().getByRole('link').first().click()
  await page.waitForURL(/\/case\/history\?id=/)
  await page.goto(shared)
  await behind.waitFor()
  expect(await behind.getByRole('listitem').count()).toBe(jobs[most])
  await page.context().close()
})

test('without a signal the figures follow what is chosen; a technician sees nobody compared', async () => {
  const page = await openAs(ott, phone, '/callbacks?period=all')
  await figuresOf(page)
  expect(await page.getByRole('article', { name: 'People' }).count()).toBe(0)
  await page.context().setOffline(true)
  const rate = page.getByText(/^In settled months \d+ of \d+/)
  const before = await rate.textContent()
  await page.getByLabel('It is a callback within').selectOption({ label: '180 days' })
  await expect.poll(() => rate.textContent()).not.toBe(before)
  await page.context().close()
})

test('on paper every table is open and the form is gone', async () => {
  const page = await openAs(ragna, desk, '/callbacks?period=all')
  await figuresOf(page)
  await page.emulateMedia({ media: 'print' })
  const folded = await page.getByRole('table').count()
  await page.pdf({ format: 'A4' })
  expect(await page.getByRole('table').count()).toBeGreaterThan(folded + 4)
  expect(await page.getByRole('form', { name: 'What is shown' }).isVisible()).toBe(false)
  await page.context().close()
})
