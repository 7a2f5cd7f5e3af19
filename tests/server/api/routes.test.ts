import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { z } from 'zod'
import { POST as postCase } from '@/app/api/v1/cases/route'
import { GET as getFurnaces } from '@/app/api/v1/furnaces/route'
import { GET as getSetpoint } from '@/app/api/v1/setpoint/route'
import { foldTeamFile } from '@/lib/records/fold/teamFile'
import { ratingAt, ratingSettings } from '@/lib/records/view/setpoint'
import { openApiDocument } from '@/lib/server/api/openApi'
import { type SetpointAnswer, setpointAnswer } from '@/lib/server/api/setpointShapes'
import { resetPaces } from '@/lib/server/api/tokenCaller'
import { callerOf, endToken, makeToken } from '@/lib/server/api/tokens'
import { closeLogs, theLog } from '@/lib/server/database'
import { addressHeader } from '@/lib/server/http/address'
import { store } from '@/lib/server/people/store'
import { disputedRecords, ids, pascals } from '../../app/setup/smallFile'
import { add, withFreshData } from '../people/team'
import { storeSmallFile } from './someFile'

withFreshData()
let manager = ''
let token = ''
let author = ''
beforeEach(async () => {
  resetPaces()
  manager = await add('Mara Otell', 'manager')
  const until = new Date(Date.now() + 30 * 86_400_000).toISOString().slice(0, 10)
  const made = makeToken(
    store().database,
    { name: 'Office scheduler', role: 'technician', until },
    manager,
    new Date(),
  )
  if (!made.ok) throw new Error(made.problem.message)
  token = made.value.token
  author = callerOf(store().database, token, new Date())!.person.id
  await storeSmallFile({ id: manager })
})
afterEach(() => closeLogs())

const headers = (more: Record<string, string> = {}) => ({
  authorization: `Bearer ${token}`,
  [addressHeader]: '192.0.2.1',
  ...more,
})
const ask = (path: string, more: Record<string, string> = {}) => {
  const request = new Request(`http://localhost${path}`, { headers: headers(more) })
  return path.startsWith('/api/v1/setpoint') ? getSetpoint(request) : getFurnaces(request)
}
const file = (body: unknown, more: Record<string, string> = {}) =>
  postCase(
    new Request('http://localhost/api/v1/cases', {
      method: 'POST',
      headers: headers({ 'content-type': 'application/json', ...more }),
      body: JSON.stringify(body),
    }),
  )
const problemOf = async (answer: Promise<Response>) => {
  const response = await answer
  const { ok, problem } = await response.json()
  expect(ok).toBe(false)
  expect(problem.message).toMatch(/^[A-Z].+\.$/)
  return [response.status, problem.code]
}
const setpointsOf = async (path: string) => {
  const response = await ask(path)
  expect(response.status).toBe(200)
  const { value } = await response.json()
  return setpointAnswer.parse(value).setpoints
}

const levelOf = (standing: SetpointAnswer['setpoints'][number]['standings'][number]) =>
  'level' in standing ? standing.level : undefined

test('a setpoint by part number has its level, its date and every source, letter for letter', async () => {
  const [low, ...more] = await setpointsOf('/api/v1/setpoint?part=om7731')
  expect(more).toEqual([])
  expect(low).toMatchObject({ position: ids.low, name: 'Low fire', range: 'Larkfell 2', maker: 'Orrinmoor' })
  const closes = low!.standings.find(({ action }) => action === 'closes')!
  if (!('value' in closes)) throw new Error('It is on file, and for every furnace.')
  expect(closes.level).toBe('In dispute')
  expect(closes.asOf).toMatch(/^20\d\d-/)
  const named = [closes, ...closes.otherValues].map(({ value }) => value.pascals)
  expect(named).toHaveLength(2)
  for (const each of [pascals.make, pascals.other])
    expect(named.some((one) => Math.abs(one - each) < 0.01)).toBe(true)
  const sources = [closes, ...closes.otherValues].flatMap((each) => each.sources)
  for (const source of sources)
    expect(source).toMatchObject({ recordedBy: 'Mara Otell', asWritten: expect.stringMatching(/\d|zero/) })
  expect(sources.flatMap(({ document, call }) => document ?? call ?? [])).toEqual([
    expect.objectContaining({ page: '1' }),
    expect.objectContaining({ reference: 'C-91' }),
  ])
  expect(
    low!.standings.filter((each) => levelOf(each) === 'Not on file').map(({ action }) => action),
  ).toEqual(['opens', 'not stated'])
})

