import { v4 as uuidv4, v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { GET, POST } from '@/app/api/look-ups/route'
import { lookUpTotals } from '@/lib/device/answers'
import { daysBefore, mostLookUps } from '@/lib/records/lookUps'
import { closeLogs, theLog } from '@/lib/server/database'
import { noteLookUps } from '@/lib/server/lookUps/noteLookUps'
import { readLookUps } from '@/lib/server/lookUps/readLookUps'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, read, send, withFreshData } from '../people/team'

withFreshData()
afterEach(closeLogs)

const today = new Date().toISOString().slice(0, 10)
let positionId = ''
let makerId = ''
const cookies: Record<'technician' | 'dispatcher', string> = { technician: '', dispatcher: '' }
beforeEach(async () => {
  await add('Jonas Merrill', 'technician')
  const dispatcher = await add('Ilse Quandt', 'dispatcher')
  for (const [role, name] of [
    ['technician', 'Jonas Merrill'],
    ['dispatcher', 'Ilse Quandt'],
  ] as const)
    cookies[role] = cookiesOf(await signIn(send('/', { body: { name, password } })))
  const ids = { maker: uuidv7(), range: uuidv7(), position: uuidv7() }
  const said = (id: string, kind: string, body: Record<string, unknown>) => ({
    id,
    kind,
    version: 1,
    body,
    saidAt: new Date().toISOString(),
    author: dispatcher,
    device: 'desk-1',
  })
  const records = [
    said(ids.maker, 'maker', { name: 'Orrinmoor' }),
    said(ids.range, 'equipment range', {
      makerId: ids.maker,
      name: 'Larkfell 2',
      modelPatterns: ['LF2-*'],
      fuel: 'natural gas',
      heat: 'condensing',
    }),
    said(ids.position, 'position', {
      rangeId: ids.range,
      name: 'Low fire',
      stage: 'low fire',
      kind: 'one-port',
      between: 'port and room',
      tap: 'collector box',
      sense: 'suction',
    }),
  ]
  const answers = await theLog().appendRecords(
    { sentAt: new Date().toISOString(), records },
    { id: dispatcher, role: 'dispatcher' },
  )
  expect(answers).toMatchObject(records.map(() => ({ outcome: 'stored' })))
  positionId = ids.position
  makerId = ids.maker
})

const lookUp = (over: Record<string, unknown> = {}) => ({
  mark: uuidv4(),
  positionId,
  day: today,
  ...over,
})
const post = async (lookUps: unknown, cookie = cookies.technician) => {
  const response = await POST(send('/api/look-ups', { cookie, body: { lookUps } }))
  return { status: response.status, said: await response.json() }
}
const totals = async () => {
  const response = await GET(read('/api/look-ups', cookies.dispatcher))
  // As a device reads it.
  const asRead = lookUpTotals.safeParse((await response.json()).value)
  return asRead.success && asRead.data
}
const rows = () => store().database.prepare('SELECT * FROM "LookUp"').all()

test('look-ups of several devices add up, and a resend after a lost answer counts nothing twice', async () => {
  const first = [lookUp(), lookUp({ day: daysBefore(today, 3) })]
  expect(await post(first)).toEqual({ status: 200, said: { ok: true, value: { counted: 2 } } })
  expect((await post(first)).said.value).toEqual({ counted: 0 })
  expect((await post([lookUp()], cookies.dispatcher)).said.value).toEqual({ counted: 1 })
  expect(await totals()).toEqual([{ positionId, times: 3 }])
})

test('nothing is kept of who looked, where, when in the day, or in which order', async () => {
  const sent = lookUp()
  await post([sent])
  expect(rows()).toEqual([sent])
  expect(() => store().database.prepare('SELECT rowid FROM "LookUp"').all()).toThrow('no such column: rowid')
})

test('what is no position in the log is passed over, and so is a day too old or after tomorrow', async () => {
  const sent = [
    lookUp({ positionId: uuidv7() }),
    lookUp({ positionId: makerId }),
    lookUp({ day: daysBefore(today, 91) }),
    lookUp({ day: daysBefore(today, -2) }),
    lookUp({ day: daysBefore(today, 90) }),
    lookUp({ day: daysBefore(today, -1) }),
  ]
  expect((await post(sent)).said.value).toEqual({ counted: 2 })
})

test('after 90 days a look-up counts no more, and goes when the next ones come', () => {
  const { database } = store()
  noteLookUps(database, theLog(), [lookUp()], new Date())
  const later = new Date(Date.now() + 91 * 86_400_000)
  expect(readLookUps(database, later)).toEqual([])
  const next = lookUp({ day: later.toISOString().slice(0, 10) })
  noteLookUps(database, theLog(), [next], later)
  expect(rows()).toEqual([next])
})

test.each([
  ['none', [], 'Send at least one look-up.'],
  ['too many', Array.from({ length: mostLookUps + 1 }, () => lookUp), 'at most 500 look-ups'],
  ['a mark that is not random', 'time', 'A look-up needs a random mark.'],
  ['a day that is none', 'day', 'The day of a look-up is written 2026-01-12.'],
  ['a name beside it', 'name', 'name'],
])('%s is refused in a sentence, and nothing is counted', async (_what, sent, sentence) => {
  const spoiled: Record<string, Record<string, unknown>> = {
    time: { mark: uuidv7() },
    day: { day: '12 Jan' },
    name: { name: 'Jonas Merrill' },
  }
  const lookUps = typeof sent === 'string' ? [lookUp(), lookUp(spoiled[sent])] : sent.map((make) => make())
  const { status, said } = await post(lookUps)
  expect(status).toBeGreaterThanOrEqual(400)
  expect(said.problem.message).toContain(sentence)
  expect(rows()).toEqual([])
})
