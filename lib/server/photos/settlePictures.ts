import sharp from 'sharp'
import { type PictureType, pictureTypes } from '@/lib/records/kinds/photo'
import { theLog } from '../database'
import { store } from '../people/store'
import { listPictureFiles, pictureFile, readPictureFile, removeUnfinished, sha256Of } from './pictureFiles'
import { heldPictures, noteGone, noteHeld } from './pictureTable'
import { dropPicture } from './withheldPictures'

/**
 * Brings table and files together, as a stop in the middle or a restored back-up left them. What was withheld goes;
 * a file that the table does not know is noted; where the file is gone, the table says so, and a device that still has
 * the picture sends it again. A file that the log does not name stays where it is, shown to nobody: its log may be
 * taken in later. So does one that can't be read, and its name is said: no single file keeps the server from starting.
 */
export async function settlePictures(now: Date): Promise<void> {
  const { database, dataFolder } = store()
  await removeUnfinished(dataFolder)
  const files = new Set(await listPictureFiles(dataFolder))
  const noted = new Set(heldPictures(database))
  for (const sha256 of new Set([...files, ...noted])) {
    const named = theLog().pictureNamed(sha256)
    if (named === 'withheld') await dropPicture(sha256)
    else if (named === 'not named' || !files.has(sha256)) noteGone(database, sha256)
    else if (!noted.has(sha256)) await noteFile(sha256, now).catch((cause) => sayUnreadable(sha256, cause))
  }
}

const sayUnreadable = (sha256: string, cause: unknown): void =>
  console.warn(
    `The photo file ${pictureFile(store().dataFolder, sha256)} can’t be read and is shown to nobody until a device sends its picture again:`,
    cause,
  )

async function noteFile(sha256: string, now: Date): Promise<void> {
  const { database, dataFolder } = store()
  const bytes = await readPictureFile(dataFolder, sha256)
  if (bytes === undefined) return
  const { format, width, height } = await sharp(bytes).metadata()
  const mediaType = pictureTypes.find((each: PictureType) => each === `image/${format}`)
  if (mediaType === undefined) return dropPicture(sha256)
  noteHeld(
    database,
    { sha256, storedSha256: sha256Of(bytes), mediaType, width, height, bytes: bytes.length },
    now,
  )
}
