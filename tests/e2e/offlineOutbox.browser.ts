import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext } from './openBrowser'
import { fillOutbox, inLog, online, sent, signedIn, workerIsReady } from './outboxInBrowser'

const url = inject('demoUrl')
const { ott } = demoPeople
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

test('500 records that wait in a store of the first layout outlast the app’s upgrade, and arrive once each, in their order', async () => {
  const page = await signedIn(browser, url, ott)
  const mark = `up ${Date.now()} `
  const names = Array.from({ length: 500 }, (_, at) => `${mark}${String(at).padStart(3, '0')}`)
  await fillOutbox(page, url, ott.id, names, 1)
  await page.context().setOffline(false)
  await page.goto(url)
  await sent(page).waitFor()
  expect(await inLog(page.context(), url, mark)).toEqual(names)
  const left = await page.evaluate(async (name) => {
    const database = await new Promise<IDBDatabase>((done) => {
      const asked = indexedDB.open(name)
      asked.onsuccess = () => done(asked.result)
    })
    return [...database.objectStoreNames]
  }, `inchwater own ${ott.id}`)
  expect(left).toEqual(expect.arrayContaining(['drafts', 'outbox', 'pictures']))
})

test('with no page of the team open the worker sends what waits; the next page settles it, and it is there once', async () => {
  const page = await signedIn(browser, url, ott, 'allow')
  await workerIsReady(page)
  const mark = `background ${Date.now()} `
  await fillOutbox(page, url, ott.id, [`${mark}1`, `${mark}2`], undefined)
  const session = await page.context().newCDPSession(page)
  const registered = new Promise<string>((resolve) => {
    session.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const [first] = registrations
      if (first !== undefined) resolve(first.registrationId)
    })
  })
  await session.send('ServiceWorker.enable')
  const registrationId = await registered
  const woken = { origin: url, registrationId, tag: 'outbox', lastChance: true }
  await session.send('ServiceWorker.dispatchSyncEvent', woken)
  await expect.poll(() => inLog(page.context(), url, mark), { timeout: 10_000 }).toHaveLength(2)
  await page.goto(url)
  await sent(page).waitFor()
  expect(await inLog(page.context(), url, mark)).toEqual([`${mark}1`, `${mark}2`])
})

test('what the server refuses is mended in its form, as it was typed, takes its place, and is sent', async () => {
  const page = await signedIn(browser, url, ott, 'allow')
  await workerIsReady(page)
  const mark = `ZZ mended ${Date.now()}`
  await page.goto(`${url}/ask?model=ZZ-9947`)
  const printed = page.getByLabel('What is printed on the switch')
  // The phone's clock runs ahead while there is no signal, and is put right with it.
  await page.context().setOffline(true)
  await page.clock.setFixedTime(Date.now() + 3_600_000)
  await printed.fill(mark)
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.waitForURL(`${url}/phone-desk`)
  await page.getByText('1 record waiting to be sent').waitFor()
  await page.clock.setFixedTime(Date.now())
  await page.context().setOffline(false)
  await online(page)
  await page.getByText(/refused, and waiting for you/).waitFor()
  expect(await inLog(page.context(), url, mark)).toEqual([])

  await page.goto(`${url}/waiting`)
  const refused = page.getByRole('article', { name: /^Refused: / })
  expect(await refused.textContent()).toContain('clock')
  await refused.getByRole('button', { name: 'Mend it in its form' }).click()
  await page.waitForURL(/mends=/)
  await expect.poll(() => printed.inputValue()).toBe(mark)
  await page.clock.setFixedTime(Date.now())
  await printed.fill(`${mark}, no rating`)
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.waitForURL((address) => !address.pathname.startsWith('/ask'))
  await sent(page).waitFor()
  expect(await inLog(page.context(), url, mark)).toEqual([`${mark}, no rating`])
  await page.goto(`${url}/waiting`)
  await page.getByText('Every record made on this device is in the team’s log.').waitFor()
})

test('a browser that keeps nothing, as in private mode, says so and what to do', async () => {
  const context = await openContext(browser)
  await context.addInitScript(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('The user denied permission to access the database.', 'InvalidStateError')
    }
  })
  const page = await context.newPage()
  await page.goto(`${url}/sign-in`)
  await page.getByLabel('Name').fill(ott.name)
  await page.getByLabel('Password').fill(ott.password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  const alert = page.getByText('This browser does not let Inchwater keep its file')
  await alert.waitFor()
  expect(await alert.textContent()).toContain('Leave private browsing, or free some space, and reload.')
  await page.goto(`${url}/danger`)
  await page.getByRole('heading', { level: 1 }).waitFor()
})

// The devtools' limit on storage does not reach what is open already, so the store itself is made to refuse as a full disk does.
test('a full device says that nothing was recorded, keeps what was typed, and records it once there is room', async () => {
  const page = await signedIn(browser, url, ott)
  await page.addInitScript(() => {
    const put = IDBObjectStore.prototype.put
    IDBObjectStore.prototype.put = function (...given) {
      if (this.name === 'outbox' && sessionStorage.getItem('full') !== null)
        throw new DOMException('The disk is full.', 'QuotaExceededError')
      return put.apply(this, given)
    }
  })
  const mark = `ZZ full ${Date.now()}`
  await page.goto(`${url}/ask?model=ZZ-9931`)
  await page.getByLabel('What is printed on the switch').fill(mark)
  await page.evaluate(() => sessionStorage.setItem('full', 'yes'))
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.getByText('This device has no room left, so nothing was recorded.', { exact: false }).waitFor()
  expect(await page.getByLabel('What is printed on the switch').inputValue()).toBe(mark)
  expect(await inLog(page.context(), url, mark)).toEqual([])
  await page.evaluate(() => sessionStorage.removeItem('full'))
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.waitForURL((address) => !address.pathname.startsWith('/ask'))
  await sent(page).waitFor()
  expect(await inLog(page.context(), url, mark)).toEqual([mark])
})
