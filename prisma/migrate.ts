/**
 * Brings a SQLite database up to prisma/migrations, with plain SQL and nothing downloaded. It keeps Prisma's own
 * table and checksums, so that Prisma's tools agree about what was applied.
 */
import { createHash, randomUUID } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import Database from 'better-sqlite3'

export const migrationsFolder = path.join(import.meta.dirname, 'migrations')

/** The database cannot be brought up to this program; the message is a sentence for whoever runs the server. */
export class MigrationRefused extends Error {
  override name = 'MigrationRefused'
}

/** How long to wait for another program that is migrating or writing, in milliseconds. */
const patienceMs = 10_000

/** As Prisma's migrate commands create it on SQLite. */
const bookkeeping = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`

/**
 * Applies what is missing, in the order of the names, all of it or nothing. The file and its folder are made when
 * they are not there. Safe to run from several programs at once: one applies, the others find nothing to do.
 *
 * @param file path of the database
 * @returns the names of the migrations that were applied now
 * @throws MigrationRefused when the database is newer than this program, a migration was edited after it was
 *   applied, or one fails; the database is then as it was
 * @example migrate('data/inchwater.db')   // ['20261125095600_log']
 */
export function migrate(file: string, folder = migrationsFolder): string[] {
  mkdirSync(path.dirname(path.resolve(file)), { recursive: true })
  const db = new Database(file, { timeout: patienceMs })
  try {
    db.pragma('journal_mode = WAL')
    // Without effect inside a transaction, hence here: redefining a table must not cascade into its children.
    db.pragma('foreign_keys = OFF')
    return db.transaction(() => applyMissing(db, folder)).immediate()
  } finally {
    db.close()
  }
}

/** Every migration in the folder, in the order in which they are applied. */
export const migrationNames = (folder = migrationsFolder): string[] =>
  existsSync(folder)
    ? readdirSync(folder, { withFileTypes: true })
        .filter((entry) => entry.isDirectory())
        .map((entry) => entry.name)
        .sort()
    : []

export const readMigration = (name: string, folder = migrationsFolder): Buffer =>
  readFileSync(path.join(folder, name, 'migration.sql'))

function applyMissing(db: Database.Database, folder: string): string[] {
  db.exec(bookkeeping)
  const applied = appliedChecksums(db)
  const names = migrationNames(folder)
  refuseNewerDatabase(applied, names)
  const done: string[] = []
  for (const name of names) {
    const sql = readMigration(name, folder)
    const checksum = createHash('sha256').update(sql).digest('hex')
    const before = applied.get(name)
    if (before === undefined) {
      apply(db, name, sql.toString('utf8'), checksum)
      done.push(name)
    } else if (before !== checksum) {
      throw new MigrationRefused(
        `The migration ${name} was edited after this database had applied it. Put the original file back; a change needs a migration of its own.`,
      )
    }
  }
  if (done.length > 0) refuseDanglingReferences(db)
  return done
}

function appliedChecksums(db: Database.Database): Map<string, string> {
  const rows = db
    .prepare<[], { name: string; checksum: string; finished: string | null }>(
      'SELECT migration_name AS name, checksum, finished_at AS finished FROM "_prisma_migrations" WHERE rolled_back_at IS NULL',
    )
    .all()
  const unfinished = rows.find((row) => row.finished === null)
  if (unfinished !== undefined) {
    throw new MigrationRefused(
      `The migration ${unfinished.name} was begun by another tool and never finished. Restore the back-up made before it.`,
    )
  }
  return new Map(rows.map((row) => [row.name, row.checksum]))
}

function refuseNewerDatabase(applied: ReadonlyMap<string, string>, names: readonly string[]): void {
  const unknown = [...applied.keys()].filter((name) => !names.includes(name))
  if (unknown.length === 0) return
  throw new MigrationRefused(
    `This database was written by a newer Inchwater (it has ${unknown.join(', ')}). Nothing was changed. Start the newer program, or restore a back-up made with this one.`,
  )
}

function apply(db: Database.Database, name: string, sql: string, checksum: string): void {
  const startedAt = prismaTime()
  try {
    db.exec(sql)
  } catch (cause) {
    throw new MigrationRefused(
      `The migration ${name} failed, and the database is as it was: ${cause instanceof Error ? cause.message : cause}`,
      { cause },
    )
  }
  db.prepare(
    'INSERT INTO "_prisma_migrations" (id, checksum, finished_at, migration_name, started_at, applied_steps_count) VALUES (?, ?, ?, ?, ?, 1)',
  ).run(randomUUID(), checksum, prismaTime(), name, startedAt)
}

function refuseDanglingReferences(db: Database.Database): void {
  const dangling = db.pragma('foreign_key_check') as { table: string; rowid: number; parent: string }[]
  const first = dangling[0]
  if (first === undefined) return
  throw new MigrationRefused(
    `After the migrations ${dangling.length} rows would name rows that are not there (first: row ${first.rowid} of ${first.table} names a ${first.parent}). The database is as it was.`,
  )
}

/** Prisma writes the offset as +00:00. */
const prismaTime = (): string => new Date().toISOString().replace('Z', '+00:00')
