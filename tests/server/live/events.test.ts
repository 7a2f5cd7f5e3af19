import { createServer, type IncomingMessage, type Server, request as send } from 'node:http'
import type { AddressInfo } from 'node:net'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test, vi } from 'vitest'
import { POST as signOut } from '@/app/api/auth/sign-out/route'
import { GET as events } from '@/app/api/events/route'
import { POST as role } from '@/app/api/people/[id]/role/route'
import { POST as records } from '@/app/api/records/route'
import { recordKinds } from '@/lib/records/registry'
import { theListeners } from '@/lib/server/live/live'
import { send as ask } from '../people/team'
import { type Caller, closeTeam, foundTeam, openCopy, removeTeam, saidBy, type Team } from '../whole/team'

let founded: Team
let team: Team
let server: Server
let port: number
beforeAll(async () => {
  founded = await foundTeam()
  // A real server: what is streamed must come through a real connection, piece by piece, and end with it.
  server = createServer(async (incoming, response) => {
    const gone = new AbortController()
    response.on('close', () => gone.abort())
    const headers = new Headers(
      Object.entries(incoming.headers).flatMap(([name, value]) =>
        typeof value === 'string' ? [[name, value]] : [],
      ) as [string, string][],
    )
    const answer = await events(
      new Request(`http://localhost${incoming.url}`, { headers, signal: gone.signal }),
    )
    response.writeHead(answer.status, Object.fromEntries(answer.headers))
    const reader = answer.body!.getReader()
    for (let piece = await reader.read(); !piece.done; piece = await reader.read())
      response.write(piece.value)
    response.end()
  })
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
  port = (server.address() as AddressInfo).port
}, 60_000)
beforeEach(() => {
  team = openCopy(founded)
})
afterEach(async () => {
  await closeTeam()
  removeTeam(team)
})
afterAll(() => {
  server.close()
  server.closeAllConnections()
  removeTeam(founded)
})

type Heard = {
  status: number
  text: () => string
  until: (words: string) => Promise<void>
  ended: Promise<void>
  hangUp: () => void
}

/** Listens as a browser does. */
const listen = (caller: Caller, headers: Record<string, string> = {}, query = ''): Promise<Heard> =>
  new Promise((resolve, reject) => {
    const sent = send(
      {
        host: '127.0.0.1',
        port,
        path: `/api/events${query}`,
        headers: { cookie: team.cookies[caller], ...headers },
      },
      (response: IncomingMessage) => {
        let text = ''
        response.setEncoding('utf8')
        response.on('data', (piece) => {
          text += piece
        })
        response.on('error', () => undefined)
        resolve({
          status: response.statusCode ?? 0,
          text: () => text,
          until: (words) => vi.waitFor(() => expect(text).toContain(words), { timeout: 10_000 }),
          ended: new Promise((done) => response.on('close', () => done())),
          hangUp: () => sent.destroy(),
        })
      },
    )
    sent.on('error', reject)
    sent.end()
  })

const say = (caller: 'manager' | 'technician' | 'dispatcher', count: number) =>
  records(
    ask('/api/records', {
      cookie: team.cookies[caller],
      body: { sentAt: new Date().toISOString(), records: saidBy(team.ids[caller]).slice(0, count) },
    }),
  )

test.each(['nobody', 'taken off'] as const)('GET /api/events answers 401 to: %s', async (caller) => {
  expect((await listen(caller)).status).toBe(401)
  expect(theListeners().size()).toBe(0)
})

test('an open screen is told at once that there is something new, up to which number, and nothing of what it is', async () => {
  const screen = await listen('technician')
  expect(screen.status).toBe(200)
  await screen.until('retry: ')
  await say('dispatcher', 2)
  await screen.until('id: 2\nevent: news\ndata: 2\n\n')
  expect(screen.text()).not.toMatch(/maker|Orrinmoor|dispatcher/)
  screen.hangUp()
})

test('who comes back after a break is told of what was missed, by Last-Event-ID or ?after', async () => {
  await say('dispatcher', 3)
  const behind = await listen('technician', { 'last-event-id': '2' })
  await behind.until('data: 3')
  const upToDate = await listen('technician', {}, '?after=3')
  await upToDate.until('retry: ')
  await say('dispatcher', 1)
  await upToDate.until('data: 4')
  expect(upToDate.text()).not.toContain('data: 3')
  behind.hangUp()
  upToDate.hangUp()
})

test('a role is told nothing of records that it may not see', async () => {
  vi.spyOn(recordKinds.maker!, 'maySee', 'get').mockReturnValue(['manager'])
  const technician = await listen('technician')
  const manager = await listen('manager')
  await say('manager', 1)
  await manager.until('data: 1')
  expect(technician.text()).not.toContain('news')
  await say('manager', 2)
  await technician.until('data: 3')
  technician.hangUp()
  manager.hangUp()
})

test('signing out ends the connection of that session, and of no other', async () => {
  const leaving = await listen('technician')
  const staying = await listen('dispatcher')
  await signOut(ask('/api/auth/sign-out', { cookie: team.cookies.technician }))
  await leaving.ended
  await staying.until('still here')
  expect(theListeners().size()).toBe(1)
  staying.hangUp()
})

test('another role ends it too: the screen begins again with what that role may see', async () => {
  const changing = await listen('dispatcher')
  const id = team.ids.dispatcher
  const changed = await role(
    ask(`/api/people/${id}/role`, { cookie: team.cookies.manager, body: { role: 'technician' } }),
    {
      params: Promise.resolve({ id }),
    },
  )
  expect(changed.status).toBe(200)
  await changing.ended
})

test('a screen that is closed is forgotten', async () => {
  const screen = await listen('technician')
  await screen.until('retry: ')
  expect(theListeners().size()).toBe(1)
  screen.hangUp()
  await vi.waitFor(() => expect(theListeners().size()).toBe(0), { timeout: 10_000 })
})

test('too many screens of one person are refused with a sentence', async () => {
  const screens: Heard[] = []
  for (let count = 0; count < 12; count += 1) screens.push(await listen('technician'))
  const refused = await listen('technician')
  expect(refused.status).toBe(503)
  await refused.until('Too many screens are open at once.')
  expect((await listen('manager')).status).toBe(200)
  for (const screen of screens) screen.hangUp()
})

test('a number that is none is refused', async () => {
  const screen = await listen('technician', {}, '?after=soon')
  expect(screen.status).toBe(400)
})
