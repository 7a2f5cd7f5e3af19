import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { strFromU8, unzipSync } from 'fflate'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { startServerProcess } from '../setup/serverProcess'
import { complaintsOf, scrollsSideways, seriousFaults } from './audit'
import { desk, openBrowser, openContext, phone, signIn } from './openBrowser'

const url = inject('demoUrl')
const { ragna, tobin } = demoPeople
let browser: Browser
let folder: string
beforeAll(async () => {
  browser = await openBrowser()
  folder = mkdtempSync(path.join(tmpdir(), 'exchange-'))
})
afterAll(async () => {
  await browser?.close()
  rmSync(folder, { recursive: true, force: true })
})

/** An old list in windows-1252, with semicolons, decimal commas and everything that can be wrong with a row. */
const list = [
  'Brand;Series;Model;Switch;Close (in. w.c.);Open (in. w.c.);Switch type;Source;Date;Remarks',
  'Quillhaven;Q Reach;QR-80;Low fire;-0,65 ±0,05;-0,50;;counter;3.4.2019;Düse geprüft',
  'Quillhaven;Q Reach;QR-100;High fire;-0,95;-0,80;;;;',
  'Quillhaven;Q Reach;QR-100;High fire;-0,95;-0,80;;;;',
  'Quillhaven;Q Reach;QR-80;Low fire;6,5;;;;;',
  'Quillhaven;Q Reach;QR-80;Low fire;-0,70;;adjustable;;;',
  'Quillhaven;Q Reach;QR-80;;-0,70;;;;;',
].join('\r\n')
const latin1 = (text: string): Buffer => Buffer.from(text.replace('±', '\xb1'), 'latin1')

async function expectSound(page: Page): Promise<void> {
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme })
    expect(await seriousFaults(page), colorScheme).toEqual([])
  }
  expect(await scrollsSideways(page)).toBe(false)
}

test('a manager imports an old list: columns guessed, names answered, a dry run, and one withdrawal takes it back', async () => {
  const page = await (await openContext(browser, desk)).newPage()
  const complaints = complaintsOf(page)
  await signIn(page, url, ragna.name, ragna.password)
  await page.goto(`${url}/people`)
  await page.getByRole('link', { name: 'Import an old list' }).click()
  const file = path.join(folder, 'old ratings.csv')
  writeFileSync(file, latin1(list))
  await page.getByLabel('Choose the file').setInputFiles(file)

  await page.getByText('6 rows, 10 columns', { exact: false }).waitFor()
  expect(await page.getByLabel('Encoding').inputValue()).toBe('windows-1252')
  expect(await page.getByLabel('Between the cells').inputValue()).toBe('semicolon')
  expect(await page.getByLabel('Decimals are parted by').inputValue()).toBe('comma')
  expect(await page.getByLabel('Column 1: Brand').inputValue()).toBe('maker')
  expect(await page.getByLabel('Column 5: Close (in. w.c.)').inputValue()).toBe('make')
  await page.getByText('Düse geprüft').first().waitFor()
  await expectSound(page)

  // A reload loses nothing.
  await page.reload()
  await page.getByLabel('Maker “Quillhaven”').selectOption({ label: 'Add it as a new maker' })
  await page.getByLabel('Range “Q Reach” of Quillhaven').selectOption({ label: 'Add it as a new range' })
  await page.getByLabel('Position “Low fire”').selectOption({ label: 'Add it: one port' })
  await page.getByLabel('Position “High fire”').selectOption({ label: 'Add it: one port' })
  await page.getByText('Every name has its answer.').waitFor()

  await page.getByRole('button', { name: 'Try it: judge 6 rows' }).click()
  const rows = page.getByRole('table', { name: /Rows of the file/ })
  const row = (number: number) =>
    rows.getByRole('row').filter({ has: page.getByRole('rowheader', { name: String(number), exact: true }) })
  await row(2).getByText('closes at 0.65 in. w.c. ± 0.05, suction').waitFor()
  await row(2)
    .getByText('Would stand as Unverified: Taken over from an old list, without proof, 3 Apr 2019')
    .first()
    .waitFor()
  expect(await row(3).textContent()).toContain('To be taken over')
  expect(await row(4).textContent()).toContain('Row 3 says the same.')
  expect(await row(5).textContent()).toContain('unusual for an air switch')
  expect(await row(6).textContent()).toContain('adjustable or general-purpose switch')
  expect(await row(6).getByRole('link', { name: 'Record it as found fitted' }).count()).toBe(1)
  expect(await row(7).textContent()).toContain('names no switch position')
  await expectSound(page)
  await page.setViewportSize(phone)
  await expectSound(page)
  await page.setViewportSize(desk)

  await page.getByRole('button', { name: 'Take over 2 rows' }).click()
  await page.getByText('All of them are in the team’s log.').waitFor()
  await page.goto(`${url}/?q=QR-80`)
  await page.getByRole('list', { name: 'Results' }).getByRole('link').first().waitFor()

  await page.goto(`${url}/import`)
  await page.getByRole('link', { name: 'Withdraw it' }).click()
  await page.getByLabel('Why?').fill('The list of another branch.')
  await page.getByRole('button', { name: 'Withdraw it' }).click()
  await page.getByRole('article', { name: 'Withdrawn' }).waitFor()
  await page.goto(`${url}/?q=QR-80`)
  await page.getByText('Everything is sent').waitFor()
  await page
    .getByText(/Quillhaven/)
    .first()
    .waitFor({ state: 'detached' })
  await page.goto(`${url}/import`)
  await page.getByText('Withdrawn: The list of another branch.').waitFor()
  expect(complaints).toEqual([])
  await page.context().close()
})

