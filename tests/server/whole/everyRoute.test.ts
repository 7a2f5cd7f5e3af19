import { v7 as uuidv7 } from 'uuid'
import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { codeReaderAt } from '@/lib/device/readers/addresses'
import { resetPaces } from '@/lib/server/api/tokenCaller'
import { callerOf, endToken, makeToken } from '@/lib/server/api/tokens'
import { theLog } from '@/lib/server/database'
import { changeActive } from '@/lib/server/people/changes'
import { invite } from '@/lib/server/people/invitations'
import { makeReset } from '@/lib/server/people/resets'
import { store } from '@/lib/server/people/store'
import { sha256Of } from '@/lib/server/photos/pictureFiles'
import { takePicture } from '@/lib/server/photos/takePicture'
import { password, read, send } from '../people/team'
import { pictureOf } from '../photos/somePictures'
import { appHandlers, type Handler } from './appFiles'
import {
  type Caller,
  callers,
  closeTeam,
  everythingIn,
  foundTeam,
  names,
  openCopy,
  removeTeam,
  saidBy,
  type Team,
} from './team'

type Statuses = Readonly<Record<Caller, number>>
const all = (status: number): Statuses => ({
  nobody: status,
  'taken off': status,
  technician: status,
  dispatcher: status,
  manager: status,
})
const anybody = all(200)
const signedIn: Statuses = { ...all(200), nobody: 401, 'taken off': 401 }
const managersOnly: Statuses = { ...all(403), nobody: 401, 'taken off': 401, manager: 200 }

/** What is sent to a route that it can have no objection to, but for who sends it. */
type Sending = { body?: unknown; picture?: Buffer; id?: string; query?: string }
type Row = [Statuses, (team: Team, caller: Caller) => Sending | Promise<Sending>]

const secretOf = (made: ReturnType<typeof makeReset>): string => {
  if (!made.ok) throw new Error(made.problem.message)
  return made.value.secret
}
const invitation = ({ ids }: Team) =>
  secretOf(invite(store().database, { name: 'Runa Felt', role: 'dispatcher' }, ids.manager, new Date()))
const reset = ({ ids }: Team) => secretOf(makeReset(store().database, ids.colleague, ids.manager, new Date()))
const handedOver = { sentAt: '2026-01-12T12:00:00Z', records: [{ id: 'a' }] }
const oneLookUp = {
  mark: '0a8f3c52-1d5e-4b7a-9c3e-2f6d8e0b4a11',
  positionId: uuidv7(),
  day: new Date().toISOString().slice(0, 10),
}
const newPassword = 'four other plain words'
const oneCase = { furnaceId: uuidv7(), complaint: 'No heat', circuit: 'proving circuit' }
const wantedToken = {
  name: 'Office scheduler',
  role: 'dispatcher' as const,
  until: new Date(Date.now() + 86_400_000).toISOString().slice(0, 10),
}
function madeToken(by: string, name = wantedToken.name): string {
  const made = makeToken(store().database, { ...wantedToken, name }, by, new Date())
  if (!made.ok) throw new Error(made.problem.message)
  return made.value.token
}
const tokenIdOf = (token: string): string => callerOf(store().database, token, new Date())!.tokenId
const colleague = ({ ids }: Team): Sending => ({ id: ids.colleague, body: {} })

/** A picture that a photo in the log names; the server has not got it yet. */
async function namedPicture({ ids }: Team): Promise<{ picture: Buffer; id: string }> {
  const picture = await pictureOf('jpeg')
  const id = sha256Of(picture)
  const furnace = saidBy(ids.manager).find(({ kind }) => kind === 'furnace')!
  const { rangeId: _, ...body } = furnace.body
  const photo = { sha256: id, mediaType: 'image/jpeg', width: 60, height: 40, bytes: picture.length }
  const records = [
    { ...furnace, body },
    { ...furnace, id: uuidv7(), kind: 'photo', body: { ...photo, shows: 'other', furnaceId: furnace.id } },
  ]
  const sentAt = new Date().toISOString()
  const answers = await theLog().appendRecords({ sentAt, records }, { id: ids.manager, role: 'manager' })
  expect(answers.map(({ outcome }) => outcome)).toEqual(['stored', 'stored'])
  return { picture, id }
}

