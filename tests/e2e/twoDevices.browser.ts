import type { Browser, Page } from 'playwright-core'
import { v7 as uuidv7 } from 'uuid'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser } from './openBrowser'
import { inLog, online, sent, signedIn, workerIsReady } from './outboxInBrowser'

const url = inject('demoUrl')
const { ott, sunniva } = demoPeople
let browser: Browser

beforeAll(async () => {
  browser = await openBrowser()
})
afterAll(() => browser?.close())

/** A switch of its own, with no rating on file yet. @returns its position */
async function newSwitch(page: Page, name: string): Promise<string> {
  const [maker, range, position] = [uuidv7(), uuidv7(), uuidv7()]
  const said = { version: 1, saidAt: new Date().toISOString(), author: ott.id, device: ott.device }
  const records = [
    { id: maker, kind: 'maker', body: { name }, ...said },
    {
      id: range,
      kind: 'equipment range',
      body: { makerId: maker, name, modelPatterns: [name], fuel: 'natural gas', heat: 'condensing' },
      ...said,
    },
    {
      id: position,
      kind: 'position',
      body: {
        rangeId: range,
        name: 'Low fire',
        stage: 'low fire',
        kind: 'one-port',
        between: 'port and room',
        tap: 'collector box',
        sense: 'suction',
      },
      ...said,
    },
  ]
  const response = await page.request.post(`${url}/api/records`, {
    data: { sentAt: said.saidAt, records },
  })
  const { value } = (await response.json()) as { value: { answers: { outcome: string }[] } }
  expect(value.answers.map(({ outcome }) => outcome)).toEqual(['stored', 'stored', 'stored'])
  return position
}

/** Records what factory technical support said about a switch, and waits for its card. */
async function report(page: Page, position: string, said: string, reference: string): Promise<void> {
  await page.goto(`${url}/report?position=${position}`)
  await page.getByLabel(/^Letter for letter/).fill(said)
  await page.getByLabel('What does the number rest on?').selectOption({ label: 'Factory technical support' })
  await page.getByLabel('Whom did you ring?').fill('Maker’s technical line')
  await page.getByLabel('Their reference or ticket number').fill(reference)
  await page.getByRole('radio', { name: 'Yes' }).check({ force: true })
  await page.getByRole('radio', { name: 'Every one of this range' }).check({ force: true })
  await page.getByRole('button', { name: 'Save the report' }).click()
  await page.waitForURL(/\/setpoint\?/)
  await page.getByText('1 record waiting to be sent').waitFor()
}

test('two phones that contradict each other about one switch without a signal: both show the dispute with both sides, and the same', async () => {
  const mark = `ZZ${Date.now()}`
  const one = await signedIn(browser, url, ott, 'allow')
  const two = await signedIn(browser, url, sunniva, 'allow')
  const position = await newSwitch(one, mark)
  const phones = [one, two]
  for (const phone of phones) {
    await workerIsReady(phone)
    await phone.goto(`${url}/setpoint?position=${position}`)
    await phone.getByText('No rating is on file for this switch.').waitFor()
    await sent(phone).waitFor()
    await phone.context().setOffline(true)
  }

  await report(one, position, 'CLOSE -0.66 ±0.05 in. w.c.', `${mark}-1`)
  await report(two, position, 'CLOSE -0.42 ±0.05 in. w.c.', `${mark}-2`)
  const card = (phone: Page) => phone.getByRole('article').first()
  expect(await card(one).textContent()).toContain('0.66')
  expect(await card(one).textContent()).not.toContain('0.42')
  expect(await card(two).textContent()).toContain('0.42')
  expect(await card(two).textContent()).not.toContain('0.66')

  // The second arrives first, and hears of the first by itself.
  for (const phone of [two, one]) {
    await phone.context().setOffline(false)
    await online(phone)
    await sent(phone).waitFor()
  }
  const texts = []
  for (const phone of phones) {
    await card(phone).getByText('In dispute').first().waitFor()
    await phone.getByText(/What each source says, letter for letter/).click()
    texts.push(await card(phone).textContent())
  }
  for (const side of ['0.66', '0.42', `${mark}-1`, `${mark}-2`, ott.name, sunniva.name])
    expect(texts[0]).toContain(side)
  expect(texts[1]).toBe(texts[0])
  expect(await inLog(one.context(), url, position)).toEqual([position, position])
  for (const phone of phones) await phone.context().close()
})
