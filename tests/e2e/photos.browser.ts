import { createHash } from 'node:crypto'
import ExifReader from 'exifreader'
import type { Browser, BrowserContext, Page } from 'playwright-core'
import sharp from 'sharp'
import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ott, piet, ragna } = demoPeople
let browser: Browser
let technician: BrowserContext
let dispatcher: BrowserContext
let manager: BrowserContext
let address: string
let furnace: string
let camera: Buffer

/** A page of an old manual as a phone takes it: turned, with its place and its moment in the file. */
const fromTheCamera = (background = '#e8e4d8'): Promise<Buffer> =>
  sharp({ create: { width: 2400, height: 1600, channels: 3, background } })
    .composite([
      {
        input: { create: { width: 900, height: 120, channels: 3, background: '#202020' } },
        left: 700,
        top: 700,
      },
    ])
    .jpeg({ quality: 95 })
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD2: { DateTimeOriginal: '2026:01:12 09:41:07', OffsetTimeOriginal: '+01:00' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '51/1 30/1 0/1',
        GPSLongitudeRef: 'E',
        GPSLongitude: '8/1 20/1 0/1',
      },
    })
    .toBuffer()

/** Adds records as the person who is signed in on a page, as an import would, and gives their ids. */
const say = (
  page: Page,
  author: string,
  said: { id: string; kind: string; body: unknown }[],
): Promise<void> =>
  page.evaluate(
    async ({ author, said }) => {
      const sentAt = new Date().toISOString()
      const records = said.map((one) => ({ ...one, version: 1, saidAt: sentAt, author, device: 'desk-1' }))
      const answer = await fetch('/api/records', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ sentAt, records }),
      })
      const { value } = await answer.json()
      for (const one of value.answers) if (one.outcome !== 'stored') throw new Error(JSON.stringify(one))
    },
    { author, said },
  )

beforeAll(async () => {
  browser = await openBrowser()
  camera = await fromTheCamera()
  const open = async (person: typeof ott, viewport: typeof phone, offline: 'allow' | 'block' = 'block') => {
    const context = await openContext(browser, viewport, 'light', offline)
    const page = await context.newPage()
    await signIn(page, url, person.name, person.password)
    return { context, page }
  }
  const boss = await open(ragna, desk)
  const [maker, range, position, house] = [uuidv7(), uuidv7(), uuidv7(), uuidv7()]
  const circuit = { kind: 'one-port', between: 'port and room', tap: 'collector box', sense: 'suction' }
  await say(boss.page, ragna.id, [
    { id: maker, kind: 'maker', body: { name: 'Pellow Vane' } },
    {
      id: range,
      kind: 'equipment range',
      body: {
        makerId: maker,
        name: 'Pellow 7',
        modelPatterns: ['PV7-*'],
        fuel: 'natural gas',
        heat: 'condensing',
      },
    },
    {
      id: position,
      kind: 'position',
      body: { rangeId: range, name: 'Only switch', stage: 'single stage', ...circuit },
    },
    {
      id: house,
      kind: 'furnace',
      body: { siteLabel: 'Gantry Lane 3', rangeId: range, model: 'PV7-060', fuel: 'natural gas' },
    },
  ])
  address = `/setpoint?position=${position}`
  furnace = `/furnace?id=${house}`
  manager = boss.context
  dispatcher = (await open(piet, desk)).context
  const basement = await open(ott, phone, 'allow')
  technician = basement.context
  // The first visit with a signal: the pages are kept once the worker is at work.
  await basement.page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  await basement.page.waitForFunction(() => navigator.serviceWorker.controller !== null)
})
afterAll(() => browser?.close())

const opened = async (context: BrowserContext, path: string): Promise<Page> => {
  const page = context.pages()[0]!
  await page.goto(url + path)
  await page.getByText('Everything is sent').waitFor()
  return page
}
const choose = (page: Page, question: string | RegExp, answer: string) =>
  page.getByRole('group', { name: question }).getByText(answer, { exact: true }).click()
const card = (page: Page) => page.getByRole('article').first()