test('the answer is what the setpoint card weighs, for the furnace that is named', async () => {
  const expected = foldTeamFile(disputedRecords)
  const position = expected.positions.get(ids.low)!
  const { siteLabel: _, ...known } = expected.furnaces.get(ids.furnace)!.body
  const furnace = { id: ids.furnace, elevationMetres: known.elevationMetres!, serial: known.serial! }
  const rating = ratingAt(expected, position, furnace, ratingSettings(expected, new Date().toISOString()))
  const answered = await setpointsOf(`/api/v1/setpoint?furnace=${ids.furnace}`)
  expect(answered.map(({ name }) => name).sort()).toEqual(['High fire', 'Low fire'])
  const closes = answered.find(({ name }) => name === 'Low fire')!.standings[0]!
  expect(levelOf(closes)).toBe(rating.closes.level)
  expect('value' in closes && closes.value.pascals).toBe(rating.closes.pascals)
})

test('a number that depends on the furnace is not given: the answer says what it needs, as the card does', async () => {
  const body = {
    ...disputedRecords.at(-1)!.body,
    positionId: ids.high,
    stage: 'high fire',
    serialRange: { from: 'K7', to: 'K7' },
  }
  const record = { id: uuidv7(), kind: 'report', version: 1, body, author: manager, device: 'desk-1' }
  const now = new Date().toISOString()
  const [answer] = await theLog().appendRecords(
    { sentAt: now, records: [{ ...record, saidAt: now }] },
    { id: manager, role: 'manager' },
  )
  expect(answer!.outcome).toBe('stored')
  const [unknown] = await setpointsOf(`/api/v1/setpoint?position=${ids.high}`)
  expect(unknown!.asks).toEqual(['serial'])
  expect(unknown!.standings[0]).toEqual({
    action: 'closes',
    needs: ['serial'],
    words: expect.stringMatching(/^Needs the serial\./),
  })
  expect(JSON.stringify(unknown!.standings)).not.toContain(String(pascals.other))
  const [known] = await setpointsOf(`/api/v1/setpoint?position=${ids.high}&serial=K7`)
  expect(known!.standings[0]).toMatchObject({
    level: expect.any(String),
    sources: [
      {
        words: expect.stringMatching(/^Distributor, read back, Hobb & Lane counter, ref\. C-91/),
        call: { organisation: 'Hobb & Lane counter', reference: 'C-91' },
        readBack: true,
        holdsFor: expect.stringContaining('serial K7'),
      },
    ],
  })
})

test('where nothing is on file, the answer says so, and how to ask', async () => {
  const [high] = await setpointsOf(`/api/v1/setpoint?position=${ids.high}`)
  for (const standing of high!.standings) {
    expect(standing).toMatchObject({
      level: 'Not on file',
      ask: { address: expect.stringContaining('/ask?') },
    })
    expect(standing).not.toHaveProperty('value')
  }
})

test('what is recorded or withdrawn meanwhile counts at the next question', async () => {
  await setpointsOf('/api/v1/setpoint?part=OM-7731')
  const last = disputedRecords.at(-1)!.id
  const withdrawal = {
    id: uuidv7(),
    kind: 'withdrawal',
    version: 1,
    body: { record: last, reason: 'Misread.' },
    saidAt: new Date().toISOString(),
    author: manager,
    device: 'desk-1',
  }
  await theLog().appendRecords(
    { sentAt: new Date().toISOString(), records: [withdrawal] },
    { id: manager, role: 'manager' },
  )
  const [low] = await setpointsOf('/api/v1/setpoint?part=OM-7731')
  expect(levelOf(low!.standings[0]!)).not.toBe('In dispute')
})