test('a technician is told who imports and who exports, and the server gives them nothing', async () => {
  const page = await (await openContext(browser, phone)).newPage()
  await signIn(page, url, tobin.name, tobin.password)
  await page.goto(`${url}/import`)
  await page.getByRole('heading', { name: 'A manager imports' }).waitFor()
  await page.goto(`${url}/export`)
  await page.getByRole('heading', { name: 'A manager exports' }).waitFor()
  for (const route of ['log', 'tables', 'schema'])
    expect((await page.request.get(`${url}/api/export/${route}`)).status()).toBe(403)
  await page.context().close()
})

test('a manager takes the log along, and a new server has the same log with the same head hash', async () => {
  const page = await (await openContext(browser, desk)).newPage()
  const complaints = complaintsOf(page)
  await signIn(page, url, ragna.name, ragna.password)
  await page.goto(`${url}/export`)
  const taken = async (link: string): Promise<string> => {
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('link', { name: link }).click(),
    ])
    const to = path.join(folder, download.suggestedFilename())
    await download.saveAs(to)
    return to
  }
  const document = await taken('Take the log')
  expect(path.basename(document)).toMatch(/^inchwater-log-\d{4}-\d\d-\d\d\.json$/)
  const { head } = JSON.parse(readFileSync(document, 'utf8')) as { head: { seq: number; hash: string } }
  const tables = unzipSync(readFileSync(await taken('Take the tables')))
  expect(strFromU8(tables['ratings.csv']!)).toMatch(/,needs,level,sources,dates,.*,pascals \[Pa\]/)
  await page.getByText('This server has records', { exact: false }).waitFor()

  const data = mkdtempSync(path.join(folder, 'empty-'))
  const server = await startServerProcess(data)
  try {
    const fresh = await (await openContext(browser, desk)).newPage()
    const code = /\b[A-Z0-9]{5}(?:-[A-Z0-9]{5}){3}\b/.exec(server.output())![0]
    await fresh.goto(`${server.url}/set-up`)
    await fresh.getByLabel('Code from the terminal').fill(code)
    await fresh.getByLabel('Your name, as the team will see it').fill('Thea Lorrick')
    await fresh.getByLabel('Password', { exact: true }).fill('marble kettle heron')
    await fresh.getByLabel('The same password again').fill('marble kettle heron')
    await fresh.getByRole('button', { name: 'Set up, and sign in' }).click()
    await fresh.getByText('No equipment on file yet').waitFor()
    await fresh.goto(`${server.url}/export`)
    const choose = fresh.getByLabel('The exported document')
    const broken = path.join(folder, 'broken.json')
    writeFileSync(broken, readFileSync(document, 'utf8').replace(/"clockShiftMs":-?\d+/, '"clockShiftMs":77'))
    await choose.setInputFiles(broken)
    await fresh.getByRole('button', { name: 'Take it in' }).click()
    await fresh.getByText('Entry 1 does not fit', { exact: false }).waitFor()
    await choose.setInputFiles(document)
    await fresh.getByRole('button', { name: 'Take it in' }).click()
    await fresh.getByText(head.hash).waitFor()
    await fresh.getByText(`${head.seq} entries`, { exact: false }).waitFor()
    await fresh.goto(`${server.url}/people`)
    await fresh
      .getByRole('article', { name: ragna.name })
      .getByText('signed out for good', { exact: false })
      .waitFor()
    await fresh.context().close()
  } finally {
    await server.stop()
  }
  expect(complaints).toEqual([])
  await page.context().close()
})
