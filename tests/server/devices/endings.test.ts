import sharp from 'sharp'
import { v7 as uuidv7 } from 'uuid'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { GET as changes } from '@/app/api/changes/route'
import { POST as end } from '@/app/api/devices/end/route'
import { GET as devices } from '@/app/api/devices/route'
import { POST as done } from '@/app/api/hand-over/done/route'
import { PUT as handPicture } from '@/app/api/hand-over/pictures/[sha256]/route'
import { POST as lost } from '@/app/api/hand-over/pictures/lost/route'
import { POST as handOver, GET as isEnded } from '@/app/api/hand-over/route'
import { POST as records } from '@/app/api/records/route'
import { POST as admit } from '@/app/api/set-aside/admit/route'
import { GET as showAside } from '@/app/api/set-aside/pictures/[sha256]/route'
import { POST as keepOut } from '@/app/api/set-aside/refuse/route'
import { GET as setAside } from '@/app/api/set-aside/route'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { closeLogs, theLog } from '@/lib/server/database'
import { changeActive, setPassword } from '@/lib/server/people/changes'
import { readEvents } from '@/lib/server/people/events'
import { asStored } from '@/lib/server/people/moment'
import { personOf } from '@/lib/server/people/session'
import { store } from '@/lib/server/people/store'
import { sweepSessions } from '@/lib/server/people/sweepSessions'
import { sha256Of } from '@/lib/server/photos/pictureFiles'
import { heldPicture, noteGone } from '@/lib/server/photos/pictureTable'
import { add, cookiesOf, password, read, send, withFreshData } from '../people/team'
import { pictureOf } from '../photos/somePictures'

withFreshData()
afterEach(closeLogs)

let mara: string
let jonas: string
let manager: string
let phone: string
beforeEach(async () => {
  mara = await add('Mara Otell', 'manager')
  jonas = await add('Jonas Merrill', 'technician')
  manager = await signedIn('Mara Otell')
  phone = await signedIn('Jonas Merrill')
  await changes(fromPhone(read('/api/changes', phone)))
})

const signedIn = async (name: string) => cookiesOf(await signIn(send('/', { body: { name, password } })))
const fromPhone = (request: Request, waiting = 0) => {
  request.headers.set('inchwater-device', 'phone-1')
  request.headers.set('inchwater-waiting', String(waiting))
  request.headers.set('inchwater-build', 'b1')
  return request
}
const maker = (name: string, more: Partial<RecordEnvelope> = {}): RecordEnvelope => ({
  id: uuidv7(),
  kind: 'maker',
  version: 1,
  body: { name },
  saidAt: '2026-02-01T10:00:00.000Z',
  author: jonas,
  device: 'phone-1',
  ...more,
})
const endPhone = () => end(send('/', { cookie: manager, body: { device: 'phone-1', personId: jonas } }))
const hand = (said: readonly unknown[], cookie = phone, sentAt = new Date().toISOString()) =>
  handOver(fromPhone(send('/', { cookie, body: { sentAt, records: said } })))
const sayDone = (cookie = phone) => done(fromPhone(send('/', { cookie, body: {} })))
const value = async (response: Response | Promise<Response>) =>
  ((await (await response).json()) as { value: never }).value
const problem = async (response: Response) =>
  [response.status, ((await response.json()) as { problem: { code: string } }).problem.code] as const
const listed = async () => (await value(setAside(read('/', manager)))) as { record: RecordEnvelope }[]
const admitAll = async (said: readonly { id: string }[]) =>
  value(admit(send('/', { cookie: manager, body: { records: said.map(({ id }) => id) } })))

test('an ended session fetches and sends nothing any more, and says what is to be done', async () => {
  expect((await endPhone()).status).toBe(200)
  expect(await problem(await changes(fromPhone(read('/api/changes', phone))))).toEqual([401, 'device-ended'])
  const body = { sentAt: new Date().toISOString(), records: [maker('Orrinmoor')] }
  expect(await problem(await records(fromPhone(send('/', { cookie: phone, body }))))).toEqual([
    401,
    'device-ended',
  ])
  // Nor without naming the device.
  expect(await problem(await records(send('/', { cookie: phone, body })))).toEqual([401, 'device-ended'])
  expect(await personOf(read('/', phone))).toBeUndefined()
})

