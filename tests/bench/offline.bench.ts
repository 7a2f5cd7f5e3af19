import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { brotliCompressSync, gzipSync } from 'node:zlib'
import { type BrowserContext, chromium, type Page } from 'playwright-core'
import { browserFlags, browserPath } from '../browser'
import { phone, signIn } from '../e2e/openBrowser'
import { manyPeople } from '../setup/manyPeople'
import { startServerProcess } from '../setup/serverProcess'
import { median, quantile } from './measure'

export const name = 'offline'

/** How much slower than this machine the phone is taken to be. */
const slowdown = 4
const positions = 20_000
const changes = 10_000
const starts = 5
const words = ['fenbar 3', 'BAR4-', 'quorstenlum', 'low fire kel', 'moornad 12']

type Timed = Window & { usableAt?: number; answered?: Promise<number> }

/** Runs in each page before anything of it: notes when the field of Find can be typed into, since the navigation. */
function noteUsable(): void {
  const look = new MutationObserver(() => {
    const field = document.querySelector<HTMLInputElement>('input[type=search]')
    if (field === null) return
    look.disconnect()
    // Drawn and answering: the frame after it, and the work that was queued before.
    requestAnimationFrame(() =>
      setTimeout(() => {
        ;(window as Timed).usableAt = performance.now()
      }),
    )
  })
  look.observe(document, { childList: true, subtree: true })
}

/** Runs in the page: times the next key from its event to the end of the frame that shows its results. */
function listenForKey(): void {
  ;(window as Timed).answered = new Promise((done) => {
    document.addEventListener(
      'input',
      () => {
        const pressed = performance.now()
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - pressed)))
      },
      { once: true, capture: true },
    )
  })
}

const load = (data: string, ...wanted: number[]): void => {
  const args = ['--import', 'tsx', 'tests/setup/loadManyInto.ts', data, ...wanted.map(String)]
  const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' })
  if (status !== 0) throw new Error(stderr)
}

/**
 * What a phone in a basement waits for, in a real browser with the processor slowed four times and 20,000 positions on
 * file: the field of Find after a cold start without a signal, the answer to each key, and what was missed meanwhile.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const data = mkdtempSync(path.join(tmpdir(), 'inchwater-bench-'))
  const profile = mkdtempSync(path.join(tmpdir(), 'inchwater-phone-'))
  load(data, positions, 0)
  const server = await startServerProcess(data)
  let opened: BrowserContext | undefined
  const open = async () => {
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: browserPath()!,
      args: browserFlags,
      viewport: phone,
      reducedMotion: 'reduce',
    })
    opened = context
    await context.addInitScript(noteUsable)
    const page = await context.newPage()
    const processor = await context.newCDPSession(page)
    const slow = (rate: number) => processor.send('Emulation.setCPUThrottlingRate', { rate })
    return { context, page, slow }
  }
  const aim = (what: string, measured: string, most: string, isMet: boolean) =>
    print(`${what}: ${measured} (aim: at most ${most}; ${isMet ? 'met' : 'NOT met'})`)
  try {
    const first = await open()
    const { technician } = manyPeople
    await signIn(first.page, server.url, technician.name, technician.password)
    await first.page.getByText('Everything is sent').waitFor({ timeout: 120_000 })
    await first.page.evaluate(async () => void (await navigator.serviceWorker.ready))
    await first.page.waitForFunction(() => navigator.serviceWorker.controller !== null)
    const { first: script, later } = await scriptOfFind(first.page)
    aim(
      'JavaScript for Find, compressed by brotli',
      `${inKilobytes(script.brotli)} (by gzip ${inKilobytes(script.gzip)})`,
      '180 kB',
      script.brotli <= 180_000,
    )
    print(`what it loads after that: ${inKilobytes(later.brotli)} (by gzip ${inKilobytes(later.gzip)})`)
    await first.context.close()

    const cold: number[] = []
    for (let start = 0; start < starts; start++) {
      const { context, page, slow } = await open()
      await context.setOffline(true)
      await slow(slowdown)
      await page.goto(server.url, { waitUntil: 'commit' })
      const usable = await page.waitForFunction(() => (window as Timed).usableAt, undefined, {
        timeout: 120_000,
      })
      cold.push((await usable.jsonValue())!)
      await context.close()
    }
    const start = median(cold)
    aim(
      `cold start without a signal to a usable field, ${positions} positions`,
      `${start.toFixed(0)} ms in the middle of ${starts} (${cold.map((ms) => ms.toFixed(0)).join(', ')})`,
      '1500 ms',
      start <= 1500,
    )

    const { context, page, slow } = await open()
    await context.setOffline(true)
    await page.goto(server.url)
    await page.getByRole('searchbox').waitFor()
    await slow(slowdown)
    const keys: number[] = []
    for (const word of words) {
      await page.getByRole('searchbox').fill('')
      for (const key of word) {
        await page.evaluate(listenForKey)
        await page.keyboard.type(key)
        keys.push((await page.evaluate(() => (window as Timed).answered))!)
      }
    }
    const late = quantile(keys, 0.95)
    aim(
      'key to results',
      `${late.toFixed(0)} ms for 19 of 20 keys, ${median(keys).toFixed(0)} ms in the middle (${keys.length} keys)`,
      '50 ms',
      late <= 50,
    )

    load(data, 0, changes)
    await context.setOffline(false)
    // The names of people are asked for once the changes are stored and folded.
    const caughtUp = page.waitForRequest(/\/api\/people$/, { timeout: 120_000 })
    const asked = page.waitForRequest(/\/api\/changes/, { timeout: 120_000 })
    await page.evaluate(() => void window.dispatchEvent(new Event('online')))
    await asked
    const began = performance.now()
    await caughtUp
    const took = performance.now() - began
    aim(`catching up ${changes} changes`, `${(took / 1000).toFixed(1)} s`, '5 s', took <= 5000)
    await context.close()
  } finally {
    await opened?.close()
    await server.stop()
    for (const folder of [data, profile]) rmSync(folder, { recursive: true, force: true, maxRetries: 5 })
  }
}

type Weight = { brotli: number; gzip: number }

const inKilobytes = (bytes: number): string => `${(bytes / 1000).toFixed(0)} kB`

/** The weight of the programs that the page Find loads: those that its HTML names, and those that it asks for later. */
async function scriptOfFind(page: Page): Promise<{ first: Weight; later: Weight }> {
  await page.reload()
  await page.getByRole('searchbox').waitFor()
  // Nothing on the screen tells that the last of them has come; the stream of news never ends.
  await page.waitForTimeout(2_000)
  const addresses = await page.evaluate(() =>
    performance
      .getEntriesByType('resource')
      .flatMap(({ name }) => (/\.js$/.test(new URL(name).pathname) ? [name] : [])),
  )
  const html = await (await page.context().request.get(page.url())).text()
  const weight = { first: { brotli: 0, gzip: 0 }, later: { brotli: 0, gzip: 0 } }
  for (const address of new Set(addresses)) {
    const script = await (await page.context().request.get(address)).body()
    const when = html.includes(new URL(address).pathname) ? weight.first : weight.later
    when.brotli += brotliCompressSync(script).length
    when.gzip += gzipSync(script).length
  }
  return weight
}
