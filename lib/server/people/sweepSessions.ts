import type { Database } from 'better-sqlite3'
import { idleDays } from './idle'
import { asStored } from './moment'

/**
 * Removes sessions that have run out or lain idle too long, which nobody could use any more. Links stay, as history; so
 * do sessions that a manager has ended and whose device has not handed over yet, however long they lie idle. Run out
 * (400 days, when the browser has dropped its cookie too), they go: nobody is let in by them, and the device hands over
 * once its person signs in there again.
 */
export function sweepSessions(database: Database, now: Date): void {
  const lastUse = new Date(now.getTime() - idleDays() * 24 * 60 * 60 * 1000)
  database
    .prepare(
      `DELETE FROM "Session" WHERE "expiresAt" < ? OR ("updatedAt" < ? AND "id" NOT IN
         (SELECT "sessionId" FROM "DeviceEnding" WHERE "emptiedAt" IS NULL AND "sessionId" IS NOT NULL))`,
    )
    .run(asStored(now), asStored(lastUse))
}
