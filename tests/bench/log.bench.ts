import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { recordKinds } from '@/lib/records/registry'
import { openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'

export const name = 'log'

const batchSize = 1_000
const rounds = 20
const author = 'person-1'

const furnaces = (at: string) =>
  Array.from({ length: batchSize }, (_, index) => ({
    id: uuidv7(),
    kind: 'furnace',
    version: 1,
    body: {
      siteLabel: `Site ${index}`,
      model: `QX-80-${index}`,
      serial: `S${index}`,
      fuel: 'natural gas',
      elevationMetres: 200,
      note: 'In the basement behind the stairs; the drain runs to the left.',
    },
    saidAt: at,
    author,
    device: 'phone-1',
  }))

/** What else a machine does only ever adds, so the shortest of several times says most about the work itself. */
const shortest = (values: readonly number[]): number => Math.min(...values)

/**
 * Appending 1,000 records (judged, canonicalized, salted, hashed and chained) beside the same finished rows put
 * into the same tables by plain better-sqlite3 in one transaction, and into those tables without their triggers.
 * The three take turns, so that what else the machine does falls on all of them.
 */
export async function run(print: (line: string) => void): Promise<void> {
  const folder = mkdtempSync(path.join(tmpdir(), 'bench-log-'))
  const open = (file: string): Database.Database => {
    migrate(path.join(folder, file))
    const db = new Database(path.join(folder, file))
    db.pragma('synchronous = FULL')
    return db
  }
  try {
    const [db, guarded, bare] = [open('log.db'), open('guarded.db'), open('bare.db')]
    const triggers = bare.prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck()
    for (const trigger of triggers.all()) bare.exec(`DROP TRIGGER "${trigger}"`)
    const log = openLog({ db, kinds: recordKinds, now: () => new Date() })
    const rowsAfter = db.prepare<[number], object>(
      'SELECT * FROM LogEntry JOIN LogContent USING (seq) WHERE seq > ? ORDER BY seq',
    )
    const insertInto = (target: Database.Database) => {
      const entry = target.prepare(
        `INSERT INTO LogEntry VALUES (@seq, @id, @kind, @version, @author, @device, @saidAt, @receivedAt,
         @clockShiftMs, @contentHash, @previousHash, @hash)`,
      )
      const content = target.prepare('INSERT INTO LogContent VALUES (@seq, @bytes, @salt, NULL)')
      return target.transaction((rows: object[]) => {
        for (const row of rows) {
          entry.run(row)
          content.run(row)
        }
      }).immediate
    }
    const [insertGuarded, insertBare] = [insertInto(guarded), insertInto(bare)]
    const took = { append: [] as number[], guarded: [] as number[], bare: [] as number[] }
    const time = async (into: number[], work: () => unknown): Promise<void> => {
      const started = performance.now()
      await work()
      into.push(performance.now() - started)
    }

    for (let round = 0; round < rounds; round++) {
      const sentAt = new Date().toISOString()
      const records = furnaces(sentAt)
      await time(took.append, () =>
        log.appendRecords({ sentAt, records }, { id: author, role: 'technician' }),
      )
      const rows = rowsAfter.all(round * batchSize)
      await time(took.guarded, () => insertGuarded(rows))
      await time(took.bare, () => insertBare(rows))
    }
    const { entries, trouble } = await log.verify()
    if (trouble !== undefined || entries !== rounds * batchSize)
      throw new Error('the log under test is not whole')

    const [appendMs, guardedMs, bareMs] = [took.append, took.guarded, took.bare].map(shortest) as [
      number,
      number,
      number,
    ]
    print(`append ${batchSize} records, shortest of ${rounds}: ${appendMs.toFixed(0)} ms`)
    print(`the same rows, plain inserts: ${guardedMs.toFixed(0)} ms (append ${ratio(appendMs, guardedMs)})`)
    print(`the same without triggers:   ${bareMs.toFixed(0)} ms (append ${ratio(appendMs, bareMs)})`)

    const readStarted = performance.now()
    for (let after = 0, more = true; more; ) {
      const page = log.readChanges({ after, role: 'technician', limit: 1_000 })
      after = page.next
      more = page.more
    }
    print(`read ${entries} changes in pages of 1,000: ${(performance.now() - readStarted).toFixed(0)} ms`)
    const verifyStarted = performance.now()
    await log.verify()
    print(`verify ${entries} entries: ${(performance.now() - verifyStarted).toFixed(0)} ms`)
    for (const each of [db, guarded, bare]) each.close()
  } finally {
    rmSync(folder, { recursive: true })
  }
}

const ratio = (a: number, b: number): string => `${(a / b).toFixed(1)} times as long`
