import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
let browser: Browser
beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

async function pageFor(who: keyof typeof demoPeople, viewport = desk): Promise<Page> {
  const page = await (await openContext(browser, viewport)).newPage()
  await signIn(page, url, demoPeople[who].name, demoPeople[who].password)
  return page
}

const openDesk = async (page: Page) => {
  await page.goto(`${url}/phone-desk`)
  const section = page.getByRole('region', { name: 'Worth verifying next' })
  await section.getByText(/^Ordered by look-ups/).waitFor()
  return section
}
const timesIn = (words: string): number => Number(/Looked up (\d+) time/.exec(words)?.[1] ?? 0)

test('a setpoint that is opened in the field counts once, and the desk says so beside it', async () => {
  const piet = await openDesk(await pageFor('piet'))
  await piet.getByText(/^Ordered by .*Look-ups as the server had them/).waitFor()
  const link = piet.getByRole('rowheader').getByRole('link').last()
  const address = (await link.getAttribute('href'))!
  const row = (section: typeof piet) =>
    section.getByRole('row').filter({ has: section.page().locator(`a[href="${address}"]`) })
  const before = timesIn((await row(piet).textContent())!)

  const ott = await pageFor('ott', phone)
  const sent = ott.waitForResponse((answer) => answer.url().endsWith('/api/look-ups'))
  await ott.goto(url + address)
  await ott.getByRole('heading', { name: 'Setpoint' }).waitFor()
  // The next contact, which may come at once: what was counted goes.
  await ott.goto(`${url}/cases`)
  expect((await sent).status()).toBe(200)
  await ott.goto(url + address)
  await ott.getByRole('heading', { name: 'Setpoint' }).waitFor()
  await ott.goto(`${url}/cases`)
  await ott.getByText('Everything is sent').waitFor()

  const dunja = await openDesk(await pageFor('dunja'))
  await dunja.getByText(/^Ordered by .*Look-ups as the server had them/).waitFor()
  expect(timesIn((await row(dunja).textContent())!)).toBe(before + 1)
})

test('on a narrow screen every figure of a source is in sight, with its name', async () => {
  const page = await pageFor('piet', phone)
  await page.goto(`${url}/sources`)
  const row = page.getByRole('row', { name: /^Data plate on the unit/ })
  await row.waitFor()
  const cells = await row.getByRole('cell').all()
  expect(cells).toHaveLength(4)
  for (const cell of cells) {
    const box = (await cell.boundingBox())!
    expect(box.x).toBeGreaterThanOrEqual(0)
    expect(box.x + box.width).toBeLessThanOrEqual(phone.width)
  }
  const named = await row
    .getByRole('cell')
    .evaluateAll((all) => all.map((cell) => getComputedStyle(cell, '::before').content))
  expect(named.map((words) => /"([^"]*)"/.exec(words)?.[1])).toEqual([
    'At first',
    'Settled for it',
    'Settled against it',
    'Now',
  ])
})
