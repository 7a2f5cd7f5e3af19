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
      const isTold = saidToBeLost(database).some(
        (lost) => lost.endingId === ending.id && lost.sha256 === sha256,
      )
      if (isTold || isHere(database)(sha256)) return
      const detail = { ending: ending.id, picture: sha256 }
      writeEvent(database, { kind: 'picture lost', personId: ending.personId, detail }, now)
    })
    .immediate()
}

type LostPicture = { endingId: string; sha256: string }

/** Every picture that was lost with a device, but those that came from elsewhere since: another device had a copy. */
export function lostPictures(database: Database): LostPicture[] {
  const isThere = isHere(database)
  return saidToBeLost(database).filter(({ sha256 }) => !isThere(sha256))
}

const saidToBeLost = (database: Database): LostPicture[] =>
  database
    .prepare<[], LostPicture>(
      `SELECT json_extract("detail", '$.ending') AS "endingId", json_extract("detail", '$.picture') AS "sha256"
       FROM "PersonEvent" WHERE "kind" = 'picture lost'`,
    )
    .all()

function isHere(database: Database): (sha256: string) => boolean {
  const setAside = database.prepare('SELECT 1 FROM "SetAsidePicture" WHERE "sha256" = ?')
  return (sha256) => heldPicture(database, sha256) !== undefined || setAside.get(sha256) !== undefined
}
