import { setTimeout as sleep } from 'node:timers/promises'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { sayMoment } from '@/app/ui/words/sayDate'
import type { StoredRecord } from '@/lib/records/envelope'
import { saidAtCorrected } from '@/lib/records/fold/entry'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, phone, signIn } from './openBrowser'
import { online, sent, signedIn, workerIsReady } from './outboxInBrowser'

const url = inject('demoUrl')
const { lale, piet } = demoPeople
const hourMs = 3_600_000
let browser: Browser
let desk: Page

beforeAll(async () => {
  browser = await openBrowser()
  desk = await signedIn(browser, url, piet)
})
afterAll(() => browser?.close())

/** A phone whose pages have a clock that is off, as its whole clock is. */
async function phoneOffBy(ms: number): Promise<BrowserContext> {
  const context = await openContext(browser, phone, 'light', 'allow')
  await context.addInitScript((ms) => {
    globalThis.Date = new Proxy(Date, {
      construct: (real, given, made) =>
        Reflect.construct(real, given.length === 0 ? [real.now() + ms] : given, made) as Date,
      get: (real, key, made) => (key === 'now' ? () => real.now() + ms : Reflect.get(real, key, made)),
    })
    // The worker has the machine's own clock here, so it sends nothing: many browsers send by a page alone.
    Object.defineProperty(ServiceWorkerRegistration.prototype, 'sync', { value: undefined })
  }, ms)
  return context
}

async function ask(page: Page, model: string): Promise<void> {
  await page.goto(`${url}/ask?model=${model}`)
  await page.getByLabel('What is printed on the switch').fill('nothing')
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.waitForURL(`${url}/phone-desk`)
}

/** When a question was asked, by the log. */
async function askedAt(model: string): Promise<number> {
  const asked: StoredRecord[] = []
  for (let after = 0, more = true; more; ) {
    const response = await desk.request.get(`${url}/api/changes?after=${after}&limit=1000`)
    const { value } = (await response.json()) as {
      value: { records: StoredRecord[]; next: number; more: boolean }
    }
    asked.push(...value.records.filter(({ body }) => body.model === model))
    after = value.next
    more = value.more
  }
  expect(asked).toHaveLength(1)
  return Date.parse(saidAtCorrected(asked[0]!))
}

test.each([2, -2])(
  'what a phone records without a signal stands at its true moment everywhere, though its clock is %i hours off; and the phone works on',
  async (hours) => {
    const context = await phoneOffBy(hours * hourMs)
    const page = await context.newPage()
    await signIn(page, url, lale.name, lale.password)
    await sent(page).waitFor()
    await workerIsReady(page)
    const off = (await page.evaluate(() => Date.now())) - Date.now()
    expect(Math.round(off / 60_000)).toBe(hours * 60)

    const model = `ZZ-${Date.now()}`
    await context.setOffline(true)
    const from = Date.now()
    await ask(page, model)
    await page.getByText('1 record waiting to be sent').waitFor()
    const to = Date.now()
    // Some time without a signal: it is the moment of saying that counts, and not that of arriving.
    await sleep(1000)
    await context.setOffline(false)
    await online(page)
    await sent(page).waitFor()

    const at = await askedAt(model)
    expect(at).toBeGreaterThanOrEqual(from)
    expect(at).toBeLessThan(to + 1000)
    const moment = sayMoment(new Date(at).toISOString())
    await desk.goto(`${url}/phone-desk`)
    for (const each of [desk, page])
      await each.getByRole('article', { name: model }).getByText(moment, { exact: false }).waitFor()

    await page.reload()
    await page.getByText('Team file from just now').waitFor()
    await sent(page).waitFor()
    expect(await page.getByRole('link', { name: 'Sign in again' }).count()).toBe(0)
    const second = `${model}-2`
    const askedSecond = Date.now()
    await ask(page, second)
    await sent(page).waitFor()
    expect(Math.abs((await askedAt(second)) - askedSecond)).toBeLessThan(30_000)
    await context.close()
  },
)
