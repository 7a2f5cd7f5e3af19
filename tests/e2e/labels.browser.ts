import type { Browser, BrowserContext, Page } from 'playwright-core'
import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { labelPictures } from '../setup/labelPictures'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ott } = demoPeople
let browser: Browser
let context: BrowserContext
let page: Page
let report = ''
/** A picture of a made label: an invented part number, and a rating with its unit. */
let label: { name: string; mimeType: string; buffer: Buffer }
let printed = ''

beforeAll(async () => {
  const [made] = await labelPictures(23, 1)
  const { width, height, data, stated } = made!
  printed = stated[0]!.printed
  const buffer = await sharp(Buffer.from(data), { raw: { width, height, channels: 4 } })
    .jpeg({ quality: 90 })
    .toBuffer()
  label = { name: 'label.jpg', mimeType: 'image/jpeg', buffer }
  browser = await openBrowser()
  context = await openContext(browser, phone, 'light', 'allow')
  page = await context.newPage()
  await signIn(page, url, ott.name, ott.password)
  await page.getByText(/^Team file from/).waitFor()
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null)
  await page.goto(`${url}/?q=sallow%20110`)
  const first = page.getByRole('list', { name: 'Results' }).getByRole('link').first()
  report = (await first.getAttribute('href'))!.replace('/setpoint', '/report')
})
afterAll(() => browser?.close())

const field = () => page.getByLabel('Letter for letter, as printed, written or said')

/** Opens the report, takes the label’s photo, and has it read. */
async function readLabelOn(): Promise<void> {
  await page.goto(`${url}${report}`)
  await page
    .getByLabel('What does the number rest on?')
    .selectOption({ label: 'Rating label on the factory switch' })
  if (!(await page.getByRole('button', { name: 'Read the label in this photo' }).isVisible()))
    await page.getByLabel('Choose a picture').setInputFiles(label)
  await page.getByRole('button', { name: 'Read the label in this photo' }).click()
  await page.getByRole('list', { name: 'Ratings read from the photo' }).waitFor()
}

describe('a technician reads a label', () => {
  test('off a photo, with this server’s files alone, and no number is filled in until it is chosen', async () => {
    const complaints = complaintsOf(page)
    const asked: string[] = []
    context.on('request', (request) => asked.push(request.url()))
    await readLabelOn()
    expect(await field().inputValue()).toBe('')
    await page
      .getByRole('button', { name: /^Take “.*” as the rating/ })
      .first()
      .click()
    expect(await field().inputValue()).toContain(printed)
    await page.getByText('Read from a picture: check it.').first().waitFor()
    expect(asked.filter((address) => address.includes('/readers/labels')).length).toBeGreaterThan(0)
    expect(asked.filter((address) => !address.startsWith(url) && !/^(data|blob):/.test(address))).toEqual([])
    expect(complaints).toEqual([])
    expect(await seriousFaults(page)).toEqual([])
    expect(await scrollsSideways(page)).toBe(false)
  })

  test('without a signal, once the reader has been used with one; the mark is still there', async () => {
    await context.setOffline(true)
    await readLabelOn()
    expect(await field().inputValue()).toContain(printed)
    await page.getByText('Read from a picture: check it.').first().waitFor()
    await page.getByRole('button', { name: 'I checked it against the label' }).first().click()
    expect(await page.getByText('Read from a picture: check it.').count()).toBe(0)
    await context.setOffline(false)
  })
})