test.each([
  ['an adjustable or general-purpose switch', 'part=GP-ADJ-1', 422, 'general-purpose'],
  ['a part that nobody recorded', 'part=ZZ-1', 404, 'not-on-file'],
  ['a part without a position', 'part=XR-55', 404, 'not-on-file'],
  ['a position that is not there', 'position=nothing', 404, 'no-such-position'],
  ['a furnace that is not there', 'furnace=nothing', 404, 'no-such-furnace'],
  ['a furnace of no known range', `furnace=${ids.bareFurnace}`, 404, 'no-range'],
  ['nothing', '', 400, 'nothing-asked'],
  ['an elevation in words', 'part=OM-7731&elevation=high', 400, 'not-understood'],
  ['something unknown', 'part=OM-7731&bypass=yes', 400, 'not-understood'],
])('asked for %s, it says so', async (_what, query, status, code) => {
  expect(await problemOf(ask(`/api/v1/setpoint?${query}`))).toEqual([status, code])
})

test('furnaces are found by a part of the site label, or by serial number, whatever its signs', async () => {
  const found = async (query: string) => (await (await ask(`/api/v1/furnaces?${query}`)).json()).value
  expect(await found('site=mill%20row')).toMatchObject({ furnaces: [{ id: ids.furnace }], more: false })
  expect(await found('serial=s2204118')).toMatchObject({ furnaces: [{ serial: 'S2204-118' }] })
  expect(await found('serial=s2204')).toEqual({ furnaces: [], more: false })
  expect(await problemOf(ask('/api/v1/furnaces'))).toEqual([400, 'nothing-asked'])
})

const complaint = { furnaceId: ids.furnace, complaint: 'No heat since Monday', circuit: 'proving circuit' }

test('a case is filed as said by the program, and stands in the log like any other', async () => {
  const response = await file(complaint)
  expect(response.status).toBe(201)
  const { value } = await response.json()
  expect(value).toMatchObject({ outcome: 'stored', address: `/case?id=${value.id}` })
  expect(theLog().lookup(value.id)).toMatchObject({ kind: 'case', author, body: complaint, seq: value.seq })
  expect((await theLog().verify()).trouble).toBeUndefined()
})

test('a case that is sent again under its id and moment is stored once', async () => {
  const again = { ...complaint, id: uuidv7(), saidAt: new Date().toISOString() }
  expect((await file(again)).status).toBe(201)
  const second = await file(again)
  expect([second.status, (await second.json()).value.outcome]).toEqual([200, 'already stored'])
  expect(await problemOf(file({ ...again, complaint: 'Something else' }))).toEqual([422, 'refused'])
})

test.each([
  ['a furnace that is not there', { ...complaint, furnaceId: uuidv7() }, 404, 'no-such-furnace'],
  ['something that is no furnace', { ...complaint, furnaceId: ids.low }, 422, 'refused'],
  ['no complaint', { furnaceId: ids.furnace, circuit: 'proving circuit' }, 400, 'not-understood'],
  [
    'an id and no moment, so that it could not be sent again',
    { ...complaint, id: uuidv7() },
    400,
    'not-understood',
  ],
  ['an author of its own choosing', { ...complaint, author: 'person-1' }, 400, 'not-understood'],
  ['a moment still to come', { ...complaint, saidAt: '2099-01-01T00:00:00Z' }, 422, 'refused'],
])('a case with %s is refused with a sentence, and nothing is stored', async (_what, body, status, code) => {
  const before = (await theLog().verify()).entries
  expect(await problemOf(file(body))).toEqual([status, code])
  expect((await theLog().verify()).entries).toBe(before)
})

test('nothing is answered without a token, with a wrong one, one in a cookie or an address, or one that was ended', async () => {
  const bare = (more: Record<string, string>, path = '/api/v1/setpoint?part=OM-7731') =>
    getSetpoint(
      new Request(`http://localhost${path}`, { headers: { [addressHeader]: '192.0.2.9', ...more } }),
    )
  expect(await problemOf(bare({}))).toEqual([401, 'no-token'])
  expect(await problemOf(bare({ cookie: `token=${token}; authorization=Bearer ${token}` }))).toEqual([
    401,
    'no-token',
  ])
  expect(await problemOf(bare({}, `/api/v1/setpoint?part=OM-7731&token=${token}`))).toEqual([401, 'no-token'])
  expect(await problemOf(bare({ authorization: `Basic ${token}` }))).toEqual([401, 'no-token'])
  expect(await problemOf(bare({ authorization: `Bearer inchwater_${'A'.repeat(43)}` }))).toEqual([
    401,
    'dead-token',
  ])
  const dead = await bare({ authorization: `Bearer inchwater_${'A'.repeat(43)}` })
  expect(dead.headers.get('www-authenticate')).toBe('Bearer')
  const { tokenId } = callerOf(store().database, token, new Date())!
  endToken(store().database, tokenId, manager, new Date())
  expect(await problemOf(ask('/api/v1/setpoint?part=OM-7731'))).toEqual([401, 'dead-token'])
})

