import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { v7 as uuidv7 } from 'uuid'
import { afterAll, afterEach, beforeAll, beforeEach } from 'vitest'
import type { Answer } from '@/lib/records/answer'
import type { RecordEnvelope } from '@/lib/records/envelope'
import type { Sender } from '@/lib/server/log/judge'
import { type Log, openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { smallKinds } from './smallKinds'

export const noon = new Date('2026-01-12T12:00:00.000Z')
export const manager: Sender = { id: 'manager-1', role: 'manager' }
export const dispatcher: Sender = { id: 'dispatcher-1', role: 'dispatcher' }
export const technician: Sender = { id: 'technician-1', role: 'technician' }

/** A record said at noon by the technician, unless told otherwise. */
export const record = (parts: Partial<RecordEnvelope> = {}): RecordEnvelope => ({
  id: uuidv7(),
  kind: 'remark',
  version: 2,
  body: { text: 'The hose is wet.' },
  saidAt: noon.toISOString(),
  author: technician.id,
  device: 'phone-1',
  ...parts,
})

export type Fresh = {
  folder: string
  file: string
  db: Database.Database
  log: Log
  add(records: readonly unknown[], sender?: Sender, sentAt?: string): Promise<Answer[]>
}

/** Opens a log on a database, or on a copy of one, in a folder of its own. */
export function openFreshLog(copyOf?: string): Fresh & { close(): void } {
  const folder = mkdtempSync(path.join(tmpdir(), 'log-'))
  const file = path.join(folder, 'inchwater.db')
  if (copyOf === undefined) migrate(file)
  else copyFileSync(copyOf, file)
  const db = new Database(file)
  const log = openLog({ db, kinds: smallKinds, now: () => noon, jitter: () => 0.5 })
  return {
    folder,
    file,
    db,
    log,
    add: (records, sender = technician, sentAt = noon.toISOString()) =>
      log.appendRecords({ sentAt, records }, sender),
    close() {
      db.close()
      rmSync(folder, { recursive: true })
    },
  }
}

/** Before each test a new log; what it kept is gone after. */
export function withFreshLog(): Fresh {
  const fresh = {} as Fresh & { close(): void }
  let pattern: { file: string; folder: string }
  beforeAll(() => {
    const { file, folder, db } = openFreshLog()
    db.close()
    pattern = { file, folder }
  })
  afterAll(() => rmSync(pattern.folder, { recursive: true }))
  beforeEach(() => {
    Object.assign(fresh, openFreshLog(pattern.file))
  })
  afterEach(() => fresh.close())
  return fresh
}

/** Writes to the tables with their guards gone, as somebody with the file and bad intentions would. */
export function tamper(db: Database.Database, sql: string): void {
  const guards = db
    .prepare<[], { name: string; sql: string }>("SELECT name, sql FROM sqlite_master WHERE type = 'trigger'")
    .all()
    .filter(({ name }) => /^(Log|No_)/.test(name))
  db.pragma('foreign_keys = OFF')
  for (const { name } of guards) db.exec(`DROP TRIGGER "${name}"`)
  db.exec(sql)
  for (const guard of guards) db.exec(guard.sql)
  db.pragma('foreign_keys = ON')
}
