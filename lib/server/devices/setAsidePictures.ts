import type { Database } from 'better-sqlite3'
import { failure, type Result, success } from '@/lib/core/result'
import type { Log } from '../log/openLog'
import { asStored } from '../people/moment'
import { sha256Of } from '../photos/pictureFiles'
import { takePicture } from '../photos/takePicture'
import type { OpenEnding } from './endings'

/**
 * Takes the bytes of a picture from a device whose session was ended. Where a photo in the log names them, they can only
 * be what was meant then, and are kept like any other's; else they wait until that photo is admitted.
 *
 * @returns a problem for bytes that are no picture, or not those that were announced
 */
export async function setAsidePicture(
  database: Database,
  ending: OpenEnding,
  sha256: string,
  sent: Buffer,
  now: Date,
): Promise<Result<true>> {
  if (sha256Of(sent) !== sha256)
    return failure('other-bytes', 'What arrived is not what was announced. Send it again.')
  const taken = await takePicture(sha256, sent, now)
  if (taken.ok) return success<true>(true)
  if (taken.problem.code !== 'record-first') return taken
  database
    .prepare(
      `INSERT INTO "SetAsidePicture" ("endingId", "sha256", "bytes", "receivedAt") VALUES (?, ?, ?, ?)
       ON CONFLICT DO NOTHING`,
    )
    .run(ending.id, sha256, sent, asStored(now))
  return success<true>(true)
}

/** The bytes of a picture that is set aside, as they were sent. */
export const readSetAsidePicture = (database: Database, sha256: string): Buffer | undefined =>
  database
    .prepare<[string], Buffer>('SELECT "bytes" FROM "SetAsidePicture" WHERE "sha256" = ? LIMIT 1')
    .pluck()
    .get(sha256)

/**
 * Keeps the pictures whose photo is in the log by now, and forgets those that are none. Broken off, it is done at the
 * next admission; what is still to come stays, and what the server had no time or room for.
 */
export async function takeSetAsidePictures(database: Database, now: Date): Promise<void> {
  const waiting = database
    .prepare<[], string>('SELECT DISTINCT "sha256" FROM "SetAsidePicture"')
    .pluck()
    .all()
  for (const sha256 of waiting) {
    const bytes = readSetAsidePicture(database, sha256)
    const taken = bytes && (await takePicture(sha256, bytes, now))
    if (taken !== undefined && !taken.ok && stillToCome.includes(taken.problem.code)) continue
    database.prepare('DELETE FROM "SetAsidePicture" WHERE "sha256" = ?').run(sha256)
  }
}

const stillToCome = ['record-first', 'try-again']

/**
 * Forgets the pictures of an ending that no record names, neither one that was handed over nor one in the log: they stood
 * in an unsaved form. What the log names is a photo's, admitted meanwhile perhaps, and stays until it can be kept.
 */
export function dropUnnamedPictures(
  database: Database,
  log: Pick<Log, 'pictureNamed'>,
  endingId: string,
): void {
  const unnamed = database
    .prepare<[string], string>(
      `SELECT "sha256" FROM "SetAsidePicture" WHERE "endingId" = ? AND "sha256" NOT IN (
         SELECT json_extract("bytes", '$.body.sha256') FROM "SetAsideRecord"
         WHERE "bytes" IS NOT NULL AND json_extract("bytes", '$.body.sha256') IS NOT NULL)`,
    )
    .pluck()
    .all(endingId)
    .filter((sha256) => log.pictureNamed(sha256) !== 'named')
  const drop = database.prepare('DELETE FROM "SetAsidePicture" WHERE "endingId" = ? AND "sha256" = ?')
  for (const sha256 of unnamed) drop.run(endingId, sha256)
}
