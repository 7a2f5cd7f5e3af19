import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { GET } from '@/app/api/log/verify/route'
import { closeLogs, databaseFile, theLog } from '@/lib/server/database'
import { joinVerification } from '@/lib/server/log/sharedVerification'
import { migrate } from '@/prisma/migrate'
import { tamper } from './freshLog'

vi.mock('@/lib/server/people/session', () => ({
  requireRole: async () => ({ id: 'person-1', name: 'Person One', role: 'technician' }),
}))

let folder = ''
beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'verify-'))
  vi.stubEnv('INCHWATER_DATA', folder)
  migrate(databaseFile())
  const saidAt = new Date().toISOString()
  const records = Array.from({ length: 1000 }, (_, at) => ({
    id: uuidv7(),
    kind: 'maker',
    version: 1,
    body: { name: `Maker ${at}` },
    saidAt,
    author: 'person-1',
    device: 'desk-1',
  }))
  for (const half of [records.slice(0, 500), records.slice(500)])
    await theLog().appendRecords({ sentAt: saidAt, records: half }, { id: 'person-1', role: 'manager' })
})
afterEach(() => {
  closeLogs()
  vi.unstubAllEnvs()
  rmSync(folder, { recursive: true })
})

const ask = async () => {
  const response = await GET(new Request('http://localhost/api/log/verify'))
  expect(response.headers.get('content-type')).toContain('application/x-ndjson')
  const lines = (await response.text()).trimEnd().split('\n')
  return lines.map((line) => JSON.parse(line) as Record<string, unknown>)
}

test('GET /api/log/verify says how far it is, step by step, and at the end what it found', async () => {
  const { headHash } = await theLog().verify()
  expect(await ask()).toEqual([
    { done: 500, of: 1000 },
    { done: 1000, of: 1000 },
    { ok: true, value: { entries: 1000, headHash, withheld: [] } },
  ])
})

test('GET /api/log/verify names the first entry that does not fit', async () => {
  const db = new Database(databaseFile())
  tamper(db, "UPDATE LogContent SET bytes = replace(bytes, 'Maker 700', 'Maker 701') WHERE seq = 701")
  db.close()
  expect((await ask()).at(-1)).toMatchObject({
    ok: true,
    value: {
      entries: 700,
      trouble: { seq: 701, sentence: expect.stringContaining('entry 701 was changed') },
    },
  })
})

test('everybody who asks while it is under way shares one walk; whoever asks after it gets another', async () => {
  const walked = vi.spyOn(theLog(), 'verify')
  const told: number[] = []
  const one = joinVerification((done) => told.push(done))
  const other = joinVerification(() => {
    throw new Error('told after it left')
  })
  other.leave()
  expect(await one.result).toEqual(await other.result)
  expect(walked).toHaveBeenCalledTimes(1)
  expect(told).toEqual([500, 1000])
  await Promise.all([ask(), ask()])
  expect(walked).toHaveBeenCalledTimes(2)
})

test('the walk lets others have their turn: a record is stored before it ends', async () => {
  const order: string[] = []
  const walk = joinVerification(() => {}).result.then(() => order.push('walked'))
  setImmediate(() => order.push('turn'))
  await walk
  expect(order).toEqual(['turn', 'walked'])
})

test('a screen that goes away in the middle is told no more, and nothing goes wrong', async () => {
  const response = await GET(new Request('http://localhost/api/log/verify'))
  await response.body?.cancel()
  expect(await ask()).toHaveLength(3)
})
