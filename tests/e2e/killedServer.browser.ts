import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import type { Browser, Request } from 'playwright-core'
import { afterAll, beforeAll, expect, inject, test } from 'vitest'
import { unitLabel } from '@/lib/core/pressure'
import { seededRandom } from '@/lib/core/seeded'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { databaseFile } from '@/lib/server/database'
import { openLog } from '@/lib/server/log/openLog'
import type { Verification } from '@/lib/server/log/verify'
import { migrate } from '@/prisma/migrate'
import { demoPeople } from '@/seed-demo/people'
import { buildProgram } from '../server/log/childProgram'
import { freePort } from '../setup/serverProcess'
import { openBrowser } from './openBrowser'
import { online, sent, signedIn, workerIsReady } from './outboxInBrowser'

const kills = 50
const perRound = 2
const units = ['Pa', 'mbar', 'inH2O'] as const

let folder = ''
let program = ''
let port = 0
let url = ''
let browser: Browser
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'killed-server-'))
  program = buildProgram(folder, path.join(import.meta.dirname, 'server.child.ts'))
  port = await freePort()
  url = `http://127.0.0.1:${port}`
  migrate(databaseFile(folder))
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await Promise.all(started.map((server) => server.kill()))
  rmSync(folder, { recursive: true })
})

type Server = {
  heard(word: string): Promise<void>
  open(): Promise<void>
  kill(): Promise<void>
}

/** All of them, so that none outlives a test that failed. */
const started: Server[] = []

/** A server that waits at the start line, so that the next one is there at once when this one is killed. */
function startServer(): Server {
  const child = spawn(process.execPath, [program, folder, String(port), inject('demoUrl')], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const lines = createInterface(child.stdout!)
  const said = new Set<string>()
  lines.on('line', (line) => said.add(line))
  const heard = async (word: string): Promise<void> => {
    while (!said.has(word)) await once(lines, 'line')
  }
  const server: Server = {
    heard,
    async open() {
      await heard('ready')
      child.stdin!.write('go\n')
      await heard('open')
    },
    async kill() {
      child.kill('SIGKILL')
      if (child.exitCode === null && child.signalCode === null) await once(child, 'exit')
    },
  }
  started.push(server)
  return server
}

const isBatch = (request: Request): boolean =>
  request.method() === 'POST' && request.url() === `${url}/api/records`

/** Whether the page has the whole answer to a request. */
async function isAnswered(request: Request): Promise<boolean> {
  const response = await request.response()
  return response !== null && (await response.finished()) === null
}

/** The log's records, in their order. */
function inDatabase(): RecordEnvelope[] {
  const db = new Database(databaseFile(folder), { readonly: true })
  try {
    const bytes = db.prepare<[], Buffer>('SELECT bytes FROM LogContent ORDER BY seq').pluck().all()
    return bytes.map((each) => JSON.parse(String(each)) as RecordEnvelope)
  } finally {
    db.close()
  }
}

async function verifiedLog(): Promise<Verification> {
  const db = new Database(databaseFile(folder))
  try {
    return await openLog({ db, kinds: recordKinds, now: () => new Date() }).verify()
  } finally {
    db.close()
  }
}

test(`a server killed ${kills} times while a browser’s batch is under way loses nothing and holds nothing twice`, async () => {
  const random = seededRandom(20260301)
  let server = startServer()
  await server.open()
  let next = startServer()
  let page = await signedIn(browser, url, demoPeople.ott, 'allow')
  await workerIsReady(page)
  await page.goto(`${url}/preferences`)
  await sent(page).waitFor()
  await server.kill()

  const tapped: (typeof units)[number][] = []
  const lost = { before: 0, after: 0 }
  // A kill that lost no answer to a batch does not count.
  while (lost.before + lost.after < kills) {
    for (let tap = 0; tap < perRound; tap++) {
      const unit = units[tapped.length % units.length]!
      await page.getByRole('radio', { name: unitLabel[unit], exact: true }).click({ force: true })
      tapped.push(unit)
    }
    // The app is closed as well, now and then, and opens again from what it keeps.
    if (random() < 0.15) {
      const again = await page.context().newPage()
      await page.close()
      page = again
      await page.goto(`${url}/preferences`)
      await page.getByText('waiting to be sent').waitFor()
    }
    server = next
    next = startServer()
    await server.open()
    const stored = inDatabase().length
    const sending = page.waitForRequest(isBatch)
    await online(page)
    // Somewhere while it is judged, or once it is in the log and its answer on the way.
    if (random() < 0.5) {
      await server.heard('batch')
      await sleep(25 * random())
    } else await server.heard('judged')
    await server.kill()
    if (await isAnswered(await sending)) continue
    lost[inDatabase().length === stored ? 'before' : 'after'] += 1
  }
  expect(lost.before).toBeGreaterThan(0)
  expect(lost.after).toBeGreaterThan(0)

  await next.open()
  await online(page)
  await sent(page).waitFor()
  await next.kill()
  const held = inDatabase()
  expect(held.map(({ body }) => body.unit)).toEqual(tapped)
  expect(new Set(held.map(({ id }) => id)).size).toBe(tapped.length)
  const { entries, trouble } = await verifiedLog()
  expect([entries, trouble]).toEqual([tapped.length, undefined])
  // The device's own file, without the server: each once as well.
  await page.goto(`${url}/log`)
  await page.getByText(`${tapped.length} entries.`).waitFor()
  await sent(page).waitFor()
}, 120_000)
