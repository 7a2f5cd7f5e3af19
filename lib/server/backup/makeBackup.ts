import { chmodSync, existsSync } from 'node:fs'
import { mkdir, rename, rm, writeFile } from 'node:fs/promises'
import path from 'node:path'
import Database from 'better-sqlite3'
import { failure, type Result, success } from '@/lib/core/result'
import { databaseFile } from '../database'
import { checkDatabase } from './checkDatabase'
import { checkPictures } from './checkPictures'
import { type Hashed, hashedCopy, hashFile, syncFolder } from './hashedCopy'
import { isMissing, type Manifest, manifestName, manifestSumName } from './manifest'
import { photoFiles } from './photoFiles'

export type Wanted = {
  dataFolder: string
  /** Where back-ups are kept; each gets a folder of its own in it. */
  into: string
  now: Date
  progress?: (done: number, of: number) => void
}

export type Made = {
  folder: string
  manifest: Manifest
  /** Pictures that are damaged, or not there, where the server keeps them: no copy can be better. */
  pictures: { damaged: string[]; missing: string[] }
}

/**
 * Copies a data folder while the server goes on writing in it: the database as it is at one moment, then the photos,
 * which are only ever added. The copy is checked like a restored one before it gets its name, so a folder without
 * `.unfinished` behind its name is a whole back-up.
 *
 * The secret that signs cookies stays where it is: a back-up in strange hands lets nobody in, and after a restore
 * everybody signs in anew.
 */
export async function makeBackup({ dataFolder, into, now, progress }: Wanted): Promise<Result<Made>> {
  const source = databaseFile(dataFolder)
  if (!existsSync(source)) {
    return failure('no-data', `There is no database at ${source}. INCHWATER_DATA names the data folder.`)
  }
  const folder = path.join(into, `inchwater-${now.toISOString().slice(0, 19).replaceAll(':', '')}Z`)
  const draft = `${folder}.unfinished`
  if (existsSync(folder)) {
    return failure('exists', `${folder} is there already. Wait a second, and make it again.`)
  }
  await rm(draft, { recursive: true, force: true })
  await mkdir(draft, { recursive: true, mode: 0o700 })
  const database = databaseFile(draft)
  await copyDatabase(source, database)
  const checked = await checkDatabase(database, progress)
  if (!checked.ok) return checked
  const photos = await copyPhotos(dataFolder, draft)
  const manifest: Manifest = {
    format: 'inchwater back-up',
    version: 1,
    madeAt: now.toISOString(),
    log: { entries: checked.value.entries, headHash: checked.value.headHash },
    people: checked.value.people,
    photos: photos.length,
    files: [{ path: path.basename(database), ...(await hashFile(database)) }, ...photos],
  }
  const pictures = checkPictures(database, photos)
  await writeManifest(draft, manifest)
  await rename(draft, folder)
  await syncFolder(into)
  return success({ folder, manifest, pictures })
}

/** More pages than a database can have (SQLite, "Limits In SQLite", 14). */
const allPages = 2 ** 31 - 1

/**
 * SQLite's online copy, the rest of it in one step: one step sees one moment, and writers go on meanwhile. Many small
 * steps would begin anew after each batch that somebody writes, and under load never end.
 */
async function copyDatabase(from: string, to: string): Promise<void> {
  const db = new Database(from, { readonly: true, fileMustExist: true })
  try {
    await db.backup(to, { progress: () => allPages })
  } finally {
    db.close()
  }
  chmodSync(to, 0o600)
  // One file, nothing beside it: what is hashed is all there is. The server turns this back when it opens it.
  const copy = new Database(to, { fileMustExist: true })
  try {
    copy.pragma('journal_mode = DELETE')
  } finally {
    copy.close()
  }
}

async function copyPhotos(dataFolder: string, draft: string): Promise<({ path: string } & Hashed)[]> {
  const copied: ({ path: string } & Hashed)[] = []
  for (const file of await photoFiles(dataFolder)) {
    try {
      copied.push({ path: file, ...(await hashedCopy(path.join(dataFolder, file), path.join(draft, file))) })
    } catch (cause) {
      // Withheld since the folder was listed: then it is not to be kept here either.
      if (!isMissing(cause) || existsSync(path.join(dataFolder, file))) throw cause
      await rm(path.join(draft, file), { force: true })
    }
  }
  return copied
}

async function writeManifest(folder: string, manifest: Manifest): Promise<void> {
  const file = path.join(folder, manifestName)
  await writeFile(file, `${JSON.stringify(manifest, undefined, 2)}\n`, { mode: 0o600, flush: true })
  const { sha256 } = await hashFile(file)
  await writeFile(path.join(folder, manifestSumName), `${sha256}  ${manifestName}\n`, {
    mode: 0o600,
    flush: true,
  })
  await syncFolder(folder)
}
