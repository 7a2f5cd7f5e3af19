import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { startServerProcess } from '../setup/serverProcess'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

const pageFor = async (
  person: (typeof demoPeople)[keyof typeof demoPeople],
  viewport = desk,
): Promise<Page> => {
  const page = await (await openContext(browser, viewport)).newPage()
  await signIn(page, url, person.name, person.password)
  return page
}

describe('a question and its answer', () => {
  test('a technician asks; the dispatcher records the answer; the technician’s card has it', async () => {
    const technician = await pageFor(demoPeople.sunniva, phone)
    await technician.getByRole('searchbox').fill('plover 095')
    await technician.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    await technician.getByText('No rating is on file for this switch.').waitFor()
    const card = technician.url()
    await technician.getByRole('link', { name: 'Ask for this rating' }).click()
    await technician.getByLabel('What is printed on the switch').fill('nothing')
    await technician.getByRole('checkbox', { name: 'Infants in the house' }).check({ force: true })
    await technician.getByRole('button', { name: 'Ask', exact: true }).click()
    await technician.getByText('Everything is sent').waitFor()

    const dispatcher = await pageFor(demoPeople.dunja)
    await dispatcher.getByRole('link', { name: 'Phone desk' }).click()
    const asked = dispatcher.getByRole('article', { name: /Plover 095/ }).first()
    await asked.getByRole('link', { name: 'Record the answer' }).click()
    await dispatcher.getByLabel(/^Letter for letter/).fill('CLOSE -0.66 ±0.05 in. w.c.')
    await dispatcher
      .getByLabel('What does the number rest on?')
      .selectOption({ label: 'Factory technical support' })
    await dispatcher.getByLabel('Whom did you ring?').fill('Maker’s technical line')
    await dispatcher.getByLabel('Their reference or ticket number').fill('T-90210')
    await dispatcher.getByRole('radio', { name: 'Yes' }).check({ force: true })
    await dispatcher.getByRole('radio', { name: 'Every one of this range' }).check({ force: true })
    await dispatcher.getByText('Closes (make point): Not on file now. Would stand as: Supported.').waitFor()
    await dispatcher.getByRole('button', { name: 'Save the report' }).click()
    await dispatcher.getByText('0.66').first().waitFor()
    await dispatcher.getByText('Everything is sent').waitFor()

    await technician.goto(card)
    await technician.getByText('0.66').first().waitFor()
    expect(await technician.getByRole('article').first().textContent()).toContain('ref. T-90210')
    await dispatcher.goto(`${url}/phone-desk`)
    await dispatcher.getByRole('heading', { level: 1, name: 'Phone desk' }).waitFor()
    // Until the technician has seen it, the desk is told to ring the house.
    await dispatcher.getByRole('article', { name: /Plover 095/ }).waitFor({ state: 'detached' })
  })

  test('a report can be withdrawn with a reason; it stays readable and counts no more', async () => {
    const page = await pageFor(demoPeople.piet)
    await page.getByRole('searchbox').fill('thistle 1 040')
    await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    await page.getByText(/What each source says, letter for letter/).click()
    const before = await page.getByText(/What each source says/).textContent()
    await page.getByRole('list', { name: 'Source', exact: true }).first().getByRole('link').click()
    await page.getByRole('link', { name: 'Withdraw this record' }).click()
    await page.getByLabel('Why?').fill('Read from the wrong line.')
    await page.getByRole('button', { name: 'Withdraw it' }).click()
    await page
      .getByRole('article', { name: 'Withdrawn' })
      .getByText('Read from the wrong line.', { exact: false })
      .waitFor()
    await page.goto(`${url}/?q=thistle%201%20040`)
    await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    await page.getByText(/Withdrawn, still readable/).waitFor()
    expect(await page.getByText(/What each source says/).textContent()).not.toBe(before)
  })
})

describe('people', () => {
  test('a manager invites; the invited person joins by the link, once', async () => {
    const manager = await pageFor(demoPeople.ragna)
    await manager.goto(`${url}/people`)
    await manager.getByLabel('Name, as the team will see it').fill('Jorun Pelk')
    await manager.getByRole('button', { name: 'Make the invitation' }).click()
    const link = await manager.getByLabel('One-time link').inputValue()
    expect(link).toContain('/join#')

    const joined = await (await openContext(browser)).newPage()
    await joined.goto(link)
    await joined.getByRole('heading', { name: 'Welcome, Jorun Pelk' }).waitFor()
    await joined.getByLabel('Password', { exact: true }).fill('velvet anchor pigeon')
    await joined.getByLabel('The same password again').fill('velvet anchor pigeon')
    await joined.getByRole('button', { name: 'Join, and sign in' }).click()
    await joined.getByRole('searchbox').waitFor()

    const second = await (await openContext(browser)).newPage()
    await second.goto(link)
    await second.getByText('This link can’t be used').waitFor()
  })

  test('a technician sees who is on the team and can change nothing', async () => {
    const page = await pageFor(demoPeople.tobin)
    await page.goto(`${url}/people`)
    await page.getByText('Ragna Ellstrop').waitFor()
    expect(await page.getByRole('button', { name: 'Make the invitation' }).count()).toBe(0)
  })

  test('unit and light are one’s own, and stay', async () => {
    const page = await pageFor(demoPeople.tobin)
    await page.goto(`${url}/preferences`)
    await page.getByRole('radio', { name: 'Pa', exact: true }).click({ force: true })
    await page.getByRole('radio', { name: 'Dark, for basements' }).click({ force: true })
    await page.getByText('Everything is sent').waitFor()
    await page.reload()
    expect(await page.getAttribute('html', 'data-theme')).toBe('dark')
    await page.goto(`${url}/?q=sallow%20110`)
    await page.getByRole('list', { name: 'Results' }).getByRole('link').first().click()
    expect(await page.getByRole('article').first().textContent()).toMatch(/Closes\s\(make\spoint\)\d+\sPa/)
  })
})

describe('the first visit', () => {
  test('asks for the code that the terminal printed; without it nobody claims the server', async () => {
    const data = mkdtempSync(path.join(tmpdir(), 'inchwater-empty-'))
    const server = await startServerProcess(data)
    try {
      const page = await (await openContext(browser)).newPage()
      await page.goto(server.url)
      await page.getByRole('link', { name: 'Set it up' }).click()
      const fill = async (code: string) => {
        await page.getByLabel('Code from the terminal').fill(code)
        await page.getByLabel('Your name, as the team will see it').fill('Thea Lorrick')
        await page.getByLabel('Password', { exact: true }).fill('marble kettle heron')
        await page.getByLabel('The same password again').fill('marble kettle heron')
        await page.getByRole('button', { name: 'Set up, and sign in' }).click()
      }
      await fill('AAAAA-AAAAA-AAAAA-AAAAA')
      await page.getByText('That is not the code of this start.', { exact: false }).waitFor()
      const code = /\b[A-Z0-9]{5}(?:-[A-Z0-9]{5}){3}\b/.exec(server.output())?.[0]
      expect(code).toBeDefined()
      await fill(code!)
      await page.getByText('No equipment on file yet').waitFor()
    } finally {
      await server.stop()
      rmSync(data, { recursive: true, force: true })
    }
  })
})
