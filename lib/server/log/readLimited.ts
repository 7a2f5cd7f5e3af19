/**
 * Reads a body as text, counting what arrives: a length that was announced is only a claim, and may be missing.
 *
 * @param mostBytes what is let in, in bytes
 * @returns the text; undefined as soon as more has come, and the rest is not read
 * @throws TypeError for bytes that are not UTF-8
 */
export async function readLimited(request: Request, mostBytes: number): Promise<string | undefined> {
  const bytes = await readLimitedBytes(request, mostBytes)
  return bytes && new TextDecoder('utf-8', { fatal: true }).decode(bytes)
}

/** The same for bytes as they are. */
export async function readLimitedBytes(request: Request, mostBytes: number): Promise<Buffer | undefined> {
  const parts: Uint8Array[] = []
  let bytes = 0
  const reader = request.body?.getReader()
  if (reader === undefined) return Buffer.alloc(0)
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    bytes += read.value.byteLength
    if (bytes > mostBytes) {
      await reader.cancel()
      return undefined
    }
    parts.push(read.value)
  }
  return Buffer.concat(parts)
}
