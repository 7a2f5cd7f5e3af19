import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, beforeEach, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { complaintsOf } from './audit'
import { openBrowser, openContext, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ott } = demoPeople
let browser: Browser
let context: BrowserContext
let page: Page
let complaints: string[]

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())
beforeEach(async () => {
  context = await openContext(browser)
  page = await context.newPage()
  complaints = complaintsOf(page)
  await signIn(page, url, ott.name, ott.password)
  return () => context.close()
})

const results = () => page.getByRole('list', { name: 'Results' }).getByRole('link')
const lookUp = async (text: string) => {
  await page.getByRole('searchbox').fill(text)
  await results().first().waitFor()
}

describe('a technician with a phone', () => {
  test('types at once, finds by maker, range and switch, and opens the setpoint in one tap', async () => {
    expect(await page.evaluate(() => document.activeElement?.getAttribute('type'))).toBe('search')
    await page.keyboard.type('sallow 110')
    // Results follow the keys; only those of the last key are meant.
    await results().first().filter({ hasText: 'Sallow 110' }).click()
    await page.getByRole('heading', { level: 1, name: 'Setpoint' }).waitFor()
    const card = page.getByRole('article').first()
    expect(await card.textContent()).toMatch(/Closes\s\(make\spoint\)[\d.]+\sin\.\sw\.c\./)
    expect(await card.textContent()).toMatch(/(Verified|Supported) \d{1,2} \w{3} 20\d\d/)
    expect(await card.getByRole('img').getAttribute('aria-label')).toMatch(/closes at/i)
    expect(complaints).toEqual([])
  })

  test('a look-up survives reload, and its address can be sent to somebody else', async () => {
    await lookUp('sallow 110')
    await results().first().click()
    await page.getByRole('article').first().waitFor()
    const shared = page.url()
    const numeral = await page.getByRole('article').first().textContent()
    await page.reload()
    await page.getByRole('article').first().waitFor()
    expect(page.url()).toBe(shared)
    expect(await page.getByRole('article').first().textContent()).toBe(numeral)
    await page.goto(`${url}/?q=sallow`)
    expect(await page.getByRole('searchbox').inputValue()).toBe('sallow')
    await page.goto(url)
    await page.getByRole('navigation', { name: 'Looked up lately' }).getByRole('link').first().waitFor()
  })

  test('compares a reading by the keypad alone, and is told what it means and what to do', async () => {
    await lookUp('sallow 110')
    await results().first().click()
    await page.getByRole('link', { name: 'Compare a reading' }).click()
    await page.getByText('Room CO meter on?').waitFor()
    for (const key of ['0', 'Decimal point', '1', '2'])
      await page.getByRole('button', { name: key, exact: true }).click()
    await page.getByRole('radio', { name: 'At the click' }).check({ force: true })
    await page.getByRole('radio', { name: /^Open/ }).check({ force: true })
    await page.getByLabel('Gauge', { exact: true }).selectOption({ index: 1 })
    await page.getByRole('checkbox', { name: /^Zeroed just before/ }).check({ force: true })
    await page.getByRole('heading', { level: 2, name: 'Too low to close it' }).waitFor()
    expect(await page.getByRole('main').textContent()).toContain('Leave the switch fitted')
    expect(complaints).toEqual([])
  })

  test('opens the danger sheet in one tap from the comparison', async () => {
    await lookUp('sallow 110')
    await results().first().click()
    await page.getByRole('link', { name: 'Compare a reading' }).click()
    await page.getByRole('link', { name: 'Open the danger sheet' }).click()
    const sheet = page.getByRole('dialog', { name: 'Danger sheet' })
    await sheet.waitFor()
    expect(await sheet.textContent()).toMatch(/everybody out/i)
    await page.keyboard.press('Escape')
    await sheet.waitFor({ state: 'hidden' })
  })

  test('does the whole of it by keyboard', async () => {
    await page.keyboard.type('sallow 110')
    await results().first().filter({ hasText: 'Sallow 110' }).waitFor()
    await page.keyboard.press('Tab')
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Setpoint' }).waitFor()
    await page.getByRole('link', { name: 'Compare a reading' }).focus()
    await page.keyboard.press('Enter')
    await page.getByLabel('What the gauge shows').focus()
    await page.keyboard.type('0.12')
    await page.getByRole('radio', { name: 'At rest' }).focus()
    await page.keyboard.press('ArrowRight')
    await page.keyboard.press('ArrowRight')
    await page.getByRole('radio', { name: /^Open/ }).focus()
    await page.keyboard.press('Space')
    await page.getByLabel('Gauge', { exact: true }).focus()
    await page.keyboard.press('ArrowDown')
    await page.getByRole('checkbox', { name: /^Zeroed just before/ }).focus()
    await page.keyboard.press('Space')
    await page.getByRole('heading', { level: 2, name: 'Too low to close it' }).waitFor()
  })

  test('a session that ends in the middle of a form keeps what was typed, and sends it after sign-in', async () => {
    await page.goto(`${url}/ask?model=ZZ-4411`)
    await page.getByLabel('What is printed on the switch').fill('nothing')
    await context.clearCookies()
    await page.getByRole('button', { name: 'Ask', exact: true }).click()
    await page.getByText('Your session has ended.', { exact: false }).waitFor()
    await page.getByText('1 record waiting to be sent').waitFor()
    await signIn(page, url, ott.name, ott.password)
    await page.getByText('Everything is sent').waitFor()
    await page.goto(`${url}/phone-desk`)
    await page.getByRole('article', { name: 'ZZ-4411' }).waitFor()
  })

  test('without a signal the open page goes on working, and what was recorded arrives once', async () => {
    await page.goto(`${url}/ask?model=ZZ-7702`)
    await page.getByLabel('What is printed on the switch').fill('ZZ .55')
    await context.setOffline(true)
    await page.getByRole('button', { name: 'Ask', exact: true }).click()
    // The next page can't be fetched without a signal; what was said is on the device all the same.
    await page.waitForURL((address) => !address.pathname.startsWith('/ask')).catch(() => undefined)
    await context.setOffline(false)
    await page.goto(`${url}/phone-desk`)
    await page.getByText('Everything is sent').waitFor()
    await page.getByRole('article', { name: 'ZZ-7702' }).waitFor()
    expect(await page.getByRole('article', { name: 'ZZ-7702' }).count()).toBe(1)
  })

  test('another person on the same device sees nothing of the first one’s', async () => {
    await lookUp('sallow 110')
    await results().first().click()
    await page.getByRole('article').first().waitFor()
    await page.goto(`${url}/preferences`)
    await page.getByRole('button', { name: 'Sign out here' }).click()
    await page.getByRole('button', { name: 'Sign in' }).waitFor()
    await signIn(page, url, demoPeople.piet.name, demoPeople.piet.password)
    expect(await page.getByRole('navigation', { name: 'Looked up lately' }).count()).toBe(0)
  })
})