test('what waited is set aside: in no log, seen by managers alone, in its order, once', async () => {
  await endPhone()
  const said = [maker('Orrinmoor'), maker('Tessenby'), maker('Larkfell')]
  expect(await value(hand(said.slice(0, 2)))).toEqual({ held: said.slice(0, 2).map(({ id }) => id) })
  // The connection broke: the same again, and the rest.
  expect(await value(hand(said))).toEqual({ held: said.map(({ id }) => id) })
  expect((await theLog().verify()).entries).toBe(0)
  expect((await listed()).map(({ record }) => record)).toEqual(said)
  expect((await setAside(read('/', await signedIn('Jonas Merrill')))).status).toBe(403)
  expect(await value(devices(read('/', manager)))).toMatchObject({
    undecided: 3,
    endings: [{ device: 'phone-1', personId: jonas, endedBy: mara, emptiedAt: null }],
  })
})

test('once the device says that it is empty, its session is gone, and a new sign-in there is as any', async () => {
  await endPhone()
  expect((await sayDone()).status).toBe(200)
  expect(await problem(await hand([maker('Orrinmoor')]))).toEqual([401, 'not-signed-in'])
  const again = await signedIn('Jonas Merrill')
  expect((await changes(fromPhone(read('/api/changes', again)))).status).toBe(200)
  expect(await value(devices(read('/', manager)))).toMatchObject({
    endings: [{ emptiedAt: expect.stringMatching(/^\d{4}-/) }],
  })
})

test('a new sign-in on a device that has not handed over yet hands over first', async () => {
  await endPhone()
  const again = await signedIn('Jonas Merrill')
  expect(await problem(await changes(fromPhone(read('/api/changes', again))))).toEqual([401, 'device-ended'])
  const said = [maker('Orrinmoor')]
  expect(await value(hand(said, again))).toEqual({ held: [said[0]?.id] })
  await sayDone(again)
  expect((await changes(fromPhone(read('/api/changes', again)))).status).toBe(200)
  expect(await personOf(read('/', phone))).toBeUndefined()
})

test('another person’s session hands over nothing of the first one’s, and nobody does where nothing was ended', async () => {
  expect(await problem(await hand([maker('Orrinmoor')]))).toEqual([409, 'nothing-to-hand-over'])
  await endPhone()
  await add('Ilse Quandt', 'dispatcher')
  const ilse = await signedIn('Ilse Quandt')
  expect(await problem(await hand([maker('Orrinmoor')], ilse))).toEqual([409, 'nothing-to-hand-over'])
  expect(await problem(await hand([maker('Orrinmoor')], ''))).toEqual([401, 'not-signed-in'])
  expect(await listed()).toEqual([])
})

test('admitted records go through the one door as their author’s, with their times, and their bytes are kept once', async () => {
  await endPhone()
  const said = [maker('Orrinmoor'), maker('Tessenby')]
  // A clock two hours behind.
  await hand(said, phone, new Date(Date.now() - 2 * 3_600_000).toISOString())
  expect(await admitAll(said)).toMatchObject({ answers: [{ outcome: 'stored' }, { outcome: 'stored' }] })
  const stored = theLog().lookup(said[0]!.id)!
  expect(stored).toMatchObject({ author: jonas, saidAt: said[0]!.saidAt, device: 'phone-1' })
  expect(Math.abs(stored.clockShiftMs - 2 * 3_600_000)).toBeLessThan(5000)
  expect(await listed()).toEqual([])
  const kept = store().database.prepare('SELECT "bytes", "decision" FROM "SetAsideRecord"').all()
  expect(kept).toEqual([
    { bytes: null, decision: 'admitted' },
    { bytes: null, decision: 'admitted' },
  ])
})