/** How many there are of something in the technician's own store, or the first of them as base64. */
const fromStore = (page: Page, name: string, first: boolean): Promise<string> =>
  page.evaluate(
    async ({ id, name, first }) => {
      const done = <T>(request: IDBRequest<T>) =>
        new Promise<T>((resolve, reject) => {
          request.onsuccess = () => resolve(request.result)
          request.onerror = () => reject(request.error)
        })
      const database = await done(indexedDB.open(`inchwater own ${id}`))
      const store = database.transaction(name).objectStore(name)
      const said = first ? await done(store.getAll()) : await done(store.count())
      database.close()
      if (!Array.isArray(said)) return String(said)
      return btoa(
        Array.from(new Uint8Array(said[0] as ArrayBuffer), (byte) => String.fromCharCode(byte)).join(''),
      )
    },
    { id: ott.id, name, first },
  )
const inStore = async (page: Page, name: string): Promise<number> =>
  Number(await fromStore(page, name, false))
const onlyPicture = async (page: Page): Promise<Buffer> =>
  Buffer.from(await fromStore(page, 'pictureBytes', true), 'base64')

describe('a photo as proof', () => {
  let photo: string
  let sha256: string

  test('is taken without a signal, arrives with its report, upright and without its place, and waits for a second reader', async () => {
    const page = await opened(technician, address)
    await page.goto(`${url}${address.replace('/setpoint', '/report')}`)
    await page.getByLabel(/^Letter for letter/).fill('CLOSES -0.60 in. w.c.')
    await page.getByLabel('What does the number rest on?').selectOption('older literature')
    await choose(page, /Which furnaces/, 'Every one of this range')
    await technician.setOffline(true)
    await page
      .getByRole('group', { name: 'Photo of the page' })
      .getByLabel('Choose a picture')
      .setInputFiles({ name: 'IMG_0001.jpg', mimeType: 'image/jpeg', buffer: camera })
    await page.getByText('Taken 12 Jan 2026, 09:41 by the camera’s clock.', { exact: false }).waitFor()
    expect(await seriousFaults(page)).toEqual([])
    await page.getByRole('button', { name: 'Save the report' }).click()
    // It leads on by itself.
    await page.waitForURL((at) => at.pathname === '/setpoint')
    await page.getByText('2 records and 1 picture waiting to be sent').waitFor()
    const bytes = await onlyPicture(page)
    await technician.setOffline(false)
    await page.evaluate(() => window.dispatchEvent(new Event('online')))
    const { gps, exif } = ExifReader.load(bytes, { expanded: true })
    expect([gps, exif]).toEqual([undefined, undefined])
    // Turned by the camera, upright since: taller than wide.
    expect(await sharp(bytes).metadata()).toMatchObject({ format: 'jpeg', width: 1365, height: 2048 })

    const after = await opened(technician, address)
    photo = (await card(after)
      .getByRole('list', { name: 'Photos of what was read' })
      .getByRole('link')
      .getAttribute('href'))!
    await after.goto(url + photo)
    await after.getByText('The server holds the picture: it counts as a proof.').waitFor()
    // Sent by the page or by its worker, whichever had the signal first.
    sha256 = createHash('sha256').update(bytes).digest('hex')
    const shown = await technician.request.get(`${url}/api/photos/${sha256}`)
    expect(shown.headers()).toMatchObject({ 'content-type': 'image/jpeg', 'cache-control': 'no-store' })
    expect(shown.status()).toBe(200)
    const stored = ExifReader.load(await shown.body(), { expanded: true })
    expect([stored.gps, stored.exif]).toEqual([undefined, undefined])
    await after.goto(url + address)
    expect(await card(after).textContent()).toMatch(/Unverified/)
  })

  test('is read by a second person who does not see the first reading, and the level rises', async () => {
    const page = await opened(dispatcher, address)
    const complaints = complaintsOf(page)
    await card(page).getByRole('link', { name: 'Read this photo yourself' }).click()
    const picture = page.getByRole('img', { name: 'Page of a document' })
    await picture.waitFor()
    await page.waitForFunction(() =>
      [...document.images].every(({ complete, naturalWidth }) => complete && naturalWidth > 0),
    )
    expect(await page.locator('main').textContent()).not.toMatch(/0?\.60/)
    expect([await seriousFaults(page), await scrollsSideways(page)]).toEqual([[], false])
    await page.getByLabel(/^Letter for letter/).fill('closes -0.60 in. w.c.')
    await page.getByRole('button', { name: 'Save what I read' }).click()
    await page.getByText('Two people read the same off it').waitFor()
    const after = await opened(dispatcher, address)
    await card(after)
      .getByText(/^Supported/)
      .first()
      .waitFor()
    expect(complaints).toEqual([])
  })

  test('is withheld by a manager with a reason: the level falls back, and no device shows the picture any more', async () => {
    const page = await opened(manager, photo)
    await page.getByRole('link', { name: 'Withhold the picture' }).click()
    await page.getByRole('checkbox', { name: /^The picture/ }).check()
    await page.getByLabel('Why?').fill('A child is in the picture.')
    await page.getByRole('checkbox', { name: /can’t be undone/ }).check()
    await page.getByRole('button', { name: 'Withhold “The picture” for good' }).click()
    await page.getByText('Everything is sent').waitFor()
    const after = await opened(manager, address)
    await card(after)
      .getByText(/^Unverified/)
      .first()
      .waitFor()
    const phonePage = await opened(technician, photo)
    await phonePage.getByText('Picture withheld', { exact: true }).waitFor()
    await phonePage.getByText('A child is in the picture.', { exact: false }).waitFor()
    const there = await technician.request.get(`${url}/api/photos/${sha256}`)
    expect(there.status()).toBe(410)
    await expect.poll(() => inStore(phonePage, 'pictureBytes')).toBe(0)
  })
})

