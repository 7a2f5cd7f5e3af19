/**
 * A team's server that starts in a moment, so that it can be killed again and again: the server's own door, the routes
 * that a device asks, and a data folder. Only the pages it fetches from a server that stands. Arguments: the folder,
 * whose database was migrated; the port; the address of that other server. It says `ready` and waits for a line; then it
 * says `open` once it listens, `batch` when a page's batch has arrived, and `judged` when its answer sets out.
 */
import { once } from 'node:events'
import { writeSync } from 'node:fs'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { Readable } from 'node:stream'
import { buffer } from 'node:stream/consumers'
import { pipeline } from 'node:stream/promises'
import type { ReadableStream as WebStream } from 'node:stream/web'
import { setTimeout as sleep } from 'node:timers/promises'
import { GET as me } from '@/app/api/auth/me/route'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { GET as changes } from '@/app/api/changes/route'
import { GET as events } from '@/app/api/events/route'
import { GET as people } from '@/app/api/people/route'
import { POST as records } from '@/app/api/records/route'
import { door } from '@/lib/server/http/door'
import { listen } from '@/lib/server/http/listen'
import { createPerson } from '@/lib/server/people/createPerson'
import { listPeople } from '@/lib/server/people/list'
import { store } from '@/lib/server/people/store'
import { demoPeople } from '@/seed-demo/people'

const [folder = '', port = '', pages = ''] = process.argv.slice(2)
/** How long a batch's answer is on its way over a weak signal, in milliseconds: until then it can be lost. */
const signalMs = 60
const say = (line: string) => writeSync(1, `${line}\n`)

const routes: Readonly<Record<string, (request: Request) => Promise<Response>>> = {
  'GET /api/auth/me': me,
  'POST /api/auth/sign-in': signIn,
  'GET /api/people': people,
  'GET /api/changes': changes,
  'GET /api/events': events,
  'POST /api/records': async (request) => {
    // The worker sends in the background as well; it is the page's sending that is waited for.
    if (request.headers.get('referer')?.endsWith('/sw.js')) return records(request)
    say('batch')
    const answered = await records(request)
    say('judged')
    await sleep(signalMs)
    return answered
  },
}

async function requestOf(incoming: IncomingMessage, gone: AbortSignal): Promise<Request> {
  const { method = 'GET', url = '/' } = incoming
  const body = method === 'GET' ? null : new Uint8Array(await buffer(incoming))
  const headers = Object.entries(incoming.headers).map(([name, value]): [string, string] => [
    name,
    String(value),
  ])
  return new Request(`http://${incoming.headers.host}${url}`, { method, headers, body, signal: gone })
}

/** A page or a file of one, as the other server has it. */
async function page({ url = '/', headers }: IncomingMessage): Promise<Response> {
  const {
    status,
    headers: sent,
    body,
  } = await fetch(`${pages}${url}`, {
    headers: { accept: headers.accept ?? '*/*' },
    redirect: 'manual',
  })
  const kept = new Headers(sent)
  // It has been unpacked on the way.
  for (const name of ['content-encoding', 'content-length', 'transfer-encoding', 'connection', 'keep-alive'])
    kept.delete(name)
  return new Response(body, { status, headers: kept })
}

async function handle(incoming: IncomingMessage, outgoing: ServerResponse): Promise<void> {
  const gone = new AbortController()
  outgoing.once('close', () => gone.abort())
  const path = (incoming.url ?? '/').split('?')[0]!
  const route = routes[`${incoming.method} ${path}`]
  const answered = route
    ? await route(await requestOf(incoming, gone.signal))
    : path.startsWith('/api/')
      ? new Response(null, { status: 404 })
      : await page(incoming)
  outgoing.statusCode = answered.status
  for (const [name, value] of answered.headers) if (name !== 'set-cookie') outgoing.setHeader(name, value)
  const cookies = answered.headers.getSetCookie()
  if (cookies.length > 0) outgoing.setHeader('set-cookie', cookies)
  if (answered.body === null) outgoing.end()
  else await pipeline(Readable.fromWeb(answered.body as WebStream), outgoing).catch(unlessBrokenOff)
}

/** Whoever closes a page breaks off what was being sent to it. */
function unlessBrokenOff(cause: NodeJS.ErrnoException): void {
  if (cause.code !== 'ERR_STREAM_PREMATURE_CLOSE') throw cause
}

process.env.INCHWATER_DATA = folder
if (listPeople(store().database).length === 0) await createPerson(demoPeople.ott)
// The client compiles itself at its first question, which takes longer than all the rest.
await store().prisma.session.count()
say('ready')
await once(process.stdin, 'data')
await listen({ kind: 'this machine only' }, Number(port), door({ kind: 'this machine only' }, false, handle))
say('open')
