import { failure, type Result, success } from '@/lib/core/result'
import { theLog } from '../database'
import { store } from '../people/store'
import { drawAnew } from './drawAnew'
import { removePictureFile, sha256Of, writePictureFile } from './pictureFiles'
import { type HeldPicture, heldPicture, noteHeld } from './pictureTable'

/**
 * Takes in the bytes of a picture that a photo in the log names. Sending them again changes nothing. The file is there
 * and on the disk before the table says so: a stop in between leaves a file, which the next start notes.
 *
 * @returns what is held, or why not: 'other-bytes', 'record-first', 'withheld', or what drawAnew finds
 */
export async function takePicture(sha256: string, sent: Buffer, now: Date): Promise<Result<HeldPicture>> {
  if (sha256Of(sent) !== sha256) {
    return failure(
      'other-bytes',
      'What arrived is not what was announced: it was damaged on the way. Send it again.',
    )
  }
  const { database, dataFolder } = store()
  const known = whatIsKnown(sha256)
  if (known !== undefined) return known
  const drawn = await oneAtATime(() => drawAnew(sent))
  if (!drawn.ok) return drawn
  const { bytes, mediaType, width, height } = drawn.value
  await writePictureFile(dataFolder, sha256, bytes)
  // Withheld while it was worked on: nothing happens between this look and the note, so it is never noted after.
  const since = whatIsKnown(sha256)
  if (since !== undefined) {
    if (!since.ok) await removePictureFile(dataFolder, sha256)
    return since
  }
  const held = { sha256, storedSha256: sha256Of(bytes), mediaType, width, height, bytes: bytes.length }
  noteHeld(database, held, now)
  return success(held)
}

function whatIsKnown(sha256: string): Result<HeldPicture> | undefined {
  const named = theLog().pictureNamed(sha256)
  if (named === 'withheld') {
    return failure(
      'withheld',
      'A manager has withheld this picture. Its record stays, and it is not kept again.',
    )
  }
  if (named === 'not named') {
    return failure('record-first', 'No photo in the log names this picture yet. Its record is sent first.')
  }
  const held = heldPicture(store().database, sha256)
  return held && success(held)
}

let last: Promise<unknown> = Promise.resolve()

/** Decoding takes a core and much memory: pictures queue for it. */
function oneAtATime<T>(work: () => Promise<T>): Promise<T> {
  const mine = last.then(work, work)
  last = mine.catch(() => undefined)
  return mine
}
