import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna } = demoPeople
let browser: Browser
let contexts: Map<string, BrowserContext>
/** Addresses of screens that are about one thing, found by looking it up as a person would. */
let about: { setpoint: string; query: string; furnace: string; record: string; warranty: string }

const lights = ['light', 'dark'] as const
const sizes = { phone, desk } as const

beforeAll(async () => {
  browser = await openBrowser()
  contexts = new Map()
  for (const [size, viewport] of Object.entries(sizes)) {
    const context = await openContext(browser, viewport)
    const page = await context.newPage()
    await signIn(page, url, ragna.name, ragna.password)
    await page.close()
    contexts.set(size, context)
  }
  const page = await contexts.get('desk')!.newPage()
  const first = async (typed: string) => {
    await page.goto(`${url}/?q=${encodeURIComponent(typed)}`)
    const link = page.getByRole('list', { name: 'Results' }).getByRole('link').first()
    await link.waitFor()
    return (await link.getAttribute('href'))!
  }
  const setpoint = await first('sallow 110')
  const furnace = await first('ferry steps 4')
  await page.goto(url + setpoint)
  const record = (await page
    .getByRole('list', { name: /^Sources of/ })
    .getByRole('link')
    .first()
    .getAttribute('href'))!
  await page.goto(`${url}/reports`)
  const warranty = (await page
    .getByRole('link', { name: 'Record a warranty answer' })
    .first()
    .getAttribute('href'))!
  about = { setpoint, furnace, record, warranty, query: setpoint.slice('/setpoint'.length) }
  await page.close()
})
afterAll(() => browser?.close())

const screens: [name: string, path: () => string][] = [
  ['Find, before typing', () => '/'],
  ['Find, with results', () => '/?q=larkfell'],
  ['Find, with nothing found', () => '/?q=QQQQ-0000'],
  ['Setpoint', () => about.setpoint],
  ['Compare', () => `/compare${about.query}`],
  ['Add a report', () => `/report${about.query}`],
  ['Ask for a rating', () => `/ask${about.query}`],
  ['Found fitted', () => `/found-fitted${about.query}`],
  ['Settle', () => `/settle${about.query}&action=closes`],
  ['Furnace', () => about.furnace],
  ['Add a furnace', () => '/furnace/add'],
  ['Phone desk', () => '/phone-desk'],
  ['Callbacks', () => '/callbacks?period=all'],
  ['Callbacks, with the cases of a figure', () => '/callbacks?period=all&open=settled'],
  ['Equipment', () => '/equipment'],
  ['Gauges', () => '/gauges'],
  ['People', () => '/people'],
  ['Tokens', () => '/tokens'],
  ['What a program can ask', () => '/api-help'],
  ['Import', () => '/import'],
  ['Export', () => '/export'],
  ['Preferences', () => '/preferences'],
  ['Record', () => about.record],
  ['Withdraw', () => about.record.replace('/record?id=', '/withdraw?record=')],
  ['Withhold', () => about.record.replace('/record?id=', '/withhold?record=')],
  ['Warranty answer', () => about.warranty],
  ['Log', () => '/log'],
  ['Still on this device', () => '/waiting'],
  ['Danger sheet', () => '/danger'],
  ['Sign in', () => '/sign-in'],
  ['Set up', () => '/set-up'],
  ['Join', () => '/join#nothing'],
  ['An address that leads nowhere', () => '/nowhere'],
]

/**
 * Makes the window as high as the page, since what lies under the bar at the foot can be scrolled out of it, once the
 * page grows no more by what the server answers.
 */
async function showWholePage(page: Page): Promise<void> {
  await page.getByText('Asking the server …').waitFor({ state: 'detached' })
  const heightOfPage = () => page.evaluate(() => document.body.scrollHeight)
  let height = await heightOfPage()
  for (let looks = 0; looks < 3; looks++) {
    await page.evaluate(() => new Promise((done) => setTimeout(done, 100)))
    const now = await heightOfPage()
    if (now !== height) looks = 0
    height = now
  }
  const { width } = page.viewportSize()!
  await page.setViewportSize({ width, height: 400 + height })
}

describe.each(Object.keys(sizes))('on a %s, light and dark', (size) => {
  test.each(screens)(
    '%s: axe finds nothing serious, nothing sticks out, nothing complains',
    async (name, path) => {
      const page = await contexts.get(size)!.newPage()
      const complaints = complaintsOf(page)
      await page.goto(url + path())
      await page.getByRole('heading').first().waitFor()
      await page.getByRole('progressbar').waitFor({ state: 'detached' })
      expect(await scrollsSideways(page)).toBe(false)
      await showWholePage(page)
      for (const colorScheme of lights) {
        await page.emulateMedia({ colorScheme })
        expect(await seriousFaults(page), colorScheme).toEqual([])
      }
      expect(await scrollsSideways(page)).toBe(false)
      // A page that is not there, and a link that is dead, are answered with a status that the browser notes down.
      const expected = /nowhere|Join/.test(name) ? /status of (404|410)/ : /^$/
      expect(complaints.filter((complaint) => !expected.test(complaint))).toEqual([])
      await page.close()
    },
  )
})

test('no page carries a style attribute or an inline script without its nonce', async () => {
  const context = contexts.get('phone')!
  for (const [name, path] of screens) {
    const response = await context.request.get(url + path().split('#')[0])
    const html = await response.text()
    expect(html, name).not.toMatch(/<[^>]+\sstyle="/)
    for (const [script] of html.matchAll(/<script(?![^>]*\bsrc=)[^>]*>/g))
      expect(script, name).toMatch(/nonce="/)
    expect(response.headers()['content-security-policy'], name).toMatch(
      /default-src 'self'|default-src 'none'/,
    )
    expect(response.headers()['content-security-policy'], name).not.toContain('unsafe')
  }
})
