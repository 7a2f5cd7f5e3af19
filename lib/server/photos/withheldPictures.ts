import type { Answer } from '@/lib/records/answer'
import { thePicture } from '@/lib/records/withholdable'
import { theLog } from '../database'
import { store } from '../people/store'
import { removePictureFile } from './pictureFiles'
import { noteGone } from './pictureTable'

/**
 * Takes the pictures off the disk that the records just stored withhold. A stop before that is made good at the next
 * start; nobody sees them meanwhile, because the log is asked each time.
 */
export async function dropWithheldPictures(answers: readonly Answer[]): Promise<void> {
  const log = theLog()
  for (const { id, outcome } of answers) {
    const record = outcome === 'stored' ? log.lookup(id) : undefined
    const { record: photoId, fields } = (record?.body ?? {}) as { record?: string; fields?: string[] }
    if (record?.kind !== 'withholding' || fields?.includes(thePicture) !== true) continue
    await dropPicture(String(log.lookup(String(photoId))?.body.sha256))
  }
}

/** The note first: no device is told that it is held while its file goes. */
export async function dropPicture(sha256: string): Promise<void> {
  const { database, dataFolder } = store()
  noteGone(database, sha256)
  await removePictureFile(dataFolder, sha256)
}