test('what the door does not take stays set aside, with the sentence, and can be admitted once the reason is gone', async () => {
  await endPhone()
  const parent = maker('Orrinmoor')
  const child = { ...maker(''), kind: 'withdrawal', body: { record: parent.id, reason: 'Twice on file.' } }
  const wrong = maker('x', { body: { name: 7 } })
  await hand([parent, child, wrong])
  expect(await admitAll([child, wrong])).toMatchObject({
    answers: [
      { id: child.id, outcome: 'waiting for', ids: [parent.id] },
      { id: wrong.id, outcome: 'refused', rule: 'body shape' },
    ],
  })
  expect(await listed()).toHaveLength(3)
  expect(await admitAll([parent, child])).toMatchObject({
    answers: [{ outcome: 'stored' }, { outcome: 'stored' }],
  })
  expect((await listed()).map(({ record }) => record.id)).toEqual([wrong.id])
})

test('a refused record stays out of the log and readable for managers, with who and why', async () => {
  await endPhone()
  const said = maker('Orrinmoor')
  await hand([said])
  const body = { records: [said.id], reason: 'Said after the phone was lost.' }
  expect((await keepOut(send('/', { cookie: manager, body }))).status).toBe(200)
  expect(await listed()).toMatchObject([
    { record: said, refused: { by: mara, reason: 'Said after the phone was lost.' } },
  ])
  expect((await theLog().verify()).entries).toBe(0)
  const empty = await keepOut(send('/', { cookie: manager, body: { ...body, reason: ' ' } }))
  expect([empty.status, await empty.text()]).toEqual([400, expect.stringContaining('Say why they stay out')])
})

test('admitting again after a crash between the log and the mark stores nothing twice', async () => {
  await endPhone()
  const said = [maker('Orrinmoor')]
  await hand(said)
  const sentAt = new Date().toISOString()
  await theLog().appendRecords({ sentAt, records: said }, { id: jonas, role: 'technician' })
  expect(await admitAll(said)).toMatchObject({ answers: [{ outcome: 'already stored' }] })
  expect(await listed()).toEqual([])
  expect((await theLog().verify()).entries).toBe(1)
})

test('what the log has already, because only the answer to it was lost, is not set aside', async () => {
  const said = [maker('Orrinmoor')]
  const sentAt = new Date().toISOString()
  await records(fromPhone(send('/', { cookie: phone, body: { sentAt, records: said } })))
  await endPhone()
  expect(await value(hand(said))).toEqual({ held: [said[0]?.id] })
  expect(await listed()).toEqual([])
})

test('taking somebody off the team ends their devices too, and what waited there is set aside', async () => {
  changeActive(store().database, jonas, false, mara, new Date())
  expect(await problem(await changes(fromPhone(read('/api/changes', phone))))).toEqual([401, 'device-ended'])
  const said = [maker('Orrinmoor')]
  await hand(said)
  await sayDone()
  expect(await admitAll(said)).toMatchObject({ answers: [{ outcome: 'stored' }] })
})

test('an ended session that has not handed over outlasts a new password and a long sleep', async () => {
  await endPhone()
  setPassword(store().database, jonas, 'x', { kind: 'password changed', byId: jonas }, new Date())
  sweepSessions(store().database, new Date(Date.now() + 60 * 24 * 3_600_000))
  expect(await value(hand([maker('Orrinmoor')]))).toMatchObject({ held: [expect.any(String)] })
})

const sessionsOfJonas = () =>
  store()
    .database.prepare('SELECT "expiresAt" < ? AS "ranOut" FROM "Session" WHERE "personId" = ?')
    .all(asStored(new Date()), jonas)
/** As 400 days without use leave the phone's session. */
const runOut = () =>
  store()
    .database.prepare('UPDATE "Session" SET "expiresAt" = ? WHERE "personId" = ?')
    .run(asStored(new Date(Date.now() - 1000)), jonas)

test('a session that has run out is swept, ended or not, and what waits is handed over by signing in again', async () => {
  await endPhone()
  runOut()
  expect(sessionsOfJonas()).toEqual([{ ranOut: 1 }])
  sweepSessions(store().database, new Date())
  expect(sessionsOfJonas()).toEqual([])
  expect(await problem(await hand([maker('Orrinmoor')]))).toEqual([401, 'not-signed-in'])
  const again = await signedIn('Jonas Merrill')
  expect(await value(hand([maker('Orrinmoor')], again))).toMatchObject({ held: [expect.any(String)] })
})

