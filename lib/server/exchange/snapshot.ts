import Database from 'better-sqlite3'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { databaseFile } from '../database'
import { kindsSeenBy, storedRecord } from '../log/changes'
import { noPreviousHash } from '../log/hash'
import type { Kinds } from '../log/judge'
import { type LogTables, openTables, type WalkedRow } from '../log/tables'
import { type ListedPerson, listPeople } from '../people/list'
import { heldPictures } from '../photos/pictureTable'

/** Entries that are read at once. */
const pageSize = 500

/** The log as it stood at one moment, whatever is written meanwhile. */
export type Snapshot = {
  head: { seq: number; hash: string }
  people: ListedPerson[]
  /** Every entry, page by page, in order. */
  pages(): Generator<WalkedRow[]>
  /** The records of a kind, page by page, as a manager may see them. */
  recordsOf(kind: string): Generator<HeldRecord[]>
  /** What the log folds into, with the pictures that are held as proof. It is held in memory, as on a device. */
  file(): TeamFile
  close(): void
}

/**
 * Opens a connection of its own on the log and holds it at this moment, so that an export that takes long is of one
 * piece. It must be closed: until then what is withheld is not scrubbed from the disk.
 */
export function openSnapshot(kinds: Kinds, folder?: string): Snapshot {
  const db = new Database(databaseFile(folder), { fileMustExist: true })
  const tables = openTables(db)
  db.exec('BEGIN')
  const head = tables.head() ?? { seq: 0, hash: noPreviousHash }
  return {
    head,
    people: listPeople(db),
    pages: () => pagesOf(tables, head.seq),
    recordsOf: (kind) => recordsOf(tables, head.seq, [kind]),
    file: () =>
      foldTeamFile(
        [...recordsOf(tables, head.seq, kindsSeenBy('manager', kinds))].flat(),
        new Set(heldPictures(db)),
      ),
    close() {
      db.exec('ROLLBACK')
      db.close()
    },
  }
}

function* pagesOf(tables: LogTables, end: number): Generator<WalkedRow[]> {
  for (let after = 0; after < end; ) {
    const rows = tables.walk(after, pageSize)
    const last = rows.at(-1)
    if (last === undefined) return
    after = last.seq
    yield rows
  }
}

function* recordsOf(tables: LogTables, end: number, kinds: string[]): Generator<HeldRecord[]> {
  for (let after = 0; after < end; ) {
    const rows = tables.page(after, end, kinds, pageSize)
    const last = rows.at(-1)
    if (last === undefined) return
    after = last.seq
    yield rows.map((row) => storedRecord(row, tables))
  }
}
