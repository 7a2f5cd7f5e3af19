import { randomUUID } from 'node:crypto'
import type { Database } from 'better-sqlite3'
import { failure, type Result, success } from '@/lib/core/result'
import { writeEvent } from '../people/events'
import { asStored } from '../people/moment'
import { lostPictures } from './lostPictures'

/** A person's session on a device that a manager has ended, and that the device has not done with yet. */
export type OpenEnding = { id: string; device: string; personId: string; sessionId: string | null }

export type ListedEnding = {
  device: string
  personId: string
  endedAt: string
  endedBy: string
  /** When the device said that everything is handed over and its file is gone. */
  emptiedAt: string | null
  /** How many pictures could not be handed over, because the device's own bytes of them were damaged. */
  picturesLost: number
}

type Which = { device: string; personId: string }

/**
 * Ends a person's session on a device. From now on the device may only hand over what waits there and empty itself,
 * whether by that session or by a new one of the same person. Ending it twice is ending it once.
 */
export function endDevice(database: Database, which: Which, by: string, now: Date): Result<true> {
  return database
    .transaction(() => {
      const known = database
        .prepare<[string, string], { sessionId: string | null }>(
          'SELECT "sessionId" FROM "Device" WHERE "id" = ? AND "personId" = ?',
        )
        .get(which.device, which.personId)
      if (known === undefined)
        return failure('no-such-device', 'No such device was ever in contact. Load the list again.')
      if (openEndingOn(database, which) !== undefined) return success<true>(true)
      insertEnding(database, { ...which, sessionId: known.sessionId }, by, now)
      writeEvent(database, { kind: 'device ended', personId: which.personId, byId: by }, now)
      return success<true>(true)
    })
    .immediate()
}

/** The same for every device on which a person is signed in, as part of a change that writes its own event. */
export function endDevicesOf(database: Database, personId: string, by: string, now: Date): void {
  const signedIn = database
    .prepare<[string], { device: string; sessionId: string }>(
      `SELECT "d"."id" AS "device", "d"."sessionId" FROM "Device" AS "d"
       JOIN "Session" AS "s" ON "s"."id" = "d"."sessionId" WHERE "d"."personId" = ?`,
    )
    .all(personId)
  for (const { device, sessionId } of signedIn) {
    if (openEndingOn(database, { device, personId }) === undefined)
      insertEnding(database, { device, personId, sessionId }, by, now)
  }
}

const openColumns = '"id", "device", "personId", "sessionId" FROM "DeviceEnding" WHERE "emptiedAt" IS NULL'

export const openEndingOfSession = (database: Database, sessionId: string): OpenEnding | undefined =>
  database.prepare<[string], OpenEnding>(`SELECT ${openColumns} AND "sessionId" = ?`).get(sessionId)

export const openEndingOn = (database: Database, { device, personId }: Which): OpenEnding | undefined =>
  database
    .prepare<[string, string], OpenEnding>(`SELECT ${openColumns} AND "device" = ? AND "personId" = ?`)
    .get(device, personId)

/** Whether somebody else's session on the device was ended, and the device has not done with it yet. */
export const hasOpenEndingOfOthers = (database: Database, { device, personId }: Which): boolean =>
  database
    .prepare('SELECT 1 FROM "DeviceEnding" WHERE "emptiedAt" IS NULL AND "device" = ? AND "personId" <> ?')
    .get(device, personId) !== undefined

/** The device has nothing left of that person's: its ended session goes, and a new one of the person's is as any. */
export function closeEnding(database: Database, ending: OpenEnding, now: Date): void {
  database
    .transaction(() => {
      const { changes } = database
        .prepare('UPDATE "DeviceEnding" SET "emptiedAt" = ? WHERE "id" = ? AND "emptiedAt" IS NULL')
        .run(asStored(now), ending.id)
      if (changes === 0) return
      database.prepare('DELETE FROM "Session" WHERE "id" = ?').run(ending.sessionId)
      database
        .prepare('UPDATE "Device" SET "waiting" = 0, "examinedSeq" = 0 WHERE "id" = ? AND "personId" = ?')
        .run(ending.device, ending.personId)
      writeEvent(database, { kind: 'device emptied', personId: ending.personId }, now)
    })
    .immediate()
}

/** The last ending of each device, by device and person. */
export function listEndings(database: Database): ListedEnding[] {
  const lost = lostPictures(database)
  return database
    .prepare<[], Omit<ListedEnding, 'picturesLost'> & { id: string }>(
      `SELECT "id", "device", "personId", max("endedAt") AS "endedAt", "endedBy", "emptiedAt"
       FROM "DeviceEnding" GROUP BY "device", "personId"`,
    )
    .all()
    .map(({ id, ...ending }) => ({
      ...ending,
      picturesLost: lost.filter(({ endingId }) => endingId === id).length,
    }))
}

const insertEnding = (
  database: Database,
  { device, personId, sessionId }: Which & { sessionId: string | null },
  by: string,
  now: Date,
) =>
  database
    .prepare(
      `INSERT INTO "DeviceEnding" ("id", "device", "personId", "sessionId", "endedAt", "endedBy")
       VALUES (?, ?, ?, ?, ?, ?)`,
    )
    .run(randomUUID(), device, personId, sessionId, asStored(now), by)