const emptyDocument = {
  $schema: 'inchwater-log.schema.json',
  format: 'Inchwater log',
  version: 1,
  exportedAt: '2026-01-12T12:00:00.000Z',
  head: { seq: 0, hash: '0'.repeat(64) },
  units: { fields: {}, codes: {} },
  people: [],
  entries: [],
}

/** Every route there is: which status whom awaits with a request that is right in every other way. */
const table: Readonly<Record<string, Row>> = {
  'GET /api/auth/me': [signedIn, () => ({})],
  'POST /api/auth/password': [signedIn, () => ({ body: { current: password, password: newPassword } })],
  'POST /api/auth/sign-in': [anybody, () => ({ body: { name: names.colleague, password } })],
  'POST /api/auth/sign-out': [anybody, () => ({ body: {} })],
  'POST /api/auth/sign-out-everywhere': [signedIn, () => ({ body: {} })],
  'GET /api/changes': [signedIn, () => ({})],
  'GET /api/devices/holding': [{ ...managersOnly, dispatcher: 200 }, () => ({})],
  'GET /api/devices': [managersOnly, () => ({})],
  'POST /api/devices/end': [
    { ...managersOnly, manager: 404 },
    ({ ids }) => ({ body: { device: 'phone-1', personId: ids.colleague } }),
  ],
  'GET /api/events': [signedIn, () => ({})],
  'GET /api/export/log': [managersOnly, () => ({})],
  'GET /api/export/schema': [managersOnly, () => ({})],
  'GET /api/export/tables': [managersOnly, () => ({})],
  'POST /api/import/log': [managersOnly, () => ({ body: emptyDocument })],
  // Nobody's session on this device was ended.
  'GET /api/hand-over': [signedIn, () => ({})],
  'POST /api/hand-over': [{ ...all(409), nobody: 401, 'taken off': 401 }, () => ({ body: handedOver })],
  'PUT /api/hand-over/pictures/[sha256]': [{ ...all(409), nobody: 401, 'taken off': 401 }, namedPicture],
  'POST /api/hand-over/pictures/lost': [
    { ...all(409), nobody: 401, 'taken off': 401 },
    () => ({ body: { sha256: 'a'.repeat(64) } }),
  ],
  'POST /api/hand-over/done': [{ ...all(409), nobody: 401, 'taken off': 401 }, () => ({ body: {} })],
  'GET /api/log/verify': [signedIn, () => ({})],
  'GET /api/look-ups': [{ ...managersOnly, dispatcher: 200 }, () => ({})],
  'POST /api/look-ups': [signedIn, () => ({ body: { lookUps: [oneLookUp] } })],
  'GET /api/letter': [managersOnly, () => ({})],
  'GET /api/log/head': [signedIn, () => ({})],
  'GET /api/people': [signedIn, () => ({})],
  'POST /api/people/[id]/deactivate': [managersOnly, colleague],
  'POST /api/people/[id]/reactivate': [managersOnly, ({ ids }) => ({ id: ids['taken off'], body: {} })],
  'POST /api/people/[id]/role': [managersOnly, (team) => ({ ...colleague(team), body: { role: 'manager' } })],
  'POST /api/people/[id]/sign-out-everywhere': [managersOnly, colleague],
  'GET /api/people/events': [managersOnly, () => ({})],
  'POST /api/people/invitations': [managersOnly, () => ({ body: { name: 'Runa Felt', role: 'manager' } })],
  'POST /api/people/invitations/accept': [
    anybody,
    (team) => ({ body: { token: invitation(team), password: newPassword } }),
  ],
  'POST /api/people/links': [anybody, (team) => ({ body: { token: invitation(team) } })],
  'POST /api/people/resets': [managersOnly, ({ ids }) => ({ body: { personId: ids.colleague } })],
  'POST /api/people/resets/use': [
    anybody,
    (team) => ({ body: { token: reset(team), password: newPassword } }),
  ],
  'PUT /api/photos/[sha256]': [signedIn, namedPicture],
  'GET /api/photos/[sha256]': [
    signedIn,
    async (team) => {
      const { picture, id } = await namedPicture(team)
      expect(await takePicture(id, picture, new Date())).toMatchObject({ ok: true })
      return { id }
    },
  ],
  'POST /api/records': [
    signedIn,
    ({ ids }, caller) => ({
      body: {
        sentAt: new Date().toISOString(),
        records: saidBy(caller === 'nobody' ? ids.technician : ids[caller]).slice(0, 1),
      },
    }),
  ],
  'GET /api/set-aside': [managersOnly, () => ({})],
  'GET /api/set-aside/pictures/[sha256]': [{ ...managersOnly, manager: 404 }, () => ({})],
  'POST /api/set-aside/admit': [managersOnly, () => ({ body: { records: ['nothing'] } })],
  'POST /api/set-aside/refuse': [managersOnly, () => ({ body: { records: ['nothing'], reason: 'Why' } })],
  'GET /api/openapi.json': [anybody, () => ({})],
  'GET /api/tokens': [managersOnly, () => ({})],
  'POST /api/tokens': [managersOnly, () => ({ body: wantedToken })],
  'POST /api/tokens/[id]/end': [
    managersOnly,
    ({ ids }) => ({ id: tokenIdOf(madeToken(ids.manager, 'Parts counter')), body: {} }),
  ],
  // For office programs, by token: nobody's cookie opens them.
  'GET /api/v1/furnaces': [all(401), () => ({ query: '?site=mill' })],
  'GET /api/v1/setpoint': [all(401), () => ({ query: '?part=QX-1' })],
  'POST /api/v1/cases': [all(401), () => ({ body: { ...oneCase } })],
  'GET /api/set-up': [anybody, () => ({})],
  'GET /readers/[...id]': [anybody, () => ({ id: `${codeReaderAt.slice('/readers/'.length)}/worker.js` })],
  'GET /sw.js': [anybody, () => ({})],
  // There are people, so it is over, for everybody and for good.
  'POST /api/set-up': [
    all(410),
    () => ({ body: { code: 'AAAAA-AAAAA-AAAAA-AAAAA', name: 'Runa Felt', password } }),
  ],
}

