import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { browserFlags, browserPath } from '../browser'
import { code128Picture, writeFilm } from '../setup/codePictures'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ott, ragna } = demoPeople
let folder = ''
let browser: Browser
let context: BrowserContext
let page: Page
/** A part number of the demo, as it is on file. */
let partNumber = ''

/** A Chromium whose camera sees nothing but a film of one QR code. */
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'codes-'))
  const film = path.join(folder, 'camera.y4m')
  partNumber = 'OM-7710'
  writeFilm(film, partNumber)
  browser = await chromium.launch({
    executablePath: browserPath()!,
    args: [
      ...browserFlags,
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${film}`,
    ],
  })
  context = await openContext(browser, phone, 'light', 'allow')
  page = await context.newPage()
  await signIn(page, url, ott.name, ott.password)
  await page.getByText(/^Team file from/).waitFor()
})
afterAll(async () => {
  await browser?.close()
  rmSync(folder, { recursive: true, force: true })
})

const resultsOnFile = () => page.getByRole('list', { name: 'On file' }).getByRole('link')

/** Every address that a page asks for while something is done. */
async function askedFor(work: () => Promise<void>): Promise<string[]> {
  const asked: string[] = []
  const keep = (request: { url(): string }) => asked.push(request.url())
  context.on('request', keep)
  await work()
  context.off('request', keep)
  return asked
}

describe('a technician with a phone scans', () => {
  test('a camera that was refused is said to be, and nothing of the reader is fetched for it', async () => {
    const asked = await askedFor(async () => {
      await page.goto(url)
      await page.getByRole('link', { name: 'Scan a code' }).click()
      await page.getByRole('alert').filter({ hasText: 'The camera was refused.' }).waitFor()
    })
    expect(asked.filter((address) => address.includes('/readers/'))).toEqual([])
    expect(await seriousFaults(page)).toEqual([])
    expect(await scrollsSideways(page)).toBe(false)
  })

  test('the code before the camera is read, shown letter for letter and found, by this server’s files alone', async () => {
    await context.grantPermissions(['camera'], { origin: url })
    const complaints = complaintsOf(page)
    const asked = await askedFor(async () => {
      await page.goto(`${url}/scan`)
      await page.getByRole('heading', { name: 'Read' }).waitFor()
    })
    expect(await page.locator('q').textContent()).toBe(partNumber)
    expect(await resultsOnFile().first().getAttribute('href')).toMatch(/^\/setpoint\?position=/)
    // By the page and, once it has taken over, by the service worker for the page: each file counts once.
    expect(new Set(asked.filter((address) => address.includes('/readers/'))).size).toBe(3)
    expect(asked.filter((address) => !address.startsWith(url) && !address.startsWith('data:'))).toEqual([])
    expect(complaints).toEqual([])
    expect(await seriousFaults(page)).toEqual([])
  })

  test('only the page that scans gets the camera, and no page may compile WebAssembly', async () => {
    const tryBoth = async () =>
      page.evaluate(async () => {
        const camera = await navigator.mediaDevices.getUserMedia({ video: true }).then(
          (stream) => {
            for (const track of stream.getTracks()) track.stop()
            return 'given'
          },
          (cause: DOMException) => cause.name,
        )
        const smallest = new Uint8Array([0, 0x61, 0x73, 0x6d, 1, 0, 0, 0])
        const wasm = await WebAssembly.compile(smallest).then(
          () => 'compiled',
          (cause: Error) => cause.name,
        )
        return { camera, wasm }
      })
    expect(await tryBoth()).toEqual({ camera: 'given', wasm: 'CompileError' })
    await page.goto(`${url}/cases/new`)
    await page.getByRole('heading', { level: 1 }).waitFor()
    expect(await tryBoth()).toEqual({ camera: 'NotAllowedError', wasm: 'CompileError' })
  })

  test('a still picture of a barcode is read without a signal, once the reader has been used with one', async () => {
    await page.evaluate(() => navigator.serviceWorker.ready)
    await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    const picture = { name: 'part.png', mimeType: 'image/png', buffer: await code128Picture('T-40-101') }
    const read = async () => {
      await page.getByLabel('Or read it from a picture').setInputFiles(picture)
      await page.getByRole('heading', { name: 'Read' }).waitFor()
      expect(await page.locator('q').textContent()).toBe('T-40-101')
      expect(await page.getByRole('article', { name: 'Read' }).textContent()).toContain('Code 128')
    }
    await context.clearPermissions()
    await page.goto(`${url}/scan`)
    await read()
    await context.setOffline(true)
    await page.goto(`${url}/scan`)
    await read()
    await context.setOffline(false)
  })

  test('what was scanned for a new case or a report comes back to the form that asked', async () => {
    await page.goto(`${url}/cases/new`)
    await page.getByLabel('What is complained of').fill('No heat since Tuesday')
    await page.getByRole('link', { name: 'Scan its tag or serial number' }).click()
    await page.getByLabel('Or type what is printed beside it').fill('ferry steps 4')
    await page.getByRole('button', { name: 'Look it up' }).click()
    await page.getByRole('heading', { name: 'Read' }).waitFor()
    await page
      .getByRole('link', { name: /^Take / })
      .first()
      .click()
    await page.getByText(/^Furnace: /).waitFor()
    await expect
      .poll(() => page.getByLabel('What is complained of').inputValue())
      .toBe('No heat since Tuesday')
  })
})

describe('furnace tags', () => {
  let code = ''

  test('a manager prints a sheet of blank tags, on paper as on the screen', async () => {
    const desk = await openContext(browser)
    const sheet = await desk.newPage()
    await signIn(sheet, url, ragna.name, ragna.password)
    await sheet.goto(`${url}/tags`)
    await sheet.getByLabel('How many?').fill('24')
    await sheet.getByRole('button', { name: 'Make 24 tags' }).click()
    const tags = sheet.getByRole('list', { name: 'Tags to print' }).getByRole('listitem')
    expect(await tags.count()).toBe(24)
    expect(await seriousFaults(sheet)).toEqual([])
    code = (await tags.first().textContent())!.replace('Furnace tag', '').replaceAll('-', '')
    await sheet.emulateMedia({ media: 'print' })
    expect(await sheet.getByRole('button').filter({ visible: true }).count()).toBe(0)
    expect(await sheet.getByRole('heading').filter({ visible: true }).count()).toBe(0)
    const paper = await sheet.pdf({ format: 'A4' })
    // One page object for one sheet (ISO 32000-1, 7.7.3.3).
    expect(paper.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1)
    await desk.close()
  })

  test('a stranger who scans a tag sees the sign-in, and nothing of the furnace', async () => {
    const stranger = await openContext(browser)
    const theirs = await stranger.newPage()
    await theirs.goto(`${url}/t?c=${code}`)
    await theirs.getByRole('button', { name: 'Sign in' }).waitFor()
    expect(await theirs.getByRole('main').ariaSnapshot()).not.toMatch(/furnace|tag/i)
    await stranger.close()
  })

  test('a blank tag is stuck on without a signal, and opens its furnace from then on', async () => {
    await page.goto(`${url}/t?c=${code}`)
    await page.getByRole('group', { name: 'Which furnace is this on?' }).waitFor()
    await context.setOffline(true)
    await page.reload()
    await page.getByLabel(/^Which furnace is this on: look for it by/).fill('ferry steps 4')
    await page
      .getByRole('radio', { name: /ferry steps/i })
      .first()
      .check({ force: true })
    await page.getByRole('button', { name: /^Record: it is on/ }).click()
    await page.waitForURL(/\/furnace\?id=/)
    await page.goto(`${url}/t?c=${code}`)
    await page.waitForURL(/\/furnace\?id=/)
    await page
      .getByRole('article', { name: 'Tags' })
      .getByText(code.replace(/.{4}(?=.)/g, '$&-'))
      .first()
      .waitFor()
    await context.setOffline(false)
    await page.evaluate(() => window.dispatchEvent(new Event('online')))
    await page.getByText('Everything is sent').waitFor()
  })
})
