import { readFile } from 'node:fs/promises'
import path from 'node:path'
import { z } from 'zod'
import { failure, type Result, success } from '@/lib/core/result'
import { whatDoesNotFit } from '../log/whatDoesNotFit'
import { hashFile } from './hashedCopy'

export const manifestName = 'manifest.json'
/** Holds the hash of the manifest, as sha256sum writes it: the manifest vouches for all other files, this for it. */
export const manifestSumName = 'manifest.sha256'

/** A file of a back-up, by its path inside it, with `/` on every system. It never leads out of the back-up. */
const keptPath = z
  .string()
  .max(500)
  .regex(/^[\w-][\w.-]*(?:\/[\w-][\w.-]*)*$/, 'A path in it leads out of the back-up.')

const sha256 = z.string().regex(/^[0-9a-f]{64}$/, 'A hash in it is none.')

export const manifest = z.strictObject({
  format: z.literal('inchwater back-up', 'It is no back-up of Inchwater.'),
  version: z.literal(1, 'It was written by a newer Inchwater. Restore it with that one.'),
  /** When it was begun, ISO 8601, UTC. */
  madeAt: z.iso.datetime(),
  /** The log in it: how many entries, and the hash that stands for all of them. */
  log: z.strictObject({ entries: z.int().min(0), headHash: sha256 }),
  people: z.int().min(0),
  photos: z.int().min(0),
  files: z.array(z.strictObject({ path: keptPath, bytes: z.int().min(0), sha256 })).min(1),
})

export type Manifest = z.infer<typeof manifest>

/** Reads the manifest of a back-up, after its own hash. What is wrong with it is a sentence that names the file. */
export async function readManifest(backup: string): Promise<Result<Manifest>> {
  const file = path.join(backup, manifestName)
  const sum = await readText(path.join(backup, manifestSumName))
  const text = await readText(file)
  if (sum === undefined || text === undefined) {
    const missing = text === undefined ? manifestName : manifestSumName
    return failure(
      'not-a-backup',
      `${backup} holds no ${missing}, so it is no whole back-up. Name its folder.`,
    )
  }
  const [, noted] = /^([0-9a-f]{64}) {2}manifest\.json\n$/.exec(sum) ?? []
  if (noted === undefined) return damaged(manifestSumName)
  if ((await hashFile(file)).sha256 !== noted) return damaged(`${manifestName} (or ${manifestSumName})`)
  const parsed = manifest.safeParse(readJson(text))
  return parsed.success
    ? success(parsed.data)
    : failure(
        'not-a-backup',
        `The ${manifestName} of ${backup} can't be used. ${whatDoesNotFit(parsed.error)}`,
      )
}

export const damaged = (file: string) =>
  failure('damaged', `${file} is damaged: it is not what was written. Use another back-up.`)

async function readText(file: string): Promise<string | undefined> {
  try {
    return await readFile(file, 'utf8')
  } catch (cause) {
    if (isMissing(cause)) return undefined
    throw cause
  }
}

/** The file, or the folder, is not there. */
export const isMissing = (cause: unknown): boolean =>
  cause instanceof Error && 'code' in cause && (cause.code === 'ENOENT' || cause.code === 'ENOTDIR')

function readJson(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch (cause) {
    if (cause instanceof SyntaxError) return undefined
    throw cause
  }
}
