import type { Database } from 'better-sqlite3'
import { writeEvent } from '../people/events'
import { heldPicture } from '../photos/pictureTable'
import type { OpenEnding } from './endings'

/**
 * Writes down that a picture is lost, because the bytes on the device that was ended are damaged. Saying it again writes
 * nothing; nor is one lost that the server has, set aside or not.
 */
export function noteLostPicture(database: Database, ending: OpenEnding, sha256: string, now: Date): void {
  database
    .transaction(() => {
      const isHere =
        heldPicture(database, sha256) !== undefined ||
        database.prepare('SELECT 1 FROM "SetAsidePicture" WHERE "sha256" = ?').get(sha256) !== undefined
      const isTold = lostPictures(database).some(
        (lost) => lost.endingId === ending.id && lost.sha256 === sha256,
      )
      if (isHere || isTold) return
      const detail = { ending: ending.id, picture: sha256 }
      writeEvent(database, { kind: 'picture lost', personId: ending.personId, detail }, now)
    })
    .immediate()
}

/** Every picture that was lost with a device. */
export const lostPictures = (database: Database): { endingId: string; sha256: string }[] =>
  database
    .prepare<[], { endingId: string; sha256: string }>(
      `SELECT json_extract("detail", '$.ending') AS "endingId", json_extract("detail", '$.picture') AS "sha256"
       FROM "PersonEvent" WHERE "kind" = 'picture lost'`,
    )
    .all()
