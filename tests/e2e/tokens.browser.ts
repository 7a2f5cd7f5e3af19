import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna } = demoPeople
let browser: Browser
let page: Page
let token = ''

beforeAll(async () => {
  browser = await openBrowser()
  page = await (await openContext(browser, desk)).newPage()
  await signIn(page, url, ragna.name, ragna.password)
})
afterAll(() => browser?.close())

const ask = (path: string, init: RequestInit = {}) =>
  fetch(url + path, { ...init, headers: { authorization: `Bearer ${token}`, ...init.headers } })

test('a manager makes a token, which is shown once and opens the setpoints', async () => {
  const complaints = complaintsOf(page)
  await page.goto(`${url}/people`)
  await page.getByRole('link', { name: 'Tokens of office programs' }).click()
  await page.getByText('No program has a token').waitFor()
  await page.getByLabel('Name of the program, as the team will see it').fill('Office scheduler')
  await page
    .getByLabel('Last day on which it works')
    .fill(new Date(Date.now() + 20 * 86_400_000).toISOString().slice(0, 10))
  await page.getByRole('button', { name: 'Make the token' }).click()
  token = await page.getByLabel('Token', { exact: true }).inputValue()
  expect(token).toMatch(/^inchwater_/)
  await page.getByRole('article', { name: 'Office scheduler', exact: true }).waitFor()
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect(await seriousFaults(page), colorScheme).toEqual([])
  }
  await page.setViewportSize(phone)
  expect(await scrollsSideways(page)).toBe(false)
  await page.setViewportSize(desk)
  expect(complaints).toEqual([])
  await page.reload()
  await page.getByRole('article', { name: 'Office scheduler', exact: true }).waitFor()
  expect(await page.getByLabel('Token', { exact: true }).count()).toBe(0)

  const setpoints = await ask('/api/v1/setpoint?part=nothing-like-it')
  expect(setpoints.status).toBe(404)
})

test('a program files a case, and the team sees it as said by the program', async () => {
  const found = await ask('/api/v1/furnaces?site=ferry%20steps%204')
  const { furnaces } = (await found.json()).value
  expect(furnaces.length).toBeGreaterThan(0)
  const answer = await ask('/api/v1/cases', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      furnaceId: furnaces[0].id,
      complaint: 'Booked in by the scheduler',
      circuit: 'something else',
    }),
  })
  expect(answer.status).toBe(201)
  const { address } = (await answer.json()).value
  await page.goto(url + address)
  await page.getByText('Booked in by the scheduler').first().waitFor()
  await page.goto(`${url}/log?kind=case`)
  const entry = page
    .getByRole('list', { name: 'Entries' })
    .getByRole('listitem')
    .filter({ hasText: 'Booked in by the scheduler' })
  await entry.getByText('Office scheduler', { exact: false }).waitFor()
})

test('a token that is ended opens nothing any more, and the list says when it was last used', async () => {
  await page.goto(`${url}/tokens`)
  const sheet = page.getByRole('article', { name: 'Office scheduler', exact: true })
  await sheet.getByText('Last used', { exact: false }).waitFor()
  await sheet.getByRole('button', { name: 'End this token of Office scheduler' }).click()
  await sheet.getByText('was ended', { exact: false }).waitFor()
  expect((await ask('/api/v1/furnaces?site=ferry')).status).toBe(401)
})

test('what a program can ask is readable by people and by programs', async () => {
  await page.goto(`${url}/api-help`)
  await page.getByRole('heading', { name: 'The setpoint of a switch, with its standing' }).waitFor()
  const document = await (await fetch(`${url}/api/openapi.json`)).json()
  expect(document.openapi).toMatch(/^3\.1/)
})
