import { randomUUID } from 'node:crypto'
import { appendFileSync, closeSync, openSync, rmSync } from 'node:fs'
import path from 'node:path'
import { dataFolder } from '../database'

/**
 * Writes a body to a file of the data folder as it arrives, so that it is never in memory as a whole, works with the
 * file, and takes it away again.
 *
 * @param mostBytes what is let in; more than that gives 'too long' and the rest is not read
 */
export async function withSpooled<T>(
  request: Request,
  mostBytes: number,
  work: (file: string) => Promise<T>,
): Promise<T | 'too long'> {
  const file = path.join(dataFolder(), `incoming-${randomUUID()}`)
  const descriptor = openSync(file, 'wx', 0o600)
  try {
    let bytes = 0
    const reader = request.body?.getReader()
    for (let read = await reader?.read(); read !== undefined && !read.done; read = await reader?.read()) {
      bytes += read.value.byteLength
      if (bytes > mostBytes) {
        await reader?.cancel()
        return 'too long'
      }
      appendFileSync(descriptor, read.value)
    }
    return await work(file)
  } finally {
    closeSync(descriptor)
    rmSync(file)
  }
}