test('a session that has run out lets nobody in before it is swept, and hands nothing over', async () => {
  runOut()
  expect(await personOf(read('/', phone))).toBeUndefined()
  phone = await signedIn('Jonas Merrill')
  await changes(fromPhone(read('/api/changes', phone)))
  await endPhone()
  runOut()
  expect(await problem(await hand([maker('Orrinmoor')]))).toEqual([401, 'not-signed-in'])
})

test('a sweep leaves sessions in use, and takes idle ones that no manager has ended', async () => {
  sweepSessions(store().database, new Date())
  expect(sessionsOfJonas()).toEqual([{ ranOut: 0 }])
  sweepSessions(store().database, new Date(Date.now() + 60 * 24 * 3_600_000))
  expect(sessionsOfJonas()).toEqual([])
})

test('ending is written down; ending twice is ending once; a device that never was is named', async () => {
  await endPhone()
  await endPhone()
  await sayDone()
  const events = readEvents(store().database, 10).filter(({ kind }) => kind.startsWith('device'))
  expect(events.map(({ kind, byId }) => [kind, byId])).toEqual([
    ['device emptied', null],
    ['device ended', mara],
  ])
  const unknown = await end(send('/', { cookie: manager, body: { device: 'x', personId: jonas } }))
  expect(await problem(unknown)).toEqual([404, 'no-such-device'])
})

test('changing and refusing what is no hand-over changes nothing', async () => {
  await endPhone()
  for (const body of [{}, { sentAt: 'now', records: [maker('x')] }, { sentAt: new Date(), records: [] }, [1]])
    expect((await handOver(fromPhone(send('/', { cookie: phone, body })))).status).toBe(400)
  expect(await listed()).toEqual([])
})

/** A photo of a furnace that is in the log. */
async function photo(sha256: string, bytes: number): Promise<RecordEnvelope> {
  const furnace = { siteLabel: 'House on the hill', model: 'QX-80', fuel: 'natural gas' }
  const onFile = { ...maker(''), kind: 'furnace', body: furnace }
  const sentAt = new Date().toISOString()
  await theLog().appendRecords({ sentAt, records: [onFile] }, { id: jonas, role: 'technician' })
  const body = { sha256, mediaType: 'image/png', width: 60, height: 40, bytes, shows: 'other' }
  return { ...maker(''), kind: 'photo', body: { ...body, furnaceId: onFile.id } }
}
const giveBytes = (sha256: string, bytes: Buffer, cookie = phone) => {
  const request = fromPhone(send('/', { cookie }))
  const sent = new Request(request.url, {
    method: 'PUT',
    headers: request.headers,
    body: new Uint8Array(bytes),
  })
  return handPicture(sent, { params: Promise.resolve({ sha256 }) })
}
const sayLost = (sha256: string) => lost(fromPhone(send('/', { cookie: phone, body: { sha256 } })))
const shown = (sha256: string, cookie: string) =>
  showAside(read('/', cookie), { params: Promise.resolve({ sha256 }) })
const setAsidePictures = () =>
  store().database.prepare<[], string>('SELECT "sha256" FROM "SetAsidePicture"').pluck().all()

test('a picture that waited is set aside with its photo: seen by managers alone, kept once the photo is admitted', async () => {
  await endPhone()
  const bytes = await pictureOf('png')
  const sha256 = sha256Of(bytes)
  const said = await photo(sha256, bytes.length)
  await hand([said])
  expect((await giveBytes(sha256, bytes)).status).toBe(200)
  expect((await giveBytes(sha256, bytes)).status).toBe(200)
  expect(heldPicture(store().database, sha256)).toBeUndefined()
  expect((await shown(sha256, await signedIn('Jonas Merrill'))).status).toBe(403)
  const seen = await shown(sha256, manager)
  expect([seen.status, seen.headers.get('content-type'), seen.headers.get('x-content-type-options')]).toEqual(
    [200, 'image/png', 'nosniff'],
  )
  await sayDone()
  expect(await admitAll([said])).toMatchObject({ answers: [{ outcome: 'stored' }] })
  expect(heldPicture(store().database, sha256)).toMatchObject({ sha256 })
  expect(setAsidePictures()).toEqual([])
})