test('a photo on the furnace’s page is seen at once where it was taken, without a signal, and by the team once it is sent', async () => {
  const page = await opened(technician, furnace)
  await page.getByText('Add a photo', { exact: true }).click()
  await technician.setOffline(true)
  await page
    .getByRole('group', { name: 'Photo', exact: true })
    .getByLabel('Choose a picture')
    .setInputFiles({ name: 'IMG_0002.jpg', mimeType: 'image/jpeg', buffer: await fromTheCamera('#d8e4e8') })
  await page.getByText('by the camera’s clock.', { exact: false }).waitFor()
  await page.getByLabel('What is to be seen, in a few words').fill('Sag above the hatch')
  await page.getByRole('button', { name: 'Save the photo' }).click()
  await page.getByText('1 record and 1 picture waiting to be sent').waitFor()
  const photos = (of: Page) => of.getByRole('list', { name: 'Photos', exact: true })
  const drawn = async (of: Page) => {
    // What is out of sight is not fetched.
    await photos(of).scrollIntoViewIfNeeded()
    await expect
      .poll(
        () =>
          photos(of)
            .locator('img')
            .evaluateAll((all) => all.map((one) => (one as HTMLImageElement).naturalWidth > 0)),
        { timeout: 10_000 },
      )
      .toEqual([true])
  }
  await drawn(page)
  await technician.setOffline(false)
  await page.evaluate(() => window.dispatchEvent(new Event('online')))
  await page.getByText('Everything is sent').waitFor()

  const office = await opened(dispatcher, furnace)
  await drawn(office)
  await photos(office).getByRole('link').click()
  await office.getByText('The server holds the picture: it counts as a proof.').waitFor()
  expect(await office.getByRole('main').textContent()).toContain('Sag above the hatch')
  expect(await seriousFaults(office)).toEqual([])
})

test('a file that is no picture is refused in a sentence, and nothing that was typed is lost', async () => {
  const page = await opened(technician, furnace)
  await page.getByText('Add a photo', { exact: true }).click()
  await page.getByLabel('What is to be seen, in a few words').fill('The trap')
  await page
    .getByRole('group', { name: 'Photo', exact: true })
    .getByLabel('Choose a picture')
    .setInputFiles({
      name: 'a.jpg',
      mimeType: 'image/jpeg',
      buffer: Buffer.from('<html>not a picture</html>'),
    })
  await page.getByText('This file can’t be read as a picture here.', { exact: false }).waitFor()
  expect(await page.getByLabel('What is to be seen, in a few words').inputValue()).toBe('The trap')
})
