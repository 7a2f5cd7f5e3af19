import { mostPictureBytes } from '@/lib/records/kinds/photo'

const MiB = 1024 * 1024

/** The most that one batch of records may weigh, in bytes: at the door, and in the route that counts what arrives. */
export const mostBatchBytes = 5 * MiB

/** The most that a whole exported log may weigh, in bytes: a million entries fit. It is written to the disk as it comes. */
export const mostLogBytes = 1024 * MiB

/** Says a limit to whoever sent too much. It is given in bytes, a whole number of MiB. */
export const tooLong = (mostBytes: number): string =>
  `This is too long: at most ${mostBytes / MiB} MiB can be sent here at once.`

/** The longest body that a write to the API may have, by the start of its path. The first that fits counts. */
const limits: [path: string, bytes: number][] = [
  ['/api/photos', mostPictureBytes],
  ['/api/import/log', mostLogBytes],
  ['/api/records', mostBatchBytes],
  ['/api/hand-over/pictures', mostPictureBytes],
  ['/api/hand-over', mostBatchBytes],
  ['/', MiB],
]

/** A request as far as its body's length is concerned. */
type Sent = {
  method: string
  path: string
  contentLength: string | undefined
  transferEncoding: string | undefined
}

/**
 * Judges a request by the length it announces, before any of it is read. Node reads no further than was announced,
 * and a browser always announces it (RFC 9110, 8.6).
 *
 * @returns the refusal, or undefined when it may go on
 */
export function refuseBody({ method, path, contentLength, transferEncoding }: Sent) {
  if (method === 'GET' || method === 'HEAD') return undefined
  if (transferEncoding !== undefined) {
    return {
      status: 411,
      code: 'length-required',
      message: 'Send this with its length (a Content-Length header).',
    }
  }
  const most = limits.find(([start]) => path.startsWith(start))![1]
  if (Number(contentLength ?? 0) <= most) return undefined
  return { status: 413, code: 'too-long', message: tooLong(most) }
}