test('a picture whose photo the log has already is kept at once: its hash says that it is what was meant then', async () => {
  const bytes = await pictureOf('png', 60, 40, 2)
  const sha256 = sha256Of(bytes)
  const body = { sentAt: new Date().toISOString(), records: [await photo(sha256, bytes.length)] }
  await records(fromPhone(send('/', { cookie: phone, body })))
  await endPhone()
  expect((await giveBytes(sha256, bytes)).status).toBe(200)
  expect(heldPicture(store().database, sha256)).toMatchObject({ sha256 })
})

test('a picture of an unsaved form is forgotten when the device is empty; damaged bytes are refused', async () => {
  await endPhone()
  const bytes = await pictureOf('png', 60, 40, 3)
  const sha256 = sha256Of(bytes)
  expect(await problem(await giveBytes(sha256, Buffer.from('other')))).toEqual([400, 'other-bytes'])
  expect(await problem(await giveBytes('no hash', bytes))).toEqual([400, 'no-hash'])
  await giveBytes(sha256, bytes)
  expect(setAsidePictures()).toEqual([sha256])
  await sayDone()
  expect(setAsidePictures()).toEqual([])
})

test('a picture that was damaged on the device is written down once as lost, for the managers to read with its photo', async () => {
  await endPhone()
  const bytes = await pictureOf('png', 60, 40, 4)
  const sha256 = sha256Of(bytes)
  const said = await photo(sha256, bytes.length)
  await hand([maker('Orrinmoor'), said])
  for (const _ of ['said', 'said again']) expect((await sayLost(sha256)).status).toBe(200)
  expect(await listed()).toEqual([
    expect.not.objectContaining({ pictureLost: true }),
    expect.objectContaining({ record: said, pictureLost: true }),
  ])
  await sayDone()
  expect(await value(devices(read('/', manager)))).toMatchObject({ endings: [{ picturesLost: 1 }] })
  const written = readEvents(store().database, 10).filter(({ kind }) => kind === 'picture lost')
  expect(written).toMatchObject([{ personId: jonas, byId: null, detail: { picture: sha256 } }])
})

test('a picture that came from elsewhere since is lost no longer, neither with its photo nor with the device', async () => {
  await endPhone()
  const bytes = await pictureOf('png', 60, 40, 7)
  const sha256 = sha256Of(bytes)
  const said = await photo(sha256, bytes.length)
  await hand([said])
  await sayLost(sha256)
  const lost = async () => ({ listed: await listed(), devices: await value(devices(read('/', manager))) })
  expect(await lost()).toMatchObject({
    listed: [{ pictureLost: true }],
    devices: { endings: [{ picturesLost: 1 }] },
  })
  // Set aside from another page of that person, then kept with its photo.
  await giveBytes(sha256, bytes)
  for (const step of ['set aside', 'held']) {
    if (step === 'held') await admitAll([said])
    expect(await lost()).toMatchObject({ devices: { endings: [{ picturesLost: 0 }] } })
    expect(JSON.stringify(await listed())).not.toContain('pictureLost')
  }
  expect(heldPicture(store().database, sha256)).toMatchObject({ sha256 })
  // Once it is gone again, it is lost as before.
  noteGone(store().database, sha256)
  expect(await lost()).toMatchObject({ devices: { endings: [{ picturesLost: 1 }] } })
})

test('no picture is lost that the server has, and none of a device that was not ended', async () => {
  const bytes = await pictureOf('png', 60, 40, 5)
  const sha256 = sha256Of(bytes)
  expect(await problem(await sayLost(sha256))).toEqual([409, 'nothing-to-hand-over'])
  await endPhone()
  await giveBytes(sha256, bytes)
  expect((await sayLost(sha256)).status).toBe(200)
  expect((await sayLost('no hash')).status).toBe(400)
  expect(await value(devices(read('/', manager)))).toMatchObject({ endings: [{ picturesLost: 0 }] })
})

