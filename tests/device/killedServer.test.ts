import 'fake-indexeddb/auto'
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { createInterface } from 'node:readline'
import { setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, expect, test, vi } from 'vitest'
import { seededRandom } from '@/lib/core/seeded'
import { type Device, openDevice } from '@/lib/device/device'
import { recordKinds } from '@/lib/records/registry'
import { openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { buildProgram } from '../server/log/childProgram'
import { freePort } from '../setup/serverProcess'

const kills = 50
const perRound = 40
const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const

let folder = ''
let file = ''
let program = ''
let port = 0
beforeAll(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'killed-server-'))
  file = path.join(folder, 'team.db')
  program = buildProgram(folder, path.join(import.meta.dirname, 'door.child.ts'))
  port = await freePort()
  migrate(file)
  const real = globalThis.fetch
  vi.stubGlobal('fetch', (at: string, init?: RequestInit) => real(`http://127.0.0.1:${port}${at}`, init))
})
afterAll(() => {
  vi.unstubAllGlobals()
  rmSync(folder, { recursive: true })
})

type Door = { child: ChildProcess; said(word: string): Promise<void>; open(): Promise<void> }

/** A server that waits at the start line, so that the next one is there at once when this one is killed. */
function startDoor(): Door {
  const child = spawn(process.execPath, [program, file, String(port), me.id], {
    stdio: ['pipe', 'pipe', 'inherit'],
  })
  const heard = new Map<string, { promise: Promise<void>; resolve(): void }>()
  const about = (word: string) => {
    const known = heard.get(word)
    if (known !== undefined) return known
    let resolve = (): void => {}
    const promise = new Promise<void>((done) => {
      resolve = done
    })
    const made = { promise, resolve }
    heard.set(word, made)
    return made
  }
  createInterface(child.stdout!).on('line', (line) => about(line).resolve())
  return {
    child,
    said: (word) => about(word).promise,
    async open() {
      await about('ready').promise
      child.stdin!.write('go\n')
      await about('open').promise
    },
  }
}

test(`a server killed ${kills} times while it takes a batch loses nothing and holds nothing twice`, async () => {
  const random = seededRandom(20260301)
  const open = (): Promise<Device> => openDevice({ me, deviceId: 'd1', now: () => new Date() })
  let device = await open()
  let next = startDoor()
  let answersLost = 0
  for (let round = 0; round < kills; round++) {
    const door = next
    next = startDoor()
    await door.open()
    const before = device.state().waiting.length
    const records = Array.from({ length: perRound }, (_, at) => ({
      kind: 'maker',
      body: { name: `maker ${round}.${at}` },
    }))
    await device.addAll(records)
    const syncing = device.sync()
    await door.said('batch')
    await sleep(25 * random())
    door.child.kill('SIGKILL')
    await once(door.child, 'exit')
    await syncing
    if (device.state().waiting.length > before) answersLost += 1
    // The app is killed as well, now and then: what is on its disk is all that it knows.
    if (random() < 0.3) {
      device.close()
      device = await open()
    }
  }
  expect(answersLost).toBeGreaterThan(5)
  await next.open()
  while (device.state().waiting.length > 0 || device.state().trouble !== undefined) await device.sync()
  next.child.kill('SIGKILL')
  await once(next.child, 'exit')

  const db = new Database(file)
  const log = openLog({ db, kinds: recordKinds, now: () => new Date() })
  const { entries, trouble } = await log.verify()
  const names = db
    .prepare<[], string>("SELECT json_extract(bytes, '$.body.name') FROM LogContent")
    .pluck()
    .all()
  db.close()
  expect(trouble).toBeUndefined()
  expect(entries).toBe(kills * perRound)
  expect(new Set(names).size).toBe(kills * perRound)
  expect(device.state().file.makers.size).toBe(kills * perRound)
  expect([device.state().waiting, device.state().refused]).toEqual([[], []])
  device.close()
}, 120_000)
