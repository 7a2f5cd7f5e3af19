import type { Database } from 'better-sqlite3'
import { daysBefore, type LookUpTotal, lookUpDays } from '@/lib/records/lookUps'

/** How often each position was looked up in the last `lookUpDays` days, once a device and day; most first. */
export const readLookUps = (database: Database, now: Date): LookUpTotal[] =>
  database
    .prepare<[string], LookUpTotal>(
      `SELECT "positionId", count(*) AS "times" FROM "LookUp" WHERE "day" >= ?
       GROUP BY "positionId" ORDER BY "times" DESC, "positionId"`,
    )
    .all(daysBefore(now.toISOString().slice(0, 10), lookUpDays))