test('a picture that the server had no time for is asked for again, and one that is set aside stays there for the next admission', async () => {
  await endPhone()
  const bytes = await pictureOf('png', 60, 40, 6)
  const sha256 = sha256Of(bytes)
  const said = await photo(sha256, bytes.length)
  const late = maker('Orrinmoor')
  await hand([said, late])
  expect((await giveBytes(sha256, bytes)).status).toBe(200)
  const outOfTime = () =>
    vi.spyOn(sharp.prototype, 'toBuffer').mockRejectedValueOnce(new Error('timeout: 12% complete'))
  outOfTime()
  await admitAll([said])
  expect([setAsidePictures(), heldPicture(store().database, sha256)]).toEqual([[sha256], undefined])
  // The photo is in the log by now, so the bytes are drawn when they are handed over.
  outOfTime()
  expect(await problem(await giveBytes(sha256, bytes))).toEqual([503, 'try-again'])
  await admitAll([late])
  expect(setAsidePictures()).toEqual([])
  expect(heldPicture(store().database, sha256)).toMatchObject({ sha256 })
})

test('a picture that is set aside and that the log names outlasts the end of the hand-over', async () => {
  await endPhone()
  const [bytes, unnamed] = await Promise.all([7, 8].map((seed) => pictureOf('png', 60, 40, seed)))
  const sha256 = sha256Of(bytes!)
  const said = await photo(sha256, bytes!.length)
  await hand([said])
  for (const each of [bytes!, unnamed!]) await giveBytes(sha256Of(each), each)
  // Admitted, and broken off before its picture was kept.
  vi.spyOn(sharp.prototype, 'toBuffer').mockRejectedValueOnce(new Error('timeout: 12% complete'))
  await admitAll([said])
  await sayDone()
  expect(setAsidePictures()).toEqual([sha256])
  await admitAll([said])
  expect(heldPicture(store().database, sha256)).toMatchObject({ sha256 })
})

test('a device is told its key with the log, by which it hands over for its person though somebody else is signed in there', async () => {
  const told = async (cookie: string) =>
    (await value(changes(fromPhone(read('/api/changes', cookie))))) as {
      handOverKey?: string
      othersEnded?: true
    }
  const { handOverKey: key = '', othersEnded } = await told(phone)
  expect([key, othersEnded]).toEqual([expect.stringMatching(/^[0-9a-f]{64}$/), undefined])
  expect(await value(changes(read('/api/changes', phone)))).not.toHaveProperty('handOverKey')
  await add('Ilse Quandt', 'dispatcher')
  const ilse = await signedIn('Ilse Quandt')
  const ofIlse = (await told(ilse)).handOverKey!
  expect(ofIlse).not.toBe(key)
  const byKey = (request: Request, shown: string, personId = jonas) => {
    fromPhone(request)
    request.headers.set('inchwater-person', personId)
    request.headers.set('inchwater-hand-over-key', shown)
    return request
  }
  const ended = (shown: string, personId?: string) => value(isEnded(byKey(read('/'), shown, personId)))
  expect([await ended(key), (await told(ilse)).othersEnded]).toEqual([false, undefined])
  await endPhone()
  expect((await told(ilse)).othersEnded).toBe(true)
  expect(await ended(key)).toBe(true)
  const body = { sentAt: new Date().toISOString(), records: [maker('Orrinmoor')] }
  // Another's key, another's name, a key that is none, and another device prove nothing, whoever is signed in.
  for (const [shown, personId] of [
    [ofIlse, jonas],
    [key, mara],
    ['', jonas],
    ['zz', jonas],
  ] as const) {
    expect(await ended(shown, personId)).toBe(false)
    const tried = await handOver(byKey(send('/', { cookie: phone, body }), shown, personId))
    expect(await problem(tried)).toEqual([409, 'nothing-to-hand-over'])
  }
  const elsewhere = byKey(read('/'), key)
  elsewhere.headers.set('inchwater-device', 'phone-2')
  expect(await value(isEnded(elsewhere))).toBe(false)
  expect((await handOver(byKey(send('/', { body }), key))).status).toBe(200)
  expect(await listed()).toMatchObject([{ record: body.records[0], personId: jonas }])
  expect((await done(byKey(send('/', { body: {} }), key))).status).toBe(200)
  expect([await ended(key), (await told(ilse)).othersEnded]).toEqual([false, undefined])
})
