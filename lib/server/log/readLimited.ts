/**
 * Reads a body as text, counting what arrives: a length that was announced is only a claim, and may be missing.
 *
 * @param mostBytes what is let in, in bytes
 * @returns the text; undefined as soon as more has come, and the rest is not read
 * @throws TypeError for bytes that are not UTF-8
 */
export async function readLimited(request: Request, mostBytes: number): Promise<string | undefined> {
  const decoder = new TextDecoder('utf-8', { fatal: true })
  let text = ''
  let bytes = 0
  const reader = request.body?.getReader()
  if (reader === undefined) return text
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    bytes += read.value.byteLength
    if (bytes > mostBytes) {
      await reader.cancel()
      return undefined
    }
    text += decoder.decode(read.value, { stream: true })
  }
  return text + decoder.decode()
}
