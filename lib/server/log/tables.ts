import { type Database, SqliteError, type Statement } from 'better-sqlite3'
import type { Refusal } from '@/lib/records/envelope'
import type { Header } from './hash'

/** The log's raw SQL, all of it: the tables, what may be asked of them, and the one way to add to them. */
export type LogTables = {
  /** Takes the write lock; false when somebody else has it. Never waits long, so nothing else is held up. */
  begin(): boolean
  commit(): void
  rollback(): void
  /** Number and hash of the newest entry; undefined while the log is empty. */
  head(): { seq: number; hash: string } | undefined
  /** The number of the newest entry of these kinds; 0 while there is none. */
  newest(kinds: readonly string[]): number
  has(id: string): boolean
  find(id: string): LogRow | undefined
  /** Every record of a kind, in order. */
  allOf(kind: string): LogRow[]
  /** Every ending of a visit, also those that are taken back. */
  endingsOf(visitId: string): LogRow[]
  /** The photos that name a picture by its hash. */
  photosNaming(sha256: string): LogRow[]
  /** The withdrawals that name a record, also those that are taken back themselves. */
  withdrawalsOf(id: string): LogRow[]
  /** Stores both rows. @throws RefusedByDatabase with the transaction no longer fit to commit */
  insert(entry: EntryRow, content: { bytes: string; salt: string }): void
  /** Stores both rows or neither: what a refusal leaves half done is undone. Several times slower. */
  insertOrUndo(entry: EntryRow, content: { bytes: string; salt: string }): void
  /** Puts the record without the withheld fields in place of the record, and forgets the salt. */
  blank(seq: number, bytes: string, withheldBySeq: number): void
  /** Up to `limit` rows of these kinds after a number, up to and including another, in order. */
  page(after: number, upTo: number, kinds: readonly string[], limit: number): LogRow[]
  /** Up to `limit` entries after a number, with their content or without if it is gone. */
  walk(after: number, limit: number): WalkedRow[]
  /** The withholdings that name a record, oldest first: their ids and their bytes. */
  withholdingsOf(id: string): LogRow[]
  contentCount(upTo: number): number
  /** The names of the database's own guards. */
  guards(): string[]
  /** Empties the write-ahead file, which still holds what was withheld; false when a reader is in the way. */
  scrub(): boolean
}

/** A rule that people meet, and that the database keeps by itself on whatever road a record comes. */
export class RefusedByDatabase extends Error {
  override name = 'RefusedByDatabase'

  constructor(
    readonly refusal: Refusal,
    cause: unknown,
  ) {
    super(refusal.sentence, { cause })
  }
}

type EntryRow = Header & { contentHash: string; previousHash: string; hash: string }
type ContentRow = { bytes: string; salt: string | null; withheldBySeq: number | null }
export type LogRow = EntryRow & ContentRow
export type WalkedRow = EntryRow & { [Column in keyof ContentRow]: ContentRow[Column] | null }

/** How long SQLite itself waits for a lock, holding up everything else in this process, in milliseconds. */
const briefWaitMs = 5

const entryColumns = [
  'seq',
  'id',
  'kind',
  'version',
  'author',
  'device',
  'saidAt',
  'receivedAt',
  'clockShiftMs',
  'contentHash',
  'previousHash',
  'hash',
] as const satisfies readonly (keyof EntryRow)[]
const contentColumns = ['bytes', 'salt', 'withheldBySeq'] as const satisfies readonly (keyof ContentRow)[]
const allColumns = [...entryColumns.map((name) => `e.${name}`), ...contentColumns.map((name) => `c.${name}`)]
const bothTables = 'LogEntry AS e JOIN LogContent AS c ON c.seq = e.seq'

