import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import path from 'node:path'
import type { Browser, Page } from 'playwright-core'
import { generate } from 'selfsigned'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { offlinePages } from '@/app/device/offlinePages'
import { type ServerProcess, startServerProcess } from '../setup/serverProcess'
import { openBrowser, openContext } from './openBrowser'

let folder = ''
let server: ServerProcess
let browser: Browser

beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'https-'))
  const [certificate, key] = [path.join(folder, 'certificate.pem'), path.join(folder, 'key.pem')]
  const made = await generate([{ name: 'commonName', value: 'localhost' }], { keySize: 2048 })
  writeFileSync(certificate, made.cert)
  writeFileSync(key, made.private)
  server = await startServerProcess(path.join(folder, 'data'), {
    INCHWATER_TLS_CERT: certificate,
    INCHWATER_TLS_KEY: key,
  })
  browser = await openBrowser()
})

afterAll(async () => {
  await browser?.close()
  await server?.stop()
  rmSync(folder, { recursive: true, force: true })
})

type Watched = { page: Page; breaches: string[] }

/** A page of a fresh browser that keeps every breach of the content-security policy it reports. */
async function watchedPage(): Promise<Watched> {
  const page = await (await openContext(browser)).newPage()
  const breaches: string[] = []
  await page.exposeFunction('keepBreach', (breach: string) => breaches.push(breach))
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective, blockedURI, sourceFile }) => {
      const { keepBreach } = window as unknown as { keepBreach(breach: string): void }
      keepBreach(`${effectiveDirective} ${blockedURI} ${sourceFile}`)
    })
  })
  return { page, breaches }
}

/** Waits until React has taken the page over. */
const hydrated = (page: Page) =>
  page.waitForFunction(() =>
    [...document.querySelectorAll('body *')].some((element) =>
      Object.keys(element).some((key) => key.startsWith('__reactFiber')),
    ),
  )

const post = (page: Page, address: string, body: object) =>
  page.evaluate(
    async ([to, text]) => {
      const headers = { 'content-type': 'application/json' }
      const answer = await fetch(to!, { method: 'POST', headers, body: text })
      return { status: answer.status, body: (await answer.json()) as unknown }
    },
    [address, JSON.stringify(body)],
  )

/** Opens pages one after the other, and expects each to come alive without a breach. */
async function expectNoBreach({ page, breaches }: Watched, addresses: string[]): Promise<void> {
  for (const address of addresses) {
    await page.goto(`${server.url}${address}`, { waitUntil: 'networkidle' })
    await hydrated(page)
    expect(breaches, address).toEqual([])
  }
}

test('over https the pages before sign-in come alive without one breach of the policy', async () => {
  const watched = await watchedPage()
  await expectNoBreach(watched, ['/sign-in', '/danger', '/set-up', '/join', '/reset', '/no-such-page'])
  await watched.page.context().close()
})

test('the policy is in force: a script, a handler and a style that were slipped into the page do nothing', async () => {
  const { page, breaches } = await watchedPage()
  const slippedIn = `<script>document.title = 'slipped in'</script>
    <img alt="" src="/no-such-picture" style="width: 1px" onerror="document.title = 'slipped in'">`
  await page.route(`${server.url}/danger`, async (route) => {
    const response = await route.fetch()
    await route.fulfill({ response, body: (await response.text()).replace(/<body[^>]*>/, `$&${slippedIn}`) })
  })
  await page.goto(`${server.url}/danger`)
  const directives = () => breaches.map((breach) => breach.split(' ')[0])
  await expect
    .poll(directives)
    .toEqual(expect.arrayContaining(['script-src-elem', 'script-src-attr', 'style-src-attr']))
  expect(await page.title()).not.toBe('slipped in')
  await page.context().close()
})

test('the code from the terminal sets the first manager up; the cookie is Secure and out of scripts’ reach', async () => {
  const watched = await watchedPage()
  const { page } = watched
  await page.goto(`${server.url}/set-up`)
  const [code] = /[0-9A-Z]{5}(?:-[0-9A-Z]{5}){3}/.exec(server.output()) ?? []
  const form = { code, name: 'Mara Otell', password: 'three plain words' }
  expect(await post(page, '/api/set-up', form)).toMatchObject({
    status: 200,
    body: { value: { role: 'manager' } },
  })
  expect(await page.context().cookies()).toContainEqual(
    expect.objectContaining({
      name: '__Secure-inchwater.session_token',
      secure: true,
      httpOnly: true,
      sameSite: 'Lax',
    }),
  )
  expect(await page.evaluate(() => document.cookie)).not.toContain('session')
  expect((await post(page, '/api/set-up', form)).status).toBe(410)
  await expectNoBreach(watched, [...offlinePages, '/people', '/export'])
  await page.context().close()
  // It opens every page there is, one after the other.
}, 180_000)

test('a page of another origin can’t make the browser write', async () => {
  const elsewhere = createServer((_request, response) => {
    response.setHeader('content-type', 'text/html')
    response.end(
      `<form method="post" action="${server.url}/api/auth/sign-out"><button>Win a prize</button></form>`,
    )
  })
  await new Promise<void>((resolve) => elsewhere.listen(0, '127.0.0.1', resolve))
  const { page } = await watchedPage()
  await page.goto(`http://127.0.0.1:${(elsewhere.address() as AddressInfo).port}/`)
  const answered = page.waitForResponse(`${server.url}/api/auth/sign-out`)
  await page.getByRole('button').click()
  expect((await answered).status()).toBe(403)
  await page.context().close()
  elsewhere.close()
})

test('a phone may use camera and service worker here, because the connection is secure', async () => {
  const { page } = await watchedPage()
  await page.goto(`${server.url}/sign-in`)
  await page.getByRole('button', { name: 'Sign in' }).waitFor()
  const can = await page.evaluate(() => ({
    secure: isSecureContext,
    worker: 'serviceWorker' in navigator,
    camera: navigator.mediaDevices !== undefined,
  }))
  expect(can).toEqual({ secure: true, worker: true, camera: true })
  await page.context().close()
})
