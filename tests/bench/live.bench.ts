import { type ChildProcess, fork, spawnSync } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import http from 'node:http'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { v7 as uuidv7 } from 'uuid'
import { recordKinds } from '@/lib/records/registry'
import { usualLimits } from '@/lib/server/live/listeners'
import { demoPeople } from '@/seed-demo/people'
import { openBrowser, openContext, signIn } from '../e2e/openBrowser'
import { startServerProcess } from '../setup/serverProcess'
import { median, quantile } from './measure'

export const name = 'live'

type Print = (line: string) => void
type Caller = { id: string; cookie: string }
type Memory = { heap: number; rss: number }

const people = 40
/** As many as the server takes of so many people. */
const most = Math.min(usualLimits.atAll, people * usualLimits.ofOnePerson)
const saves = 30
const rounds = 12

/** A connection that hears what the server says, until it is hung up. */
type Listening = { heard: (words: string) => Promise<number>; hangUp: () => void }

const listen = (port: number, address: string, cookie = ''): Promise<Listening> =>
  new Promise((resolve, reject) => {
    const request = http.get({ port, path: address, headers: { cookie }, agent: false }, (response) => {
      let text = ''
      let look = (): void => {}
      response.setEncoding('utf8')
      response.on('data', (piece) => {
        text += piece
        look()
      })
      response.on('error', () => undefined)
      const heard = (words: string): Promise<number> =>
        new Promise((done) => {
          look = () => {
            if (text.includes(words)) done(performance.now())
          }
          look()
        })
      if (response.statusCode !== 200) return reject(new Error(`${address} answered ${response.statusCode}`))
      void heard('retry: ').then(() => resolve({ heard, hangUp: () => request.destroy() }))
    })
    request.on('error', reject)
  })

async function save(port: number, { id, cookie }: Caller): Promise<number> {
  const said = {
    id: uuidv7(),
    kind: 'maker',
    version: recordKinds.maker!.version,
    body: { name: `Maker ${uuidv7()}` },
    saidAt: new Date().toISOString(),
    author: id,
    device: 'bench',
  }
  const answer = await fetch(`http://127.0.0.1:${port}/api/records`, {
    method: 'POST',
    headers: { cookie },
    body: JSON.stringify({ sentAt: new Date().toISOString(), records: [said] }),
  })
  const { value } = (await answer.json()) as { value: { answers: { seq: number }[] } }
  return value.answers[0]!.seq
}

/**
 * What an open screen costs, and how long a save takes to get to it. Memory: as many listeners as the server takes,
 * beside as many bare endless answers of the same server. Delay: from the moment a record is sent until a listener
 * has heard of it, with one listener and with all of them; then from a key on one screen to the words on another, in
 * real browsers over the demo company.
 */
export async function run(print: Print): Promise<void> {
  await listeners(print)
  await screens(print)
}

async function listeners(print: Print): Promise<void> {
  const data = mkdtempSync(path.join(tmpdir(), 'inchwater-bench-'))
  const server = fork(path.join(import.meta.dirname, 'liveServer.child.ts'), [String(people)], {
    execArgv: ['--expose-gc', '--import', 'tsx'],
    env: { ...process.env, INCHWATER_DATA: data },
  })
  try {
    const [{ port, callers }] = (await once(server, 'message')) as [{ port: number; callers: Caller[] }]
    const open = (count: number, address: string) =>
      Promise.all(
        Array.from({ length: count }, (_, place) =>
          listen(port, address, callers[Math.floor(place / usualLimits.ofOnePerson)]!.cookie),
        ),
      )
    // Once beforehand: what is made once and kept is nobody's in particular.
    await closed(await open(most, '/bare'))
    await closed(await open(most, '/api/events'))
    const bare = await costOf(server, () => open(most, '/bare'))
    const ours = await costOf(server, () => open(most, '/api/events'))
    print(
      `${most} open listeners: ${kilobytes(ours.heap)} of heap and buffers each (${(ours.heap / bare.heap).toFixed(1)} times a bare endless answer, ${kilobytes(bare.heap)}), ${kilobytes(ours.rss)} of the process each`,
    )
    for (const count of [1, most]) {
      const opened = await open(count, '/api/events')
      const delays: number[] = []
      const answered: number[] = []
      for (let round = 0; round < saves; round += 1) {
        const began = performance.now()
        const seq = await save(port, callers[0]!)
        answered.push(performance.now() - began)
        const heard = await Promise.all(opened.map((each) => each.heard(`data: ${seq}\n`)))
        delays.push(...heard.map((at) => at - began))
      }
      print(
        `from sending to hearing, ${count} listening: ${median(delays).toFixed(1)} ms in the middle, ${quantile(delays, 0.95).toFixed(1)} ms for 19 of 20; the save itself is answered in ${median(answered).toFixed(1)} ms`,
      )
      await closed(opened)
    }
  } finally {
    server.kill()
    await once(server, 'exit')
    rmSync(data, { recursive: true, force: true })
  }
}