/** Prepares a connection for the log. The tables must be there: prisma/migrate.ts makes them. */
export function openTables(db: Database): LogTables {
  db.pragma(`busy_timeout = ${briefWaitMs}`)
  // An answer "stored" makes a device forget the record, so it must outlive a power failure too.
  db.pragma('synchronous = FULL')
  db.pragma('foreign_keys = ON')
  // What is withheld is overwritten on the disk, not only unlinked.
  db.pragma('secure_delete = ON')

  const begin = db.prepare('BEGIN IMMEDIATE')
  const commit = db.prepare('COMMIT')
  const rollback = db.prepare('ROLLBACK')
  const mark = db.prepare('SAVEPOINT one_record')
  const keep = db.prepare('RELEASE one_record')
  const takeBack = db.prepare('ROLLBACK TO one_record')
  const head = db.prepare<[], { seq: number; hash: string }>(
    'SELECT seq, hash FROM LogEntry ORDER BY seq DESC LIMIT 1',
  )
  const newest = db
    .prepare<[string], number>(
      `SELECT coalesce(max(newest), 0) FROM (
         SELECT (SELECT max(seq) FROM LogEntry WHERE kind = each.value) AS newest FROM json_each(?) AS each)`,
    )
    .pluck()
  const has = db.prepare<[string], number>('SELECT 1 FROM LogEntry WHERE id = ?').pluck()
  const find = db.prepare<[string], LogRow>(`SELECT ${allColumns} FROM ${bothTables} WHERE e.id = ?`)
  const allOf = db.prepare<[string], LogRow>(
    `SELECT ${allColumns} FROM ${bothTables} WHERE e.kind = ? ORDER BY e.seq`,
  )
  const endingsOf = db.prepare<[string], LogRow>(
    `SELECT ${allColumns} FROM ${bothTables}
     WHERE json_extract(c.bytes, '$.kind') = 'ending' AND json_extract(c.bytes, '$.body.visitId') = ?`,
  )
  const photosNaming = db.prepare<[string], LogRow>(
    `SELECT ${allColumns} FROM ${bothTables}
     WHERE json_extract(c.bytes, '$.kind') = 'photo' AND json_extract(c.bytes, '$.body.sha256') = ?`,
  )
  const insertEntry = db.prepare<EntryRow>(
    `INSERT INTO LogEntry (${entryColumns}) VALUES (${entryColumns.map((name) => `@${name}`)})`,
  )
  const insertContent = db.prepare<[number, string, string]>(
    'INSERT INTO LogContent (seq, bytes, salt) VALUES (?, ?, ?)',
  )
  const blank = db.prepare<[string, number, number]>(
    'UPDATE LogContent SET bytes = ?, salt = NULL, withheldBySeq = ? WHERE seq = ?',
  )
  const page = db.prepare<[number, number, string, number], LogRow>(
    `SELECT ${allColumns} FROM ${bothTables}
     WHERE e.seq > ? AND e.seq <= ? AND e.kind IN (SELECT value FROM json_each(?)) ORDER BY e.seq LIMIT ?`,
  )
  const walk = db.prepare<[number, number], WalkedRow>(
    `SELECT ${allColumns} FROM LogEntry AS e LEFT JOIN LogContent AS c ON c.seq = e.seq
     WHERE e.seq > ? ORDER BY e.seq LIMIT ?`,
  )
  const naming = db.prepare<[string, string], LogRow>(
    `SELECT ${allColumns} FROM ${bothTables}
     WHERE json_extract(c.bytes, '$.kind') IN ('withdrawal', 'withholding')
       AND json_extract(c.bytes, '$.body.record') = ? AND e.kind = ? ORDER BY e.seq`,
  )
  const contentCount = db.prepare<[number], number>('SELECT count(*) FROM LogContent WHERE seq <= ?').pluck()
  const guards = db.prepare<[], string>("SELECT name FROM sqlite_master WHERE type = 'trigger'").pluck()

  const insert: LogTables['insert'] = (entry, { bytes, salt }) => {
    try {
      insertEntry.run(entry)
      insertContent.run(entry.seq, bytes, salt)
    } catch (cause) {
      const refusal = refusedByDatabase(cause)
      throw refusal === undefined ? cause : new RefusedByDatabase(refusal, cause)
    }
  }

  return {
    begin: () => ranUnlessBusy(begin),
    commit: () => void commit.run(),
    rollback: () => void (db.inTransaction && rollback.run()),
    head: () => head.get(),
    newest: (kinds) => newest.get(JSON.stringify(kinds)) ?? 0,
    has: (id) => has.get(id) !== undefined,
    find: (id) => find.get(id),
    allOf: (kind) => allOf.all(kind),
    endingsOf: (visitId) => endingsOf.all(visitId),
    photosNaming: (sha256) => photosNaming.all(sha256),
    withdrawalsOf: (id) => naming.all(id, 'withdrawal'),
    insert,
    insertOrUndo(entry, content) {
      mark.run()
      try {
        insert(entry, content)
      } catch (cause) {
        takeBack.run()
        throw cause
      } finally {
        keep.run()
      }
    },
    blank: (seq, bytes, withheldBySeq) => void blank.run(bytes, withheldBySeq, seq),
    page: (after, upTo, kinds, limit) => page.all(after, upTo, JSON.stringify(kinds), limit),
    walk: (after, limit) => walk.all(after, limit),
    withholdingsOf: (id) => naming.all(id, 'withholding'),
    contentCount: (upTo) => contentCount.get(upTo) ?? 0,
    guards: () => guards.all(),
    scrub: () => (db.pragma('wal_checkpoint(TRUNCATE)') as { busy: number }[])[0]?.busy === 0,
  }
}

function ranUnlessBusy(statement: Statement): boolean {
  try {
    statement.run()
    return true
  } catch (cause) {
    if (cause instanceof SqliteError && cause.code.startsWith('SQLITE_BUSY')) return false
    throw cause
  }
}

/** The triggers of the rules that people meet say "rule: sentence"; the others guard against programs. */
function refusedByDatabase(cause: unknown): Refusal | undefined {
  if (!(cause instanceof SqliteError) || cause.code !== 'SQLITE_CONSTRAINT_TRIGGER') return undefined
  const [, rule, sentence] = /^(no general-purpose switch): (.+)$/.exec(cause.message) ?? []
  return rule === undefined || sentence === undefined ? undefined : { rule, sentence }
}
