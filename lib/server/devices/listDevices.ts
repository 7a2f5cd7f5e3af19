import type { Database } from 'better-sqlite3'

/** What the server last heard of one person's device. Moments are ISO 8601. */
export type ListedDevice = {
  id: string
  personId: string
  /** Whether the session of its last contact still holds. */
  signedIn: boolean
  firstContactAt: string
  /** Up to five minutes old. */
  lastContactAt: string
  /** The number up to which it holds the log: it has seen nothing that came after. */
  examinedSeq: number
  /** How many records waited there to be sent. */
  waiting: number
  build: string
}

type Row = Omit<ListedDevice, 'signedIn'> & { signedIn: 0 | 1 }

/**
 * Every device that was ever in contact, one row a person on it, the latest contact first.
 *
 * @example listDevices(store().database).filter(({ examinedSeq }) => examinedSeq < seq) // who has not fetched it yet
 */
export function listDevices(database: Database): ListedDevice[] {
  return database
    .prepare<[], Row>(
      `SELECT "d"."id", "d"."personId", "s"."id" IS NOT NULL AS "signedIn", "d"."firstContactAt", "d"."lastContactAt",
         "d"."examinedSeq", "d"."waiting", "d"."build"
       FROM "Device" AS "d" LEFT JOIN "Session" AS "s" ON "s"."id" = "d"."sessionId"
       ORDER BY "d"."lastContactAt" DESC, "d"."id"`,
    )
    .all()
    .map((row) => ({ ...row, signedIn: row.signedIn === 1 }))
}
