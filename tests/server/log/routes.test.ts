import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { GET } from '@/app/api/changes/route'
import { POST } from '@/app/api/records/route'
import { batchAnswer } from '@/lib/records/answer'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { closeLogs, databaseFile, theLog } from '@/lib/server/database'
import { mostBatchBytes } from '@/lib/server/http/bodyLimit'
import type { Person } from '@/lib/server/people/session'
import { migrate } from '@/prisma/migrate'

let signedIn: Person | undefined
vi.mock('@/lib/server/people/session', async () => {
  const { refuse } = await import('@/lib/server/http/answers')
  return { requireRole: async () => signedIn ?? refuse(401, 'not-signed-in', 'Sign in again.') }
})

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'routes-'))
  vi.stubEnv('INCHWATER_DATA', folder)
  migrate(databaseFile())
  signedIn = { id: 'person-1', name: 'Person One', role: 'technician' }
})
afterEach(() => {
  closeLogs()
  vi.unstubAllEnvs()
  rmSync(folder, { recursive: true })
})

const furnace = (parts: Partial<RecordEnvelope> = {}): RecordEnvelope => ({
  id: uuidv7(),
  kind: 'furnace',
  version: 1,
  body: { siteLabel: 'House on the hill', model: 'QX-80', fuel: 'natural gas' },
  saidAt: new Date().toISOString(),
  author: 'person-1',
  device: 'phone-1',
  ...parts,
})
const batchOf = (records: unknown[]) => ({ sentAt: new Date().toISOString(), records })

function post(body: BodyInit, headers: Record<string, string> = {}): Promise<Response> {
  return POST(
    new Request('http://localhost/api/records', {
      method: 'POST',
      headers: { 'content-type': 'application/json', origin: 'http://localhost', ...headers },
      body,
      ...(body instanceof ReadableStream ? { duplex: 'half' } : {}),
    } as RequestInit),
  )
}
const send = (body: unknown) => post(JSON.stringify(body))
const get = (query = '') => GET(new Request(`http://localhost/api/changes${query}`))
async function problem(response: Response): Promise<[number, string, string]> {
  expect(response.headers.get('cache-control')).toBe('no-store')
  const { problem } = (await response.json()) as { problem: { code: string; message: string } }
  expect(problem.message).toMatch(/[.!?]$/)
  return [response.status, problem.code, problem.message]
}

const answeredWith = async (response: Response): Promise<unknown> =>
  ((await response.json()) as { value: unknown }).value

test('POST /api/records stores a batch and answers record by record, with 200', async () => {
  const sent = [furnace(), furnace({ author: 'somebody-else' }), furnace()]
  const response = await send(batchOf(sent))
  expect(response.status).toBe(200)
  expect(response.headers.get('cache-control')).toBe('no-store')
  expect(batchAnswer.parse(await answeredWith(response)).answers).toMatchObject([
    { id: sent[0]?.id, outcome: 'stored', seq: 1 },
    { id: sent[1]?.id, outcome: 'refused', rule: 'own records only' },
    { id: sent[2]?.id, outcome: 'stored', seq: 2 },
  ])
})

test('POST /api/records takes the author from the session: another person’s records are not this one’s', async () => {
  signedIn = { id: 'person-2', name: 'Person Two', role: 'manager' }
  const { answers } = batchAnswer.parse(await answeredWith(await send(batchOf([furnace()]))))
  expect(answers).toMatchObject([{ outcome: 'refused', rule: 'own records only' }])
})

test('POST /api/records answers 401 to who is not signed in, and stores nothing', async () => {
  signedIn = undefined
  expect(await problem(await send(batchOf([furnace()])))).toMatchObject([401, 'not-signed-in', /./])
  expect(await theLog().verify()).toMatchObject({ entries: 0 })
})

test('POST /api/records answers 403 to a page of another origin', async () => {
  const response = await post(JSON.stringify(batchOf([furnace()])), { origin: 'https://elsewhere.example' })
  expect((await problem(response))[0]).toBe(403)
  expect(await theLog().verify()).toMatchObject({ entries: 0 })
})

test.each(['text/plain', 'application/x-www-form-urlencoded', 'application/jsonp', ''])(
  'POST /api/records answers 415 to the content type "%s"',
  async (type) => {
    expect((await problem(await post(JSON.stringify(batchOf([])), { 'content-type': type })))[0]).toBe(415)
  },
)

test('POST /api/records takes application/json with a charset', async () => {
  const response = await post(JSON.stringify(batchOf([furnace()])), {
    'content-type': 'application/json; charset=utf-8',
  })
  expect(response.status).toBe(200)
})

test.each<[string, BodyInit]>([
  ['nothing', ''],
  ['half of it', '{"sentAt":'],
  ['no JSON', 'records'],
  ['bytes that are not UTF-8', new Uint8Array([0x22, 0xff, 0xfe, 0x22])],
])('POST /api/records answers 400 to malformed JSON: %s', async (_what, body) => {
  expect((await problem(await post(body))).slice(0, 2)).toEqual([400, 'malformed-json'])
})

