import { v7 as uuidv7 } from 'uuid'
import { afterEach, expect, test } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { POST as signOut } from '@/app/api/auth/sign-out/route'
import { GET as changes } from '@/app/api/changes/route'
import { GET as holding } from '@/app/api/devices/holding/route'
import { POST as records } from '@/app/api/records/route'
import { closeLogs } from '@/lib/server/database'
import { listDevices } from '@/lib/server/devices/listDevices'
import { noteContact } from '@/lib/server/devices/noteContact'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, read, send, withFreshData } from '../people/team'

withFreshData()
afterEach(closeLogs)

type Says = { device?: string; waiting?: string; build?: string }
const saying = (request: Request, { device = 'phone-1', waiting = '0', build = 'b1' }: Says = {}) => {
  request.headers.set('inchwater-device', device)
  request.headers.set('inchwater-waiting', waiting)
  request.headers.set('inchwater-build', build)
  return request
}
const signedIn = async (name: string) => cookiesOf(await signIn(send('/', { body: { name, password } })))
const devices = () => listDevices(store().database)
const fetchAfter = (cookie: string, after: number, says?: Says) =>
  changes(saying(read(`/api/changes?after=${after}`, cookie), says))

test('a device that fetches is written down: whose it is, what waits there, and how far it holds the log', async () => {
  const jonas = await add('Jonas Merrill', 'technician')
  const cookie = await signedIn('Jonas Merrill')
  expect((await fetchAfter(cookie, 7, { waiting: '3' })).status).toBe(200)
  expect(devices()).toEqual([
    {
      id: 'phone-1',
      personId: jonas,
      signedIn: true,
      firstContactAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
      lastContactAt: expect.stringMatching(/^\d{4}-\d\d-\d\dT/),
      examinedSeq: 7,
      waiting: 3,
      build: 'b1',
    },
  ])
})

test('a device that sends is written down too, and keeps the number that it said before', async () => {
  const jonas = await add('Jonas Merrill', 'technician')
  const cookie = await signedIn('Jonas Merrill')
  await fetchAfter(cookie, 0)
  const said = {
    id: uuidv7(),
    kind: 'maker',
    version: 1,
    body: { name: 'Orrinmoor' },
    saidAt: new Date().toISOString(),
    author: jonas,
    device: 'phone-1',
  }
  const body = { sentAt: new Date().toISOString(), records: [said] }
  expect((await records(saying(send('/api/records', { cookie, body }), { waiting: '1' }))).status).toBe(200)
  expect(devices()).toMatchObject([{ examinedSeq: 0, waiting: 1 }])
  await fetchAfter(cookie, 1)
  expect(devices()).toMatchObject([{ examinedSeq: 1, waiting: 0 }])
})

test('two people on one device are two rows, and a program that names no device is none', async () => {
  await add('Jonas Merrill', 'technician')
  await add('Ilse Quandt', 'dispatcher')
  const jonas = await signedIn('Jonas Merrill')
  await fetchAfter(jonas, 0)
  await fetchAfter(await signedIn('Ilse Quandt'), 0)
  expect((await changes(read('/api/changes', jonas))).status).toBe(200)
  expect(devices().map(({ id }) => id)).toEqual(['phone-1', 'phone-1'])
})

test('a session that ended is told, and the device stays in the list', async () => {
  await add('Jonas Merrill', 'technician')
  const cookie = await signedIn('Jonas Merrill')
  await fetchAfter(cookie, 0)
  await signOut(send('/', { cookie }))
  expect(devices()).toMatchObject([{ id: 'phone-1', signedIn: false }])
})

test('noteContact writes nothing while nothing is new, and the time of contact every five minutes', async () => {
  const personId = await add('Jonas Merrill', 'technician')
  const said = { device: 'phone-1', personId, waiting: 2, build: 'b1', examinedSeq: 9 }
  const at = (minutes: number) => new Date(Date.UTC(2026, 1, 1, 10, minutes))
  const note = (minutes: number, change = {}) =>
    noteContact(store().database, { ...said, ...change }, at(minutes))
  expect([note(0), note(1), note(4)]).toEqual([true, false, false])
  expect(note(5)).toBe(true)
  expect([note(6, { waiting: 3 }), note(6, { waiting: 3 })]).toEqual([true, false])
  expect(note(7, { waiting: 3, examinedSeq: 10 })).toBe(true)
  expect(note(7, { waiting: 3, examinedSeq: 10, build: 'b2' })).toBe(true)
  // A server's clock that was put back is no reason never to write again.
  expect(note(-60, { waiting: 3, examinedSeq: 10, build: 'b2' })).toBe(true)
})

test('a device that starts in a fresh store is behind again', async () => {
  const personId = await add('Jonas Merrill', 'technician')
  const said = { device: 'phone-1', personId, waiting: 0, build: 'b1' }
  noteContact(store().database, { ...said, examinedSeq: 900 }, new Date())
  noteContact(store().database, { ...said, examinedSeq: 0 }, new Date())
  expect(devices()).toMatchObject([{ examinedSeq: 0 }])
})

test.each([
  { device: 'a b' },
  { device: 'x'.repeat(65) },
  { waiting: '-1' },
  { waiting: 'many' },
  { build: '<b>' },
])('what cannot be read is refused in a sentence, and nothing is written: %o', async (says) => {
  await add('Jonas Merrill', 'technician')
  const answer = await fetchAfter(await signedIn('Jonas Merrill'), 0, says)
  expect(answer.status).toBe(400)
  expect(await answer.json()).toMatchObject({
    problem: { code: 'bad-contact', message: expect.stringMatching(/\.$/) },
  })
  expect(devices()).toEqual([])
})

test('who has a record on their device is told by the number up to which a signed-in device holds the log', async () => {
  const jonas = await add('Jonas Merrill', 'technician')
  await add('Ilse Quandt', 'dispatcher')
  const [phone, desk] = [await signedIn('Jonas Merrill'), await signedIn('Ilse Quandt')]
  const said = {
    id: uuidv7(),
    kind: 'maker',
    version: 1,
    body: { name: 'Orrinmoor' },
    saidAt: new Date().toISOString(),
    author: jonas,
    device: 'phone-1',
  }
  await records(
    saying(send('/', { cookie: phone, body: { sentAt: new Date().toISOString(), records: [said] } })),
  )
  const unknown = uuidv7()
  const holders = async () => {
    const answer = await holding(read(`/api/devices/holding?record=${said.id}&record=${unknown}`, desk))
    return (await answer.json()).value
  }
  expect(await holders()).toEqual([{ id: said.id, personIds: [] }])
  await fetchAfter(phone, 0)
  expect(await holders()).toEqual([{ id: said.id, personIds: [] }])
  await fetchAfter(phone, 1)
  expect(await holders()).toEqual([{ id: said.id, personIds: [jonas] }])
  await signOut(send('/', { cookie: phone }))
  expect(await holders()).toEqual([{ id: said.id, personIds: [] }])
})

test('who holds what is told to those who ring, and of a hundred records at most', async () => {
  await add('Jonas Merrill', 'technician')
  await add('Ilse Quandt', 'dispatcher')
  const ask = async (name: string, query: string) =>
    (await holding(read(`/api/devices/holding?${query}`, await signedIn(name)))).status
  expect(await ask('Jonas Merrill', `record=${uuidv7()}`)).toBe(403)
  expect(await ask('Ilse Quandt', 'record=1')).toBe(400)
  expect(await ask('Ilse Quandt', Array.from({ length: 101 }, () => `record=${uuidv7()}`).join('&'))).toBe(
    400,
  )
})
