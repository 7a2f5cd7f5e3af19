import { existsSync } from 'node:fs'
import Database, { SqliteError } from 'better-sqlite3'

/**
 * Whether a program has a database open. A connection in WAL mode keeps a shared lock for as long as it is open
 * (SQLite, "Write-Ahead Logging", 8), so whoever gets the exclusive one is alone.
 */
export function isInUse(file: string): boolean {
  if (!existsSync(file)) return false
  const db = new Database(file, { timeout: 0, fileMustExist: true })
  try {
    db.pragma('locking_mode = EXCLUSIVE')
    db.exec('BEGIN EXCLUSIVE; ROLLBACK')
    return false
  } catch (cause) {
    if (cause instanceof SqliteError && cause.code.startsWith('SQLITE_BUSY')) return true
    // Damaged beyond opening: nobody works with it.
    if (cause instanceof SqliteError && /^SQLITE_(NOTADB|CORRUPT)/.test(cause.code)) return false
    throw cause
  } finally {
    db.close()
  }
}
