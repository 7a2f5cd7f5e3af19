import { SqliteError } from 'better-sqlite3'
import { failure, success } from '@/lib/core/result'
import { joinVerification } from '@/lib/server/log/sharedVerification'
import { requireRole } from '@/lib/server/people/session'

/**
 * Walks the log's chain from the first entry, for anybody of the team: a line of JSON for each step, `{ done, of }`, and
 * at the end `{ ok: true, value: { entries, headHash, withheld, trouble? } }`.
 */
export async function GET(request: Request): Promise<Response> {
  const person = await requireRole(request)
  if (person instanceof Response) return person
  const bytes = new TextEncoder()
  let leave = () => {}
  const stream = new ReadableStream<Uint8Array>({
    async start(controller) {
      const say = (line: unknown) => controller.enqueue(bytes.encode(`${JSON.stringify(line)}\n`))
      let gone = false
      const walk = joinVerification((done, of) => say({ done, of }))
      leave = () => {
        gone = true
        walk.leave()
      }
      const answer = await walk.result.then(success, unreadable)
      if (gone) return
      walk.leave()
      say(answer)
      controller.close()
    },
    cancel: () => leave(),
  })
  return new Response(stream, {
    headers: {
      'content-type': 'application/x-ndjson; charset=utf-8',
      // Compressed, it would be held back until a block is full.
      'cache-control': 'no-store, no-transform',
      'x-accel-buffering': 'no',
    },
  })
}

function unreadable(cause: unknown) {
  if (!(cause instanceof SqliteError)) throw cause
  return failure(
    'log-unreadable',
    `The log can't be read to its end (${cause.message}). Stop the server and restore the newest back-up that is whole.`,
  )
}