async function closed(opened: readonly Listening[]): Promise<void> {
  for (const { hangUp } of opened) hangUp()
  await new Promise((done) => setTimeout(done, 500))
}

/** What each of the connections costs, in bytes: the middle of five openings. */
async function costOf(server: ChildProcess, open: () => Promise<Listening[]>): Promise<Memory> {
  const costs: Memory[] = []
  for (let round = 0; round < 5; round += 1) {
    const before = await memoryOf(server)
    const opened = await open()
    const after = await memoryOf(server)
    costs.push({
      heap: (after.heap - before.heap) / opened.length,
      rss: (after.rss - before.rss) / opened.length,
    })
    await closed(opened)
  }
  return { heap: median(costs.map(({ heap }) => heap)), rss: median(costs.map(({ rss }) => rss)) }
}

async function memoryOf(server: ChildProcess): Promise<Memory> {
  server.send('memory')
  const [memory] = (await once(server, 'message')) as [Memory]
  return memory
}

const kilobytes = (bytes: number): string => `${(bytes / 1024).toFixed(1)} kB`

async function screens(print: Print): Promise<void> {
  const data = mkdtempSync(path.join(tmpdir(), 'inchwater-bench-'))
  spawnSync(process.execPath, ['--import', 'tsx', 'tests/setup/loadDemoInto.ts', data], { stdio: 'inherit' })
  const server = await startServerProcess(data)
  const browser = await openBrowser()
  try {
    const [saying, seeing] = await Promise.all(
      (['piet', 'dunja'] as const).map(async (who) => {
        const page = await (await openContext(browser)).newPage()
        await signIn(page, server.url, demoPeople[who].name, demoPeople[who].password)
        await page.goto(`${server.url}/phone-desk`)
        await page.getByRole('button', { name: 'I’ll ring' }).first().waitFor()
        await page.getByText('Everything is sent').waitFor()
        return page
      }),
    )
    const words = `${demoPeople.piet.name} has promised to ring.`
    const delays: number[] = []
    for (let round = 0; round < rounds; round += 1) {
      for (const [button, shown] of [
        ['I’ll ring', true],
        ['Put back', false],
      ] as const) {
        const seenAt = seeing!.evaluate(
          ([text, wanted]) =>
            new Promise<number>((resolve) => {
              // Nothing in here has a name: the loader of TypeScript would keep it by a helper that no page has.
              new MutationObserver(() => {
                if (document.body.textContent?.includes(text) === wanted) resolve(Date.now())
              }).observe(document.body, { subtree: true, childList: true, characterData: true })
            }),
          [words, shown] as const,
        )
        const saidAt = await saying!
          .getByRole('button', { name: button, exact: true })
          .first()
          .evaluate((element) => {
            const at = Date.now()
            ;(element as HTMLButtonElement).click()
            return at
          })
        delays.push((await seenAt) - saidAt)
        await saying!.getByText('Everything is sent').waitFor()
      }
    }
    print(
      `from the key on one screen to the words on another: ${median(delays).toFixed(0)} ms in the middle, ${quantile(delays, 0.95).toFixed(0)} ms for 19 of 20 (${delays.length} times)`,
    )
  } finally {
    await browser.close()
    await server.stop()
    rmSync(data, { recursive: true, force: true })
  }
}