let handlers: ReadonlyMap<string, Handler>
let founded: Team
let team: Team
beforeAll(async () => {
  founded = await foundTeam()
  handlers = await appHandlers()
}, 60_000)
beforeEach(() => {
  resetPaces()
  team = openCopy(founded)
})
afterEach(async () => {
  await closeTeam()
  removeTeam(team)
})
afterAll(() => removeTeam(founded))

function ask(
  route: string,
  caller: Caller,
  { body, picture, id = '', query = '' }: Sending,
  headers: Record<string, string> = {},
) {
  const { method, address, handle } = handlers.get(route)!
  const path = address.replace(/\[(\.\.\.)?\w+\]/, id) + query
  const cookie = team.cookies[caller]
  const sent = method === 'GET' ? read(path, cookie) : send(path, { cookie, body })
  const request = picture === undefined ? sent : withPicture(sent, picture)
  for (const [name, value] of Object.entries(headers)) request.headers.set(name, value)
  return handle(request, { params: Promise.resolve({ id, sha256: id }) })
}

function withPicture({ url, headers }: Request, picture: Buffer): Request {
  const request = new Request(url, { method: 'PUT', headers, body: new Uint8Array(picture) })
  request.headers.set('content-type', 'image/jpeg')
  return request
}

/** What every answer has, whatever it says: a shape, no cache, no other origin let in, and a sentence when it is no. */
async function checkAnswer(answer: Response): Promise<{ ok: boolean; problem?: { code: string } }> {
  expect(answer.headers.get('access-control-allow-origin')).toBeNull()
  if (answer.headers.get('cache-control')?.includes('immutable')) {
    // A reader's program: the same for everybody, under a name that has its version in it.
    expect(await answer.text()).toContain('ZXingWASM')
    return { ok: answer.ok }
  }
  if (answer.headers.get('content-type')?.startsWith('text/javascript')) {
    // The service worker: the same for everybody, asked for anew each time, and nobody's data.
    expect(answer.headers.get('cache-control')).toBe('no-cache')
    expect(await answer.text()).toMatch(/^const settings = \{"version":"[^"]+","pages":\["\/",/)
    return { ok: answer.ok }
  }
  expect(answer.headers.get('cache-control')).toMatch(/^no-store(, no-transform)?$/)
  if (answer.headers.get('content-type')?.startsWith('text/event-stream')) {
    // It has no end of its own.
    await answer.body?.cancel()
    return { ok: answer.ok }
  }
  if (answer.headers.has('content-disposition')) {
    // A file to keep, whole.
    expect((await answer.arrayBuffer()).byteLength).toBeGreaterThan(0)
    return { ok: answer.ok }
  }
  if (answer.headers.get('content-type')?.startsWith('application/x-ndjson')) {
    const last = (await answer.text()).trimEnd().split('\n').at(-1)!
    expect(JSON.parse(last)).toEqual({ ok: true, value: expect.anything() })
    return { ok: answer.ok }
  }
  const whole = await answer.clone().json()
  if ('openapi' in whole) {
    // A document of another standard's shape, and nobody's data.
    expect(whole.openapi).toMatch(/^3\.1/)
    return { ok: answer.ok }
  }
  const said = (await answer.json()) as { ok: boolean; problem?: { code: string } }
  expect(said).toEqual(
    answer.ok
      ? { ok: true, value: expect.anything() }
      : { ok: false, problem: { code: expect.any(String), message: expect.stringMatching(/^[A-Z].+\.$/) } },
  )
  return said
}

test('every method of every route under app/ is in the table, and the table names no other', () => {
  expect([...handlers.keys()].sort()).toEqual(Object.keys(table).sort())
})

const cases = Object.entries(table).flatMap(([route, [statuses, sending]]) =>
  callers.map((caller) => [route, statuses[caller], caller, sending] as const),
)

test.each(cases)('%s answers %i to: %s', async (route, status, caller, sending) => {
  const right = await sending(team, caller)
  const before = everythingIn(team)
  const answer = await ask(route, caller, right)
  expect(answer.status).toBe(status)
  await checkAnswer(answer)
  if (status !== 200 || route.startsWith('GET')) expect(everythingIn(team)).toBe(before)
})

const writes = Object.entries(table).filter(([route]) => !route.startsWith('GET'))
const elsewhere: [string, Record<string, string>][] = [
  ['another origin', { origin: 'https://elsewhere.example' }],
  ['the same host over https', { origin: 'https://localhost' }],
  ['an origin that is hidden', { origin: 'null' }],
  ['another site, as the browser says', { 'sec-fetch-site': 'cross-site' }],
  ['a sister host, as the browser says', { 'sec-fetch-site': 'same-site' }],
]

test.each(writes)(
  '%s answers 403 to a manager’s browser on a page of any other origin, and does nothing',
  async (route, [, sending]) => {
    const right = await sending(team, 'manager')
    const before = everythingIn(team)
    for (const [what, headers] of elsewhere) {
      const answer = await ask(route, 'manager', right, headers)
      expect([what, answer.status]).toEqual([what, 403])
      expect((await checkAnswer(answer)).problem?.code).toBe('other-origin')
    }
    expect(everythingIn(team)).toBe(before)
  },
)

/** What a working token gets where it is let in; the log is empty, so what it asks for is not on file. */
const byToken: Readonly<Record<string, number>> = {
  'GET /api/v1/furnaces': 200,
  'GET /api/v1/setpoint': 404,
  'POST /api/v1/cases': 404,
}

const tokenStates: [what: string, works: boolean, spoil: (token: string, team: Team) => unknown][] = [
  ['a working token', true, () => {}],
  [
    'a token that was ended',
    false,
    (token, { ids }) => endToken(store().database, tokenIdOf(token), ids.manager, new Date()),
  ],
  [
    'a token whose program was taken off',
    false,
    (token, { ids }) => {
      const { person } = callerOf(store().database, token, new Date())!
      return changeActive(store().database, person.id, false, ids.manager, new Date())
    },
  ],
]

test.each(tokenStates)(
  '%s opens the routes of office programs or none, and is nobody at every other',
  async (_what, works, spoil) => {
    const token = madeToken(team.ids.manager)
    spoil(token, team)
    // Routes that are open to anybody don't ask who sends.
    const asking = Object.entries(table).filter(([, [statuses]]) => statuses.nobody === 401)
    for (const [route, [, sending]] of asking) {
      const right = await sending(team, 'nobody')
      const answer = await ask(route, 'nobody', right, { authorization: `Bearer ${token}` })
      const expected = route.includes('/api/v1/') && works ? byToken[route] : 401
      expect([route, answer.status]).toEqual([route, expected])
      await checkAnswer(answer)
    }
  },
  60_000,
)