test('POST /api/records refuses a record nested too deeply, and stores the others of its batch', async () => {
  const deep = furnace({ body: { note: 'DEEP' } })
  const text = JSON.stringify(batchOf([furnace(), deep, furnace()]))
  const response = await post(text.replace('"DEEP"', '['.repeat(20_000) + ']'.repeat(20_000)))
  expect(await answeredWith(response)).toMatchObject({
    answers: [
      { outcome: 'stored' },
      {
        id: deep.id,
        outcome: 'refused',
        rule: 'record shape',
        sentence: 'It is nested too deeply to be kept.',
      },
      { outcome: 'stored' },
    ],
  })
})

test.each<[unknown, RegExp]>([
  [null, /^Expected object, received null\.$/],
  [[], /^Expected object/],
  [{ records: [furnace()] }, /^In “sent at”: It is missing\.$/],
  [{ sentAt: 'now', records: [furnace()] }, /^In “sent at”: /],
  [{ sentAt: '2026-01-12T12:00:00', records: [furnace()] }, /^In “sent at”: /],
  [{ sentAt: '2026-01-12T12:00:00Z', records: {} }, /^In “records”: /],
  [{ sentAt: '2026-01-12T12:00:00Z', records: [] }, /^In “records”: /],
  [batchOf(Array.from({ length: 1001 }, () => 1)), /^In “records”: /],
])('POST /api/records answers 400 to another shape, in a sentence: %#', async (body, sentence) => {
  expect(await problem(await send(body))).toEqual([400, 'not-a-batch', expect.stringMatching(sentence)])
})

test('POST /api/records answers 413 to more than the door lets in, and takes all that it does', async () => {
  const text = JSON.stringify(batchOf([furnace({ body: { note: '' } })]))
  const filled = (bytes: number) => text.replace('""', `"${'x'.repeat(bytes - text.length)}"`)
  expect((await problem(await post(filled(mostBatchBytes + 1)))).slice(0, 2)).toEqual([413, 'too-long'])
  expect((await post(filled(mostBatchBytes))).status).toBe(200)
})

test('POST /api/records counts what arrives, whatever length was announced, and reads no further', async () => {
  let pulled = 0
  const endless = new ReadableStream({
    pull(controller) {
      pulled += 1
      controller.enqueue(new Uint8Array(100_000).fill(0x20))
    },
  })
  const response = await post(endless, { 'content-length': '10' })
  expect((await problem(response))[0]).toBe(413)
  expect(pulled).toBeLessThan(60)
})

test('POST /api/records reads letters that fall between two pieces of the body', async () => {
  const said = furnace({ body: { siteLabel: 'Höhe 😀 Ł', model: 'QX-80', fuel: 'natural gas' } })
  const bytes = new TextEncoder().encode(JSON.stringify(batchOf([said])))
  const pieces = new ReadableStream({
    start(controller) {
      for (const byte of bytes) controller.enqueue(Uint8Array.of(byte))
      controller.close()
    },
  })
  expect((await post(pieces)).status).toBe(200)
  expect(theLog().lookup(said.id)?.body).toEqual(said.body)
})

test('POST /api/records answers 503 when the log stays locked, and the same batch goes through later', async () => {
  const batch = batchOf([furnace()])
  await send(batchOf([furnace()]))
  const other = new Database(databaseFile())
  other.exec('BEGIN IMMEDIATE')
  expect((await problem(await send(batch))).slice(0, 2)).toEqual([503, 'log-busy'])
  other.exec('ROLLBACK')
  other.close()
  expect(await answeredWith(await send(batch))).toMatchObject({ answers: [{ outcome: 'stored', seq: 2 }] })
})

test('GET /api/changes answers what was stored, and goes on after a number', async () => {
  const sent = [furnace(), furnace(), furnace()]
  await send(batchOf(sent))
  const response = await get()
  expect(response.status).toBe(200)
  expect(response.headers.get('cache-control')).toBe('no-store')
  expect(await answeredWith(response)).toMatchObject({ records: sent, next: 3, more: false })
  expect(await answeredWith(await get('?after=1&limit=1'))).toMatchObject({
    records: [{ id: sent[1]?.id, seq: 2 }],
    next: 2,
    more: true,
  })
})

test('GET /api/changes answers 401 to who is not signed in', async () => {
  signedIn = undefined
  expect((await problem(await get()))[0]).toBe(401)
})

test.each([
  '?after=-1',
  '?after=x',
  '?after=1.5',
  '?after=',
  '?after=1e3',
  '?after=9999999999999999',
  '?limit=0',
  '?limit=1001',
  '?limit=all',
])('GET /api/changes%s answers 400', async (query) => {
  expect((await problem(await get(query))).slice(0, 2)).toEqual([400, 'bad-numbers'])
})
