import { mkdtempSync, readlinkSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { type Browser, chromium } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { browserFlags, browserPath } from '../browser'
import { openBrowser, phone, signIn } from './openBrowser'
import { inLog, online, sent, signedIn, workerIsReady } from './outboxInBrowser'

const url = inject('demoUrl')
const { ott } = demoPeople
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())
const manager = demoPeople.ragna

/** Tells one run's texts from another's; without digits, which a label's rating would be read from. */
const letters = (): string =>
  Date.now()
    .toString(36)
    .replace(/\d/g, (digit) => 'bcdfghjkmn'[Number(digit)]!)

const picture = (): Promise<Buffer> =>
  sharp({ create: { width: 640, height: 480, channels: 3, background: '#c9d4da' } })
    .jpeg()
    .toBuffer()

/** Ends the browser of a profile with SIGKILL. Chromium names its process in the lock that it keeps in the profile. */
function kill(profile: string): void {
  const lock = readlinkSync(path.join(profile, 'SingletonLock'))
  process.kill(Number(/-(\d+)$/.exec(lock)![1]), 'SIGKILL')
}

/** What a killed browser answers to being closed. */
const closedAlready = (): void => {}

test('the day of a technician: without a signal a look-up, a reading and a case with a photo; the browser is killed and starts again without a signal; everything arrives once', async () => {
  const profile = mkdtempSync(path.join(tmpdir(), 'inchwater-phone-'))
  const start = async () => {
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: browserPath()!,
      args: browserFlags,
      viewport: phone,
      reducedMotion: 'reduce',
    })
    return { context, page: await context.newPage() }
  }
  const complaint = `Gives up at dusk ${Date.now()}`
  const caption = `Ice on the vent’s lip ${letters()}`
  let { context, page } = await start()
  try {
    await signIn(page, url, ott.name, ott.password)
    await sent(page).waitFor()
    await workerIsReady(page)
    // The browser writes who signed in to the disk up to a minute later, or when it is closed: a phone that dies before
    // that asks for a sign-in. This one was signed in on the day before.
    await context.close()
    ;({ context, page } = await start())
    await page.goto(url)
    await sent(page).waitFor()
    await context.setOffline(true)

    await page.getByRole('searchbox').fill('sallow 110')
    await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    await page.getByRole('link', { name: 'Compare a reading' }).click()
    for (const key of ['0', 'Decimal point', '1', '2'])
      await page.getByRole('button', { name: key, exact: true }).click()
    await page.getByRole('radio', { name: 'At the click' }).check({ force: true })
    await page.getByRole('radio', { name: /^Open/ }).check({ force: true })
    await page.getByLabel('Gauge', { exact: true }).selectOption({ index: 1 })
    await page.getByRole('checkbox', { name: /^Zeroed just before/ }).check({ force: true })
    await page.getByRole('heading', { level: 2, name: 'Too low to close it' }).waitFor()

    await page.goto(`${url}/cases`)
    await page.getByRole('list', { name: 'Cases' }).getByRole('link').first().click()
    await page.getByRole('link', { name: /^Furnace / }).click()
    await page.getByRole('link', { name: 'New case' }).first().click()
    await page.getByLabel('What is complained of').fill(complaint)
    await page.getByRole('radio', { name: /proving circuit/i }).check({ force: true })
    await page.getByRole('button', { name: /Open the case/ }).click()
    await page.waitForURL(/\/case\?id=/)
    const casePage = page.url()
    await page.getByText('Add a photo', { exact: true }).click()
    await page.getByLabel('What is to be seen, in a few words').fill(caption)
    await page
      .getByRole('group', { name: 'Photo', exact: true })
      .getByLabel('Choose a picture')
      .setInputFiles({ name: 'IMG_0002.jpg', mimeType: 'image/jpeg', buffer: await picture() })
    // A slow phone takes its time to make it smaller.
    await page.getByText('The file does not say when it was taken.', { exact: false }).waitFor()
    await page.getByRole('button', { name: 'Save the photo' }).click()
    const line = page.getByText(/records and 1 picture waiting to be sent/)
    await line.waitFor()
    const waiting = (await line.textContent())!

    // As a phone out of battery ends it: no page is told, nothing is tidied up.
    kill(profile)
    await context.close().catch(closedAlready)
    ;({ context, page } = await start())
    await context.setOffline(true)
    await page.goto(casePage)
    // What the page shows instead is the first thing to know where it fails.
    await expect.poll(() => page.locator('body').textContent(), { timeout: 30_000 }).toContain(complaint)
    await page.getByText(waiting).waitFor()

    await context.setOffline(false)
    await online(page)
    // A browser writes its cookies now and then: killed before that, the session is gone, and signing in again sends.
    const again = page.getByRole('link', { name: 'Sign in again' })
    await sent(page).or(again).first().waitFor()
    if (await again.isVisible()) await signIn(page, url, ott.name, ott.password)
    await sent(page).waitFor()
    await page.reload()
    await sent(page).waitFor()
    expect(await inLog(context, url, complaint)).toEqual([complaint])
    expect(await inLog(context, url, caption)).toEqual([caption])
    await page.goto(casePage)
    await page.getByRole('link', { name: new RegExp(caption) }).click()
    await page.getByText('The server holds the picture', { exact: false }).waitFor()
  } finally {
    await context.close().catch(closedAlready)
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 })
  }
}, 90_000)

test('a lost phone hands over what waited and empties itself; a manager reads it on People’s list and admits it', async () => {
  const page = await signedIn(browser, url, ott, 'allow')
  await workerIsReady(page)
  const text = `Lost phone ${letters()}`
  await page.goto(`${url}/ask?model=ZZ-9944`)
  await page.getByLabel('What is printed on the switch').fill(text)
  await page.context().setOffline(true)
  await page.getByRole('button', { name: 'Ask', exact: true }).click()
  await page.getByText('1 record waiting to be sent').waitFor()

  const desk = await signedIn(browser, url, manager)
  await desk.goto(`${url}/people`)
  const devices = desk.getByRole('list', { name: `Devices of ${ott.name}` })
  // The newest contact stands first.
  await devices.getByRole('button', { name: 'End this device' }).first().click()
  await devices.getByRole('button', { name: 'End it' }).click()
  await desk.getByText(/^Done:/).waitFor()

  await page.context().setOffline(false)
  await online(page)
  await page.getByText('The team file is gone from this device').waitFor()
  await page.getByRole('link', { name: 'Sign in' }).waitFor()
  const left = await page.evaluate(async () => {
    const counts: number[] = []
    for (const { name } of await indexedDB.databases()) {
      const database = await new Promise<IDBDatabase>((done) => {
        const asked = indexedDB.open(name!)
        asked.onsuccess = () => done(asked.result)
      })
      for (const store of database.objectStoreNames)
        counts.push(
          await new Promise<number>((done) => {
            const asked = database.transaction(store).objectStore(store).count()
            asked.onsuccess = () => done(asked.result)
          }),
        )
      database.close()
    }
    return counts
  })
  expect(left.length).toBeGreaterThan(3)
  expect(new Set(left)).toEqual(new Set([0]))
  expect(await inLog(desk.context(), url, text)).toEqual([])

  await desk.reload()
  await desk.getByRole('link', { name: /set aside from ended devices/ }).click()
  const sheet = desk.getByRole('article').filter({ hasText: text })
  await sheet.getByRole('button', { name: 'Admit it to the log' }).click()
  await desk.getByText('Done: 1 record is in the log.').waitFor()
  expect(await inLog(desk.context(), url, text)).toEqual([text])
})
