import path from 'node:path'
import Database from 'better-sqlite3'
import { recordKinds } from '@/lib/records/registry'
import { type Log, openLog } from './log/openLog'

/** Where everything that a team keeps is: the database, photos, secrets. `INCHWATER_DATA`, else `data` here. */
export const dataFolder = (): string =>
  path.resolve(/* turbopackIgnore: true */ process.env.INCHWATER_DATA || 'data')

export const databaseFile = (folder = dataFolder()): string => path.join(folder, 'inchwater.db')

// The connections are on globalThis, because development reloads modules and would leave open ones behind. The
// logs are not: they must know the kinds of records as they are now.
const kept = globalThis as typeof globalThis & { inchwaterLogs?: Map<string, Database.Database> }
kept.inchwaterLogs ??= new Map()
const logs = new WeakMap<Database.Database, Log>()

/**
 * The team's log, on a connection of its own. The database must have been migrated, as the server does at its
 * start.
 *
 * @example const { records, next } = theLog().readChanges({ after: 0, role: 'technician', limit: 500 })
 */
export function theLog(folder = dataFolder()): Log {
  const db = kept.inchwaterLogs!.get(folder) ?? new Database(databaseFile(folder), { fileMustExist: true })
  kept.inchwaterLogs!.set(folder, db)
  const log = logs.get(db) ?? openLog({ db, kinds: recordKinds, now: () => new Date() })
  logs.set(db, log)
  return log
}

/** Closes the log's connections: at the server's end, and between tests. */
export function closeLogs(): void {
  for (const db of kept.inchwaterLogs!.values()) db.close()
  kept.inchwaterLogs!.clear()
}
