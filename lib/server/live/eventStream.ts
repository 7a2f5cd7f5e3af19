import { theLog } from '../database'
import { refuse } from '../http/answers'
import { type Person, personOf } from '../people/session'
import type { Listener } from './listeners'
import { keepListening, theListeners } from './live'

/** How long a browser waits before it comes back after a break, in milliseconds. */
const comeBackMs = 3_000

/**
 * An endless answer (text/event-stream, WHATWG HTML “Server-sent events”) that says “something new, up to number N”
 * and nothing of what it is: the data comes from the log's one way out, under the permission of that moment. It ends
 * with the session.
 * @param after the newest number that the screen has examined
 */
export function eventStream(request: Request, person: Person, after: number): Response {
  const listeners = theListeners()
  const bytes = new TextEncoder()
  let controller: ReadableStreamDefaultController<Uint8Array> | undefined
  const write = (text: string): void => controller?.enqueue(bytes.encode(text))
  const listener: Listener = {
    personId: person.id,
    role: person.role,
    told: after,
    tell: (seq) => write(`id: ${seq}\nevent: news\ndata: ${seq}\n\n`),
    async check() {
      const now = await personOf(request)
      if (now?.id === person.id && now.role === person.role) write(': still here\n\n')
      else listener.end()
    },
    end() {
      listeners.remove(listener)
      controller?.close()
      controller = undefined
    },
  }
  if (!listeners.add(listener)) {
    return refuse(
      503,
      'too-many-listeners',
      'Too many screens are open at once. This one asks every half minute instead.',
    )
  }
  keepListening()
  request.signal.addEventListener('abort', () => listener.end())
  const stream = new ReadableStream<Uint8Array>({
    start(opened) {
      controller = opened
      write(`retry: ${comeBackMs}\n\n`)
      const newest = theLog().newestSeq(person.role)
      if (newest > listener.told) {
        listener.told = newest
        listener.tell(newest)
      }
    },
    cancel() {
      controller = undefined
      listener.end()
    },
  })
  return new Response(stream, {
    headers: {
      'content-type': 'text/event-stream; charset=utf-8',
      // Compressed, it would be held back until a block is full.
      'cache-control': 'no-store, no-transform',
      'x-accel-buffering': 'no',
    },
  })
}
