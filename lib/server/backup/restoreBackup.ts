import { existsSync } from 'node:fs'
import { mkdir, mkdtemp, readdir, rename, rm, rmdir } from 'node:fs/promises'
import path from 'node:path'
import { failure, type Result, success } from '@/lib/core/result'
import { databaseFile } from '../database'
import { checkDatabase } from './checkDatabase'
import { hashedCopy, syncFolder } from './hashedCopy'
import { isInUse } from './isInUse'
import { damaged, isMissing, type Manifest, readManifest } from './manifest'

export type RestoreWanted = {
  /** The folder of one back-up. */
  from: string
  /** The data folder that it becomes. */
  into: string
  /** Whether that folder was named on purpose, so that what is in it may be moved aside. */
  named: boolean
  now: Date
  progress?: (done: number, of: number) => void
}

export type Restored = {
  manifest: Manifest
  /** Where what was in the folder before is now. */
  movedTo?: string
}

/**
 * Puts a back-up into a data folder. Everything is checked on a copy beside that folder, file by file and entry by
 * entry, and only a whole copy takes its place, by being renamed: whenever this is broken off, the folder is as it was
 * or as it shall be. Nothing that was in it is deleted.
 */
export async function restoreBackup(wanted: RestoreWanted): Promise<Result<Restored>> {
  const into = path.resolve(wanted.into)
  const read = await readManifest(wanted.from)
  if (!read.ok) return read
  const taken = (await namesIn(into)).length > 0
  if (taken && !wanted.named) return notEmpty(into)
  if (isInUse(databaseFile(into))) return inUse(into)
  await mkdir(path.dirname(into), { recursive: true, mode: 0o700 })
  const draft = await mkdtemp(`${into}.restoring-`)
  const copied = await copyWhole(wanted, read.value, draft)
  if (!copied.ok) {
    await rm(draft, { recursive: true, force: true })
    return copied
  }
  if (isInUse(databaseFile(into))) {
    await rm(draft, { recursive: true, force: true })
    return inUse(into)
  }
  const movedTo = taken ? await moveAside(into, wanted.now) : undefined
  if (existsSync(into)) await rmdir(into)
  await rename(draft, into)
  await syncFolder(path.dirname(into))
  return success({ manifest: read.value, ...(movedTo === undefined ? {} : { movedTo }) })
}

async function copyWhole(
  { from, progress }: RestoreWanted,
  { files, log, people }: Manifest,
  draft: string,
): Promise<Result<true>> {
  for (const { path: file, bytes, sha256 } of files) {
    try {
      const copied = await hashedCopy(path.join(from, file), path.join(draft, file))
      if (copied.bytes !== bytes || copied.sha256 !== sha256) return damaged(file)
    } catch (cause) {
      if (!isMissing(cause)) throw cause
      return failure('missing', `${file} is missing from the back-up. Use another back-up.`)
    }
  }
  const database = databaseFile(draft)
  if (!existsSync(database)) {
    return failure('not-a-backup', 'The back-up names no database. Use another back-up.')
  }
  const checked = await checkDatabase(database, progress)
  if (!checked.ok) return checked
  const { value } = checked
  if (value.entries !== log.entries || value.headHash !== log.headHash || value.people !== people) {
    return failure('other-log', 'The database in it is another than its manifest says. Use another back-up.')
  }
  return success(true)
}

async function moveAside(folder: string, now: Date): Promise<string> {
  const aside = `${folder}.before-restore-${now.toISOString().slice(0, 19).replaceAll(':', '')}Z`
  await rename(folder, aside)
  return aside
}

async function namesIn(folder: string): Promise<string[]> {
  try {
    return await readdir(folder)
  } catch (cause) {
    if (isMissing(cause)) return []
    throw cause
  }
}

const notEmpty = (folder: string) =>
  failure(
    'not-empty',
    `${folder} is not empty, so nothing was changed. To put the back-up in its place, name it: --into "${folder}". What is in it is moved aside then, and not deleted.`,
  )

const inUse = (folder: string) =>
  failure('in-use', `A server, or another program, works in ${folder}. Nothing was changed. Stop it first.`)
