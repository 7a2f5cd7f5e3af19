import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { setTimeout as sleep } from 'node:timers/promises'
import { PrismaBetterSqlite3 } from '@prisma/adapter-better-sqlite3'
import Database from 'better-sqlite3'
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest'
import { openLog } from '@/lib/server/log/openLog'
import { LogBusy } from '@/lib/server/log/writeLock'
import { PrismaClient } from '@/prisma/generated/client'
import { migrate } from '@/prisma/migrate'
import { buildWriter, startWriter } from './childProgram'
import { noon, record, technician } from './freshLog'
import { smallKinds } from './smallKinds'

let folder = ''
let program = ''
let file = ''
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'writers-'))
  program = buildWriter(folder)
})
afterAll(() => rmSync(folder, { recursive: true }))
let tests = 0
beforeEach(() => {
  file = path.join(folder, `${++tests}.db`)
  migrate(file)
})

const open = () => {
  const db = new Database(file)
  return { db, log: openLog({ db, kinds: smallKinds, now: () => noon }) }
}

test('programs that write at the same time lose nothing: every record is there once, and the chain fits', async () => {
  const writers = ['one', 'two', 'three'].map((name) => startWriter(program, file, name, 7, 40))
  await Promise.all(writers.map((writer) => writer.ready))
  for (const writer of writers) writer.go()
  expect(await Promise.all(writers.map((writer) => writer.over))).toEqual([0, 0, 0])
  const { db, log } = open()
  expect(await log.verify()).toMatchObject({ entries: 3 * 7 * 40 })
  expect((await log.verify()).trouble).toBeUndefined()
  const order = db.prepare<[], string>('SELECT author FROM LogEntry ORDER BY seq').pluck().all()
  const texts = db.prepare("SELECT DISTINCT json_extract(bytes, '$.body.text') FROM LogContent").all()
  expect(texts).toHaveLength(3 * 7 * 40)
  // Batches are never mixed, and the programs did take turns.
  const runs = order.filter((author, index) => author !== order[index - 1]).length
  expect(order.filter((author, index) => author !== order[index - (index % 7)])).toEqual([])
  expect(runs).toBeGreaterThan(3)
  db.close()
}, 60_000)

test('appendRecords(batch) waits for a transaction that Prisma holds open in this process, and the event loop goes on', async () => {
  const prisma = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url: `file:${file}` }) })
  const { db, log } = open()
  const told: string[] = []
  let ticks = 0
  const ticking = setInterval(() => ticks++, 5)
  let release = () => {}
  const held = new Promise<void>((resolve) => {
    release = resolve
  })
  const transaction = prisma.$transaction(
    async (tx) => {
      await tx.$executeRawUnsafe('CREATE TABLE "Other" ("a" INTEGER)')
      told.push('locked')
      await held
      told.push('released')
    },
    { timeout: 10_000 },
  )
  while (told.length === 0) await sleep(1)
  const sent = log.appendRecords({ sentAt: noon.toISOString(), records: [record()] }, technician)
  const answered = sent.then((answers) => {
    told.push('stored')
    return answers
  })
  const before = ticks
  await sleep(300)
  expect(ticks - before).toBeGreaterThan(10)
  release()
  expect(await answered).toMatchObject([{ outcome: 'stored', seq: 1 }])
  await transaction
  clearInterval(ticking)
  expect(told).toEqual(['locked', 'released', 'stored'])
  await prisma.$disconnect()
  db.close()
})

test('appendRecords(batch) notes the time at which the batch came, not at which the lock was free', async () => {
  let clock = noon.getTime()
  const db = new Database(file)
  const log = openLog({ db, kinds: smallKinds, now: () => new Date(clock) })
  const other = new Database(file)
  other.exec('BEGIN IMMEDIATE')
  const said = record()
  const sent = log.appendRecords({ sentAt: noon.toISOString(), records: [said] }, technician)
  clock += 9_000
  await sleep(30)
  other.exec('ROLLBACK')
  await sent
  expect(log.lookup(said.id)).toMatchObject({ receivedAt: noon.toISOString(), clockShiftMs: 0 })
  other.close()
  db.close()
})

test('appendRecords(batch) gives up after ten seconds without the lock, says so, and has changed nothing', async () => {
  const { db, log } = open()
  const other = new Database(file)
  other.exec('BEGIN IMMEDIATE')
  const started = performance.now()
  await expect(
    log.appendRecords({ sentAt: noon.toISOString(), records: [record()] }, technician),
  ).rejects.toThrow(LogBusy)
  const waited = performance.now() - started
  expect(waited).toBeGreaterThan(9_900)
  expect(waited).toBeLessThan(15_000)
  other.exec('ROLLBACK')
  other.close()
  expect(await log.verify()).toMatchObject({ entries: 0 })
  expect(
    await log.appendRecords({ sentAt: noon.toISOString(), records: [record()] }, technician),
  ).toMatchObject([{ outcome: 'stored', seq: 1 }])
  db.close()
})

test('two logs in one process, appending by turns without waiting for each other, number their records without gaps', async () => {
  const [one, two] = [open(), open()]
  const answers = await Promise.all(
    Array.from({ length: 40 }, (_, index) =>
      (index % 2 ? one : two).log.appendRecords(
        { sentAt: noon.toISOString(), records: [record(), record()] },
        technician,
      ),
    ),
  )
  const numbers = answers.flat().map((answer) => ('seq' in answer ? answer.seq : 0))
  expect(numbers.sort((a, b) => a - b)).toEqual(Array.from({ length: 80 }, (_, index) => index + 1))
  expect((await one.log.verify()).trouble).toBeUndefined()
  one.db.close()
  two.db.close()
})
