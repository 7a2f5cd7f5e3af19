import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, signIn } from '../e2e/openBrowser'
import { startServerProcess } from '../setup/serverProcess'
import { median, quantile } from './measure'

export const name = 'find screen'

/** How much slower than this machine the phone is taken to be. */
const slowdown = 4
const words = ['larkfell 2 080', 'sallow 110', 'plover095', 'wendle low fire', 'ferry steps 4']

type Listening = Window & { answered: Promise<number> }

/** Runs in the page: times the next key from its event to the end of the frame that shows its results. */
function listenForKey(): void {
  ;(window as unknown as Listening).answered = new Promise((done) => {
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

/**
 * From a key to its results on the Find screen, in a real browser over the demo company: once as fast as this
 * machine is, once with the processor slowed four times. A key counts as answered when the frame after it is drawn.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const data = mkdtempSync(path.join(tmpdir(), 'inchwater-bench-'))
  spawnSync(process.execPath, ['--import', 'tsx', 'tests/setup/loadDemoInto.ts', data], { stdio: 'inherit' })
  const server = await startServerProcess(data)
  const browser = await openBrowser()
  try {
    const page = await (await openContext(browser)).newPage()
    await signIn(page, server.url, demoPeople.ott.name, demoPeople.ott.password)
    await page.getByText('Everything is sent').waitFor()
    const processor = await page.context().newCDPSession(page)
    const keysTaken = async (rate: number): Promise<number[]> => {
      await processor.send('Emulation.setCPUThrottlingRate', { rate })
      const times: number[] = []
      for (const word of words) {
        await page.getByRole('searchbox').fill('')
        await page.getByRole('searchbox').focus()
        for (const key of word) {
          await page.evaluate(listenForKey)
          await page.keyboard.type(key)
          times.push(await page.evaluate(() => (window as unknown as Listening).answered))
        }
      }
      return times
    }
    await keysTaken(1)
    const asIs = await keysTaken(1)
    const slowed = await keysTaken(slowdown)
    const say = (what: string, times: readonly number[]) =>
      print(
        `${what}: ${median(times).toFixed(0)} ms in the middle, ${quantile(times, 0.95).toFixed(0)} ms for 19 of 20 keys (${times.length} keys)`,
      )
    say('key to results, this machine', asIs)
    say(`key to results, processor slowed ${slowdown} times`, slowed)
    print(`ratio: ${(median(slowed) / median(asIs)).toFixed(1)}`)
  } finally {
    await browser.close()
    await server.stop()
    rmSync(data, { recursive: true, force: true })
  }
}
