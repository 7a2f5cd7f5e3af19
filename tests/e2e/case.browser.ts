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
  await page.getByText(/^Team file from/).waitFor()
  return () => context.close()
})

const article = (name: string) => page.getByRole('article', { name, exact: true })

/** Opens a new case on the first furnace that today's list or the search offers. */
async function newCase(complaint: string): Promise<void> {
  await page.goto(`${url}/cases`)
  const furnace = await page
    .getByRole('list', { name: 'Cases' })
    .getByRole('link')
    .first()
    .getAttribute('href')
  await page.goto(`${url}${furnace}`)
  await page.getByRole('link', { name: /^Furnace / }).click()
  await page.getByRole('link', { name: 'New case' }).first().click()
  await page.getByLabel('What is complained of').fill(complaint)
  await page.getByRole('radio', { name: /proving circuit/i }).check({ force: true })
  await page.getByRole('button', { name: /Open the case/ }).click()
  await page.waitForURL(/\/case\?id=/)
  await page.getByText(complaint).first().waitFor()
}

const see = async (finding: string, value: string): Promise<void> => {
  await page.getByLabel('Search the findings').fill(finding)
  await page
    .getByRole('region', { name: 'Findings that match' })
    .getByRole('group', { name: finding, exact: true })
    .getByRole('button', { name: value, exact: true })
    .click()
  await page.getByText(`Recorded: ${finding}`).waitFor()
  await page.getByLabel('Search the findings').fill('')
}

describe('a technician works a case', () => {
  test('taps findings, sees the causes change, undoes, and what was tapped survives a reload', async () => {
    await newCase('Starts, then gives up')
    const top = () => article('Likely causes').getByRole('heading', { level: 3 }).first().textContent()
    await see('Trap', 'Sludge in it')
    await see('Drain when water is poured in', 'Slow or stop-start')
    await see('Burners lost because the switch opened', 'After 5 to 20 minutes')
    await expect.poll(top).toBe('Trap plugged')
    await article('What you see').getByRole('button', { name: 'Undo' }).click()
    await page.getByText('Everything is sent').waitFor()
    await page.reload()
    await page.getByText('Condensate: 2 of', { exact: false }).waitFor()
    expect(complaints).toEqual([])
  })

  test('a danger hides the causes until it is said what was done, and bars every ending but left off', async () => {
    await newCase('Smells hot')
    await see('Scorching', 'Seen')
    await page.getByRole('region', { name: 'Stop: leave it off' }).waitFor()
    expect(await article('Likely causes').count()).toBe(0)
    for (const step of ['Gas off', 'Tagged', 'Occupant told'])
      await page.getByRole('checkbox', { name: step }).check({ force: true })
    await page.getByRole('button', { name: 'Record what was done' }).click()
    await article('Likely causes').waitFor()
    await page.getByRole('link', { name: 'End the visit' }).click()
    await page.getByRole('radio', { name: /No fault found/ }).check({ force: true })
    await page
      .getByText(/A danger is open/)
      .first()
      .waitFor()
  })

  test('an ending without what it needs is kept as not finished, and the history prints it all', async () => {
    await newCase('Clicks and waits')
    await see('Trap', 'Dry')
    await page.getByRole('link', { name: 'End the visit' }).click()
    await page.getByRole('radio', { name: /Waiting for part/ }).check({ force: true })
    await page.getByRole('button', { name: /^End the visit/ }).click()
    await page
      .getByText(/not finished/i)
      .first()
      .waitFor()
    await page.goto((await page.url()).replace('/case/end', '/case/history').replace(/&visit=[^&]*/, ''))
    await page.getByRole('heading', { level: 1, name: 'Case history' }).waitFor()
    expect(await page.getByRole('main').textContent()).toContain('Trap')
  })
})
