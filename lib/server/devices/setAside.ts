import type { Database } from 'better-sqlite3'
import { z } from 'zod'
import type { Answer } from '@/lib/records/answer'
import type { RecordEnvelope, Role } from '@/lib/records/envelope'
import { canonicalBytes } from '../log/canonical'
import type { Log } from '../log/openLog'
import { writeEvent } from '../people/events'
import { asStored } from '../people/moment'
import type { OpenEnding } from './endings'
import { lostPictures } from './lostPictures'

/** What a device hands over at a time: the moment of sending by its own clock, and records in their order. */
export const handedOver = z.object({
  sentAt: z.iso.datetime({ offset: true }),
  records: z
    .array(z.looseObject({ id: z.string().min(1).max(64) }))
    .min(1, 'Hand over at least one record.')
    .max(1000, 'Hand over at most 1000 records at a time.'),
})

/** A record that waits for a manager, or that one has refused. Moments are ISO 8601. */
export type SetAside = {
  record: RecordEnvelope
  personId: string
  device: string
  /** When the device handed it over. */
  receivedAt: string
  clockShiftMs: number
  refused?: { by: string; at: string; reason: string }
  /** It is a photo whose picture could not be handed over, because the device's own bytes of it were damaged. */
  pictureLost?: true
}

/**
 * Keeps records apart that a device hands over whose session was ended. Handing over the same again changes nothing, so
 * a device may let go of what is answered and begin again after any break. What is in the log already, because only
 * the answer to it was lost, is not set aside.
 *
 * @returns the ids of everything that the device may let go of
 */
export function setAside(
  database: Database,
  log: Pick<Log, 'lookup'>,
  ending: OpenEnding,
  { sentAt, records }: z.infer<typeof handedOver>,
  now: Date,
): string[] {
  const clockShiftMs = now.getTime() - Date.parse(sentAt)
  database
    .transaction(() => {
      const lastPlace = database
        .prepare<[string], number>(
          'SELECT coalesce(max("place"), 0) FROM "SetAsideRecord" WHERE "endingId" = ?',
        )
        .pluck()
      const insert = database.prepare(
        `INSERT INTO "SetAsideRecord" ("endingId", "recordId", "place", "bytes", "clockShiftMs", "receivedAt")
         VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT DO NOTHING`,
      )
      let place = lastPlace.get(ending.id) ?? 0
      for (const record of records) {
        if (isInTheLog(log, record)) continue
        place += 1
        insert.run(ending.id, record.id, place, JSON.stringify(record), clockShiftMs, asStored(now))
      }
    })
    .immediate()
  return records.map(({ id }) => id)
}

function isInTheLog(log: Pick<Log, 'lookup'>, record: { id: string }): boolean {
  const stored = log.lookup(record.id)
  if (stored === undefined) return false
  const { seq, receivedAt, clockShiftMs, withheld, ...said } = stored
  const [there, here] = [canonicalBytes(said), canonicalBytes(record)]
  return withheld !== undefined || (there.ok && here.ok && there.value === here.value)
}

type Row = {
  endingId: string
  recordId: string
  bytes: string
  clockShiftMs: number
  receivedAt: string
  personId: string
  role: Role
  device: string
  decision: string | null
  decidedAt: string | null
  decidedBy: string | null
  reason: string | null
}

const notInTheLog = `SELECT "r".*, "e"."personId", "e"."device", "p"."role"
  FROM "SetAsideRecord" AS "r" JOIN "DeviceEnding" AS "e" ON "e"."id" = "r"."endingId"
  JOIN "Person" AS "p" ON "p"."id" = "e"."personId"
  WHERE "r"."bytes" IS NOT NULL`