test('asked too often, it says how long to wait; guessing at tokens is slowed by address, and holds up no one else', async () => {
  let answer = await ask('/api/v1/furnaces?site=x')
  for (let asked = 1; asked < 80 && answer.status === 200; asked++)
    answer = await ask('/api/v1/furnaces?site=x')
  expect(answer.status).toBe(429)
  expect(Number(answer.headers.get('retry-after'))).toBeGreaterThanOrEqual(1)
  const guess = () =>
    getFurnaces(
      new Request('http://localhost/api/v1/furnaces?site=x', {
        headers: { authorization: `Bearer inchwater_${'B'.repeat(43)}`, [addressHeader]: '192.0.2.66' },
      }),
    )
  const statuses = new Set<number>()
  for (let guesses = 0; guesses < 30; guesses++) statuses.add((await guess()).status)
  expect([...statuses]).toEqual([401, 429])
  resetPaces()
  for (let guesses = 0; guesses < 30; guesses++) await guess()
  expect((await ask('/api/v1/furnaces?site=x')).status).toBe(200)
})

test('every real answer fits the schema that the document shows for its status', async () => {
  const document = openApiDocument() as {
    paths: Record<
      string,
      Record<string, { responses: Record<string, { content: Record<string, { schema: object }> }> }>
    >
    components: { schemas: { Problem: object } }
  }
  const schemaFor = (path: string, method: string, status: number): z.ZodType => {
    const { schema } = document.paths[path]![method]!.responses[status]!.content['application/json']!
    const whole = '$ref' in schema ? document.components.schemas.Problem : schema
    return z.fromJSONSchema(whole as Parameters<typeof z.fromJSONSchema>[0])
  }
  const asked: [path: string, method: string, answer: Response][] = [
    ['/api/v1/setpoint', 'get', await ask('/api/v1/setpoint?part=OM-7731')],
    ['/api/v1/setpoint', 'get', await ask(`/api/v1/setpoint?furnace=${ids.furnace}`)],
    ['/api/v1/setpoint', 'get', await ask(`/api/v1/setpoint?position=${ids.high}`)],
    ['/api/v1/setpoint', 'get', await ask('/api/v1/setpoint?part=GP-ADJ-1')],
    ['/api/v1/setpoint', 'get', await ask('/api/v1/setpoint?part=ZZ')],
    ['/api/v1/setpoint', 'get', await ask('/api/v1/setpoint')],
    ['/api/v1/setpoint', 'get', await ask('/api/v1/setpoint', { authorization: 'no' })],
    ['/api/v1/furnaces', 'get', await ask('/api/v1/furnaces?site=mill')],
    ['/api/v1/cases', 'post', await file(complaint)],
    ['/api/v1/cases', 'post', await file({})],
    ['/api/v1/cases', 'post', await file(complaint, { origin: 'https://elsewhere.example' })],
    ['/api/v1/cases', 'post', await file({ ...complaint, furnaceId: ids.low })],
  ]
  const statuses = new Set<number>()
  for (const [path, method, answer] of asked) {
    statuses.add(answer.status)
    const body = await answer.json()
    expect(
      schemaFor(path, method, answer.status).safeParse(body).error,
      `${path} ${answer.status}`,
    ).toBeUndefined()
  }
  expect([...statuses].sort()).toEqual([200, 201, 400, 401, 403, 404, 422])
  // The schema does refuse: a number without its standing is none of its shapes.
  const setpoint = schemaFor('/api/v1/setpoint', 'get', 200)
  const answered = await (await ask('/api/v1/setpoint?part=OM-7731')).json()
  for (const missing of ['level', 'sources', 'asOf']) {
    const spoiled = structuredClone(answered)
    delete spoiled.value.setpoints[0].standings[0][missing]
    expect(setpoint.safeParse(spoiled).success, missing).toBe(false)
  }
  const bare = structuredClone(answered)
  bare.value.setpoints[0].standings[0].sources = []
  expect(setpoint.safeParse(bare).success).toBe(false)
})
