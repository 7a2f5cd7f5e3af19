import { createHash } from 'node:crypto'
import { createReadStream } from 'node:fs'
import { type FileHandle, mkdir, open } from 'node:fs/promises'
import path from 'node:path'

/** How long a file is, in bytes, and its SHA-256 (FIPS 180-4) in lower-case hexadecimal. */
export type Hashed = { bytes: number; sha256: string }

/** Reads a file once, piece by piece, so that it may be larger than memory. */
export const hashFile = (file: string): Promise<Hashed> => readThrough(file, async () => {})

/**
 * Copies a file, for this account alone, and answers the hash of what was written. It is on the disk, and not only on
 * its way there, when this returns.
 */
export async function hashedCopy(from: string, to: string): Promise<Hashed> {
  await mkdir(path.dirname(to), { recursive: true, mode: 0o700 })
  const target = await open(to, 'wx', 0o600)
  try {
    const hashed = await readThrough(from, (piece) => writeAll(target, piece))
    await target.sync()
    return hashed
  } finally {
    await target.close()
  }
}

/** Has a folder's list of names written to the disk; where a system knows no such thing, its names are written anyway. */
export async function syncFolder(folder: string): Promise<void> {
  if (process.platform === 'win32') return
  const handle = await open(folder, 'r')
  try {
    await handle.sync()
  } finally {
    await handle.close()
  }
}

async function readThrough(file: string, use: (piece: Buffer) => Promise<void>): Promise<Hashed> {
  const sum = createHash('sha256')
  let bytes = 0
  for await (const piece of createReadStream(file, { highWaterMark: 1 << 20 }) as AsyncIterable<Buffer>) {
    sum.update(piece)
    bytes += piece.length
    await use(piece)
  }
  return { bytes, sha256: sum.digest('hex') }
}

async function writeAll(target: FileHandle, piece: Buffer): Promise<void> {
  for (let written = 0; written < piece.length; ) {
    written += (await target.write(piece, written)).bytesWritten
  }
}