/** Everything that waits for a manager or was refused by one, in the order in which it was said and handed over. */
export function listSetAside(database: Database): SetAside[] {
  const lost = new Set(lostPictures(database).map(({ endingId, sha256 }) => `${endingId} ${sha256}`))
  return database
    .prepare<[], Row>(`${notInTheLog} ORDER BY "e"."endedAt", "e"."id", "r"."place"`)
    .all()
    .map((row) => {
      const record = JSON.parse(row.bytes) as RecordEnvelope
      return {
        record,
        personId: row.personId,
        device: row.device,
        receivedAt: row.receivedAt,
        clockShiftMs: row.clockShiftMs,
        ...(row.decision === 'refused' && {
          refused: { by: row.decidedBy ?? '', at: row.decidedAt ?? '', reason: row.reason ?? '' },
        }),
        ...(lost.has(`${row.endingId} ${record.body?.sha256}`) && { pictureLost: true as const }),
      }
    })
}

/**
 * Admits records to the log, each through the one door, as its author's and with its times: the rules judge them as
 * they would have on the day. What the door does not take stays set aside, and the answer says why. What a manager
 * refused can be admitted later all the same.
 *
 * Broken off between the log and the mark here, it can be done again: the log knows the records by their ids.
 */
export async function admit(
  database: Database,
  log: Pick<Log, 'appendRecords'>,
  ids: readonly string[],
  by: string,
  now: () => Date,
): Promise<Answer[]> {
  const answers: Answer[] = []
  for (const rows of groups(rowsOf(database, ids))) {
    const [{ personId, role, clockShiftMs }] = rows
    // As if the device had sent them now, with its clock as far off as it was.
    const sentAt = new Date(now().getTime() - clockShiftMs).toISOString()
    const records = rows.map(({ bytes }) => JSON.parse(bytes) as unknown)
    const given = await log.appendRecords({ sentAt, records }, { id: personId, role })
    const taken = rows.filter(
      (_, at) => given[at]?.outcome === 'stored' || given[at]?.outcome === 'already stored',
    )
    mark(database, taken, { decision: 'admitted', by, at: now() })
    answers.push(...given)
  }
  return answers
}

/** Keeps records out of the log, with the reason. They stay readable for managers. */
export function refuseSetAside(
  database: Database,
  ids: readonly string[],
  by: string,
  reason: string,
  now: Date,
) {
  mark(database, rowsOf(database, ids), { decision: 'refused', by, at: now, reason })
}

const rowsOf = (database: Database, ids: readonly string[]): Row[] =>
  database
    .prepare<[string], Row>(
      `${notInTheLog} AND "r"."recordId" IN (SELECT "value" FROM json_each(?))
       ORDER BY "e"."endedAt", "e"."id", "r"."place"`,
    )
    .all(JSON.stringify(ids))

/** Neighbours that can go in one batch: of one person, from a clock that was equally far off. */
function groups(rows: readonly Row[]): [Row, ...Row[]][] {
  const all: [Row, ...Row[]][] = []
  for (const row of rows) {
    const last = all.at(-1)
    const fits =
      last !== undefined && last[0].personId === row.personId && last[0].clockShiftMs === row.clockShiftMs
    if (fits && last.length < 500) last.push(row)
    else all.push([row])
  }
  return all
}

type Mark = { decision: 'admitted' | 'refused'; by: string; at: Date; reason?: string }

function mark(database: Database, rows: readonly Row[], { decision, by, at, reason }: Mark): void {
  if (rows.length === 0) return
  const update = database.prepare(
    `UPDATE "SetAsideRecord" SET "decision" = ?, "decidedAt" = ?, "decidedBy" = ?, "reason" = ?,
       "bytes" = CASE WHEN ? = 'admitted' THEN NULL ELSE "bytes" END
     WHERE "endingId" = ? AND "recordId" = ?`,
  )
  database
    .transaction(() => {
      for (const { endingId, recordId } of rows)
        update.run(decision, asStored(at), by, reason ?? null, decision, endingId, recordId)
      const kind = decision === 'admitted' ? 'records admitted' : 'records refused'
      for (const personId of new Set(rows.map((row) => row.personId))) {
        const records = String(rows.filter((row) => row.personId === personId).length)
        writeEvent(database, { kind, personId, byId: by, detail: { records } }, at)
      }
    })
    .immediate()
}
