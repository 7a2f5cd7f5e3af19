import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { afterEach, beforeEach } from 'vitest'
import { makeBackup } from '@/lib/server/backup/makeBackup'
import { databaseFile } from '@/lib/server/database'
import { openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { manager, noon, record, technician } from '../log/freshLog'
import { smallKinds } from '../log/smallKinds'

/** Folders of one test: where the team works, where back-ups go, and where one is put back. */
export type Folders = { root: string; data: string; backups: string; target: string }

/** Before each test new folders, gone after it. */
export function withFolders(): Folders {
  const folders = {} as Folders
  beforeEach(() => {
    const root = mkdtempSync(path.join(tmpdir(), 'backup-'))
    Object.assign(folders, {
      root,
      data: path.join(root, 'data'),
      backups: path.join(root, 'backups'),
      target: path.join(root, 'target'),
    })
  })
  afterEach(() => rmSync(folders.root, { recursive: true }))
  return folders
}

/** Fills a data folder: a log with something withheld, and two photos. */
export async function fillData(data: string, records = 40): Promise<void> {
  migrate(databaseFile(data))
  const db = new Database(databaseFile(data))
  const log = openLog({ db, kinds: smallKinds, now: () => noon })
  const said = Array.from({ length: records }, (_, at) =>
    record({ body: { text: `Remark ${at} `.repeat(20), saidBy: 'A name' } }),
  )
  await log.appendRecords({ sentAt: noon.toISOString(), records: said }, technician)
  const body = { record: said[0]!.id, fields: ['saidBy'], reason: 'A name got in.' }
  const withholding = record({ kind: 'withholding', version: 1, author: manager.id, body })
  await log.appendRecords({ sentAt: noon.toISOString(), records: [withholding] }, manager)
  db.close()
  mkdirSync(path.join(data, 'photos', 'ab'), { recursive: true })
  writeFileSync(path.join(data, 'photos', 'ab', 'abcd.jpg'), Buffer.alloc(30_000, 7))
  writeFileSync(path.join(data, 'photos', 'plate.jpg'), Buffer.alloc(3, 9))
  writeFileSync(path.join(data, 'session-secret'), 'x'.repeat(43))
}

/** A back-up of a filled folder: its own folder. */
export async function filledBackup({ data, backups }: Folders, records?: number): Promise<string> {
  await fillData(data, records)
  const made = await makeBackup({ dataFolder: data, into: backups, now: noon })
  if (!made.ok) throw new Error(made.problem.message)
  return made.value.folder
}

/** Every file under a folder, by its path in it; but for what SQLite keeps beside a database that is open. */
export const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/-(wal|shm)$/.test(entry.name))
    .map((entry) => path.relative(folder, path.join(entry.parentPath, entry.name)))
    .sort()
