import { createHash, randomUUID } from 'node:crypto'
import { constants } from 'node:fs'
import { mkdir, open, readdir, readFile, rename, rm } from 'node:fs/promises'
import path from 'node:path'

/**
 * Where the files of pictures are, all of it: in the data folder, outside of anything that is served, each under the
 * SHA-256 of the bytes that were sent. A name is made of a hash only, never of what a client wrote.
 */

/** The folder of pictures, in a data folder and in a back-up. */
export const pictureFolder = (dataFolder: string): string => path.join(dataFolder, 'photos')

/** Half-written files: on the same disk, and in no back-up. */
const draftFolder = (dataFolder: string): string => path.join(dataFolder, 'photos.unfinished')

/** @throws RangeError for anything but a hash */
export function pictureFile(dataFolder: string, sha256: string): string {
  if (!isHash(sha256)) throw new RangeError('pictureFile requires a SHA-256 in hexadecimal')
  return path.join(pictureFolder(dataFolder), sha256.slice(0, 2), sha256)
}

const isHash = (text: string): boolean => /^[0-9a-f]{64}$/.test(text)

export const sha256Of = (bytes: Buffer): string => createHash('sha256').update(bytes).digest('hex')

/**
 * Writes a picture so that its file is there whole or not at all, also when the machine stops in the middle: beside,
 * flushed, then renamed.
 */
export async function writePictureFile(dataFolder: string, sha256: string, bytes: Buffer): Promise<void> {
  const file = pictureFile(dataFolder, sha256)
  const draft = path.join(draftFolder(dataFolder), randomUUID())
  await mkdir(path.dirname(draft), { recursive: true, mode: 0o700 })
  await mkdir(path.dirname(file), { recursive: true, mode: 0o700 })
  try {
    const handle = await open(draft, 'wx', 0o600)
    try {
      await handle.writeFile(bytes)
      await handle.sync()
    } finally {
      await handle.close()
    }
    await rename(draft, file)
  } catch (cause) {
    await rm(draft, { force: true })
    throw cause
  }
  await syncFolder(path.dirname(file))
}

/** @returns undefined when there is no such file */
export async function readPictureFile(dataFolder: string, sha256: string): Promise<Buffer | undefined> {
  try {
    return await readFile(pictureFile(dataFolder, sha256))
  } catch (cause) {
    if (isMissing(cause)) return undefined
    throw cause
  }
}

export async function removePictureFile(dataFolder: string, sha256: string): Promise<void> {
  const file = pictureFile(dataFolder, sha256)
  await rm(file, { force: true })
  await syncFolder(path.dirname(file))
}

/** The hashes of the pictures whose files are there. */
export async function listPictureFiles(dataFolder: string): Promise<string[]> {
  try {
    const entries = await readdir(pictureFolder(dataFolder), { recursive: true, withFileTypes: true })
    return entries.filter((entry) => entry.isFile() && isHash(entry.name)).map(({ name }) => name)
  } catch (cause) {
    if (isMissing(cause)) return []
    throw cause
  }
}

/** What a stop in the middle left half-written. */
export const removeUnfinished = (dataFolder: string): Promise<void> =>
  rm(draftFolder(dataFolder), { recursive: true, force: true })

/** A rename outlives a power failure only once the folder is written too. */
async function syncFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, constants.O_RDONLY)
    try {
      await handle.sync()
    } finally {
      await handle.close()
    }
  } catch (cause) {
    if (!isMissing(cause)) throw cause
  }
}

const isMissing = (cause: unknown): boolean =>
  cause instanceof Error && 'code' in cause && cause.code === 'ENOENT'
