import { type Database, SqliteError } from 'better-sqlite3'
import { asStored } from '../people/moment'
import type { Contact } from './contact'

/** A screen asks every half minute; that it is still there is written down this seldom, in milliseconds. */
const nothingNewMs = 5 * 60_000

export type Noted = Contact & {
  personId: string
  sessionId?: string | undefined
  /** The number up to which it holds the log; left out when it did not say. */
  examinedSeq?: number | undefined
}

type Row = {
  sessionId: string | null
  lastContactAt: string
  examinedSeq: number
  waiting: number
  build: string
}

/**
 * Writes down what a device said of itself. Where nothing has changed since a few minutes ago, nothing is written.
 *
 * @returns whether anything was written
 */
export function noteContact(database: Database, noted: Noted, now: Date): boolean {
  const { device, personId, sessionId = null, waiting, build } = noted
  const before = database
    .prepare<[string, string], Row>(
      `SELECT "sessionId", "lastContactAt", "examinedSeq", "waiting", "build" FROM "Device"
       WHERE "id" = ? AND "personId" = ?`,
    )
    .get(device, personId)
  const examinedSeq = noted.examinedSeq ?? before?.examinedSeq ?? 0
  const isNews =
    before === undefined ||
    before.sessionId !== sessionId ||
    before.examinedSeq !== examinedSeq ||
    before.waiting !== waiting ||
    before.build !== build ||
    Math.abs(now.getTime() - Date.parse(before.lastContactAt)) >= nothingNewMs
  if (!isNews) return false
  const at = asStored(now)
  try {
    database
      .prepare(
        `INSERT INTO "Device"
           ("id", "personId", "sessionId", "firstContactAt", "lastContactAt", "examinedSeq", "waiting", "build")
         VALUES (?, ?, ?, ?, ?, ?, ?, ?)
         ON CONFLICT ("id", "personId") DO UPDATE SET
           "sessionId" = excluded."sessionId", "lastContactAt" = excluded."lastContactAt",
           "examinedSeq" = excluded."examinedSeq", "waiting" = excluded."waiting", "build" = excluded."build"`,
      )
      .run(device, personId, sessionId, at, at, examinedSeq, waiting, build)
  } catch (cause) {
    // Somebody else writes for long, an import for instance: the next contact says the same again.
    if (cause instanceof SqliteError && cause.code.startsWith('SQLITE_BUSY')) return false
    throw cause
  }
  return true
}
