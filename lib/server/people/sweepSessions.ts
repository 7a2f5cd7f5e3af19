import type { Database } from 'better-sqlite3'
import { idleDays } from './idle'
import { asStored } from './moment'

/** Removes sessions that have ended or lain idle too long, which nobody could use any more. Links stay, as history. */
export function sweepSessions(database: Database, now: Date): void {
  const lastUse = new Date(now.getTime() - idleDays() * 24 * 60 * 60 * 1000)
  database
    .prepare('DELETE FROM "Session" WHERE "updatedAt" < ? OR "expiresAt" < ?')
    .run(asStored(lastUse), asStored(now))
}
