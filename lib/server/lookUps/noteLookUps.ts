import type { Database } from 'better-sqlite3'
import { daysBefore, type LookUpMark, lookUpDays } from '@/lib/records/lookUps'
import type { Log } from '../log/openLog'

/**
 * Counts look-ups. A mark that is there already counts nothing, so a device may send again whatever it got no answer
 * to. Passed over are positions that are not in the log, and days that are too old to be counted or after tomorrow:
 * a clock may be wrong, and a device ahead of the server's day by its time zone is not. What has grown old goes.
 *
 * @returns how many were not there before
 */
export function noteLookUps(
  database: Database,
  log: Pick<Log, 'lookup'>,
  sent: readonly LookUpMark[],
  now: Date,
): number {
  const today = now.toISOString().slice(0, 10)
  const since = daysBefore(today, lookUpDays)
  const tomorrow = daysBefore(today, -1)
  const isPosition = new Map<string, boolean>()
  const counts = ({ positionId, day }: LookUpMark): boolean => {
    if (day < since || day > tomorrow) return false
    if (!isPosition.has(positionId)) isPosition.set(positionId, log.lookup(positionId)?.kind === 'position')
    return isPosition.get(positionId)!
  }
  const counted = sent.filter(counts)
  return database
    .transaction(() => {
      database.prepare('DELETE FROM "LookUp" WHERE "day" < ?').run(since)
      const insert = database.prepare(
        'INSERT INTO "LookUp" ("mark", "positionId", "day") VALUES (?, ?, ?) ON CONFLICT DO NOTHING',
      )
      return counted.reduce(
        (fresh, { mark, positionId, day }) => fresh + insert.run(mark, positionId, day).changes,
        0,
      )
    })
    .immediate()
}
