import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, signIn } from './openBrowser'
import { inLog, online, sent, signedIn } from './outboxInBrowser'

const url = inject('demoUrl')
const { ott, piet, ragna } = demoPeople
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

/** Asks the server as whoever is signed in on a page. */
const ask = (page: Page, path: string, body?: object): Promise<unknown> =>
  page.evaluate(
    async ([path, body]) => {
      const posted = {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify(body),
      }
      const answer = await fetch(path, body === undefined ? {} : posted)
      return (await answer.json()).value
    },
    [path, body] as const,
  )

/** How much of a person's is in the stores of a page's browser. */
const keptOf = (page: Page, personId: string): Promise<number> =>
  page.evaluate(async (personId) => {
    const done = <T>(request: IDBRequest<T>) =>
      new Promise<T>((resolve, reject) => {
        request.onsuccess = () => resolve(request.result)
        request.onerror = () => reject(request.error)
      })
    let count = 0
    for (const { name = '' } of await indexedDB.databases()) {
      if (!name.split(' ').includes(personId)) continue
      const database = await done(indexedDB.open(name))
      for (const store of database.objectStoreNames)
        count += await done(database.transaction(store).objectStore(store).count())
      database.close()
    }
    return count
  }, personId)

test('a phone that a manager ends while somebody else is signed in on it hands over and empties what its first person left', async () => {
  const mark = `ZZ left behind ${Date.now()}`
  const page = await signedIn(browser, url, ott)
  const context = page.context()
  await page.goto(`${url}/ask?model=ZZ-9951`)
  await context.route('**/api/records', (route) => route.abort())
  await page.getByLabel('What is printed on the switch').fill(mark)
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.waitForURL((address) => !address.pathname.startsWith('/ask'))
  await page.getByText('1 record waiting to be sent').waitFor()
  const device = await page.evaluate(() => localStorage.getItem('inchwater device'))
  await ask(page, '/api/auth/sign-out', {})
  await context.unroute('**/api/records')

  await signIn(page, url, piet.name, piet.password)
  await sent(page).waitFor()
  expect(await keptOf(page, ott.id)).toBeGreaterThan(1)
  const office = await (await openContext(browser)).newPage()
  await signIn(office, url, ragna.name, ragna.password)
  await ask(office, '/api/devices/end', { device, personId: ott.id })
  await online(page)
  await expect.poll(() => keptOf(page, ott.id), { timeout: 10_000 }).toBe(0)
  expect(await page.getByRole('main').textContent()).not.toContain(mark)
  expect(await inLog(context, url, mark)).toEqual([])
  await expect
    .poll(() => ask(office, '/api/devices'))
    .toMatchObject({
      endings: expect.arrayContaining([
        expect.objectContaining({ device, personId: ott.id, emptiedAt: expect.any(String) }),
      ]),
    })
  await office.goto(`${url}/set-aside`)
  const aside = office.getByRole('article').filter({ hasText: mark })
  await aside.getByText(ott.name, { exact: false }).first().waitFor()
  await aside.getByRole('button', { name: 'Admit it to the log' }).click()
  await office.getByText('1 record is in the log', { exact: false }).waitFor()
  expect(await inLog(context, url, mark)).toEqual([mark])
})
