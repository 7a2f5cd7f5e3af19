import 'fake-indexeddb/auto'
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { IDBFactory } from 'fake-indexeddb'
import { openDB } from 'idb'
import { beforeEach, expect, test, vi } from 'vitest'
import { type Device, openDevice } from '@/lib/device/device'

const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
const furnaceId = '01920000-0000-7000-8000-000000000009'
let clock: Date
/** What came to the server, in its order. */
let came: string[] = []
let reachable = true
let answered: Record<string, number> = {}
let told: string[] = []
/** What a newer page does while the worker sends a picture. */
let meanwhile: ((name: string) => Promise<unknown>) | undefined

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  clock = new Date('2026-02-01T10:00:00Z')
  came = []
  told = []
  answered = {}
  reachable = true
  meanwhile = undefined
  vi.stubGlobal('fetch', async (at: string, init?: RequestInit) => {
    if (!reachable) throw new TypeError('Failed to fetch')
    const answer = (value: unknown) => Response.json({ ok: true, value })
    if (at === '/api/auth/me') return Response.json({ ok: true, value: me }, { status: answered.me ?? 200 })
    if (at === '/api/records') {
      came.push(...JSON.parse(String(init?.body)).records.map(({ kind }: { kind: string }) => kind))
      return answer({ answers: [] })
    }
    const name = new TextDecoder().decode(init?.body as ArrayBuffer)
    expect(at).toBe(`/api/photos/${hashOf(name)}`)
    expect(init).toMatchObject({ method: 'PUT', headers: { 'content-type': 'image/jpeg' } })
    came.push(name)
    await meanwhile?.(name)
    return Response.json({}, { status: answered[name] ?? 200 })
  })
  return () => vi.unstubAllGlobals()
})

const hashOf = (text: string) => createHash('sha256').update(text).digest('hex')

/** Wakes the worker, as a browser does that has a signal again and no page open. */
async function wake(): Promise<unknown> {
  const listeners: Record<string, (event: object) => void> = {}
  const self = {
    addEventListener: (kind: string, listener: (event: object) => void) => {
      listeners[kind] = listener
    },
    clients: { matchAll: async () => [{ postMessage: (tag: string) => told.push(tag) }] },
  }
  const program = readFileSync('app/sw.js/worker.js', 'utf8')
  new Function('settings', 'self', program)({ version: 'b1', pages: [], files: [], readers: [] }, self)
  let work: Promise<unknown> = Promise.resolve()
  listeners.sync?.({
    tag: 'outbox',
    waitUntil: (promise: Promise<unknown>) => {
      work = promise
    },
  })
  return work
}

async function take(device: Device, name: string, named = true): Promise<string> {
  clock = new Date(clock.getTime() + 1000)
  const sha256 = hashOf(name)
  const facts = { sha256, mediaType: 'image/jpeg', width: 40, height: 30, bytes: name.length } as const
  await device.keepPicture({ ...facts, blob: new Blob([name], { type: 'image/jpeg' }) })
  if (named) await device.add('photo', { ...facts, shows: 'other', furnaceId })
  return sha256
}

/** Three photos without a signal, and a picture of a form that nobody has saved; then the page is closed. */
async function leftBehind(): Promise<void> {
  reachable = false
  const device = await openDevice({ me, deviceId: 'd1', now: () => clock })
  for (const name of ['one', 'two', 'three']) await take(device, name)
  await take(device, 'of an unsaved form', false)
  await device.sync()
  device.close()
  reachable = true
}

test('woken with no page open, the worker sends the records, then the pictures that they name, oldest first', async () => {
  await leftBehind()
  await wake()
  expect(came).toEqual(['photo', 'photo', 'photo', 'one', 'two', 'three'])
  expect(told).toEqual(['outbox'])
})

test('a picture that the server does not take holds up no other; one that it has no time for is tried later', async () => {
  await leftBehind()
  answered = { one: 422, two: 409 }
  await wake()
  expect(came.slice(3)).toEqual(['one', 'two', 'three'])
  answered = { one: 503 }
  await expect(wake()).rejects.toThrow('no time')
  expect(came.slice(9)).toEqual(['one', 'two', 'three'])
})

test('without a session, or while the server is in trouble, the rest waits, and the page is told all the same', async () => {
  await leftBehind()
  answered = { two: 401 }
  await wake()
  expect(came.slice(3)).toEqual(['one', 'two'])
  answered = { one: 502 }
  await expect(wake()).rejects.toThrow('502')
  expect(came.slice(8)).toEqual(['one'])
  expect(told).toEqual(['outbox', 'outbox'])
  answered = { me: 401 }
  await wake()
  expect(came).toHaveLength(9)
})

test('what was dropped since is not sent; nor is anything of somebody without a database here', async () => {
  await leftBehind()
  reachable = false
  const device = await openDevice({ me, deviceId: 'd1', now: () => clock })
  await device.dropPicture(hashOf('one'))
  await device.sync()
  device.close()
  reachable = true
  await wake()
  expect(came.slice(3)).toEqual(['two', 'three'])
  globalThis.indexedDB = new IDBFactory()
  await wake()
  expect(came).toHaveLength(5)
  expect(await indexedDB.databases()).toEqual([])
})

test('while a picture is on its way, a newer page upgrades the databases without waiting, and the rest is sent all the same', async () => {
  await leftBehind()
  const upgraded: string[] = []
  meanwhile = async (name) => {
    for (const each of name === 'one' ? ['inchwater file p1 technician', 'inchwater own p1'] : []) {
      const blocked = () => expect.unreachable(`${each} is held open`)
      const database = await openDB(each, 99, { upgrade: () => void upgraded.push(each), blocked })
      database.close()
    }
  }
  await wake()
  expect(upgraded).toHaveLength(2)
  expect(came.slice(3)).toEqual(['one', 'two', 'three'])
})

/** What the worker answers to somebody who opens a page; undefined where it leaves that to the browser. */
async function opened(pathname: string, fetched: () => Promise<Response>): Promise<Response | undefined> {
  vi.stubGlobal('fetch', fetched)
  vi.stubGlobal('caches', { match: async (at: string) => new Response(`kept ${at}`) })
  const listeners: Record<string, (event: object) => void> = {}
  const self = {
    location: { origin: 'https://inchwater.example' },
    addEventListener: (kind: string, listener: (event: object) => void) => {
      listeners[kind] = listener
    },
  }
  const settings = { version: 'b1', pages: ['/cases'], files: [], readers: [] }
  new Function('settings', 'self', readFileSync('app/sw.js/worker.js', 'utf8'))(settings, self)
  let answer: Promise<Response> | undefined
  const request = { method: 'GET', mode: 'navigate', url: `https://inchwater.example${pathname}` }
  listeners.fetch?.({ request, respondWith: (given: Promise<Response>) => (answer = given) })
  return answer
}

test('without a signal a page that is not kept says that it needs one, and a kept page is shown', async () => {
  const noSignal = async () => {
    throw new TypeError('Failed to fetch')
  }
  const people = await opened('/people', noSignal)
  expect(people?.headers.get('content-type')).toContain('text/html')
  expect(await people?.text()).toContain('<h1>This page needs a signal</h1>')
  expect(await (await opened('/cases', noSignal))?.text()).toBe('kept /cases')
  expect(await opened('/api/export/log', noSignal)).toBeUndefined()
})

test('with a signal a page that is not kept is the server’s own, also where that is in trouble', async () => {
  expect(await (await opened('/people', async () => new Response('people')))?.text()).toBe('people')
  const trouble = await opened('/people', async () => new Response('down', { status: 502 }))
  expect(trouble?.status).toBe(502)
})
