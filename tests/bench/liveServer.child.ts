import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { GET as events } from '@/app/api/events/route'
import { POST as records } from '@/app/api/records/route'
import { databaseFile, dataFolder } from '@/lib/server/database'
import { addressHeader } from '@/lib/server/http/address'
import { createPerson } from '@/lib/server/people/createPerson'
import { migrate } from '@/prisma/migrate'

/**
 * A server of our routes for news and records alone, beside an endless answer that knows nobody, so that memory and
 * delay can be told from those of a connection as such. It speaks with the benchmark that started it.
 */
const [people = '1'] = process.argv.slice(2)
const password = 'three plain words'
const origin = 'http://localhost'

migrate(databaseFile(dataFolder()))
const callers: { id: string; cookie: string }[] = []
for (let count = 0; count < Number(people); count += 1) {
  const name = `Listener ${count}`
  const added = await createPerson({ name, role: 'technician', password })
  if (!added.ok) throw new Error(added.problem.message)
  const signedIn = await signIn(
    new Request(`${origin}/api/auth/sign-in`, {
      method: 'POST',
      headers: { [addressHeader]: `192.0.2.${count + 1}`, origin, 'content-type': 'application/json' },
      body: JSON.stringify({ name, password }),
    }),
  )
  if (signedIn.status !== 200) throw new Error(`${name} could not sign in: ${await signedIn.text()}`)
  const cookie = signedIn.headers
    .getSetCookie()
    .map((each) => each.split(';')[0])
    .join('; ')
  callers.push({ id: added.value.id, cookie })
}

const server = createServer(async (incoming, response) => {
  if (incoming.url === '/bare') {
    response.writeHead(200, { 'content-type': 'text/event-stream' })
    response.write('retry: 3000\n\n')
    return
  }
  const gone = new AbortController()
  response.on('close', () => gone.abort())
  const headers = new Headers({ origin, cookie: incoming.headers.cookie ?? '' })
  const isSaving = incoming.method === 'POST'
  if (isSaving) headers.set('content-type', 'application/json')
  const pieces: Buffer[] = []
  for await (const piece of incoming) pieces.push(piece)
  const request = new Request(`${origin}${incoming.url}`, {
    method: incoming.method,
    headers,
    signal: gone.signal,
    ...(isSaving ? { body: Buffer.concat(pieces) } : {}),
  })
  const answer = await (isSaving ? records(request) : events(request))
  response.writeHead(answer.status, Object.fromEntries(answer.headers))
  const reader = answer.body!.getReader()
  for (let piece = await reader.read(); !piece.done; piece = await reader.read()) response.write(piece.value)
  response.end()
})
server.keepAliveTimeout = 0
server.listen(0, '127.0.0.1', () => process.send!({ port: (server.address() as AddressInfo).port, callers }))

process.on('message', () => {
  for (let round = 0; round < 3; round += 1) globalThis.gc!()
  const { heapUsed, external, arrayBuffers, rss } = process.memoryUsage()
  process.send!({ heap: heapUsed + external + arrayBuffers, rss })
})
