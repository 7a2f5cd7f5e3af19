import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { openDB } from 'idb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { POST as signIn } from '@/app/api/auth/sign-in/route'
import { POST as end } from '@/app/api/devices/end/route'
import { type Device, openDevice } from '@/lib/device/device'
import { hashOf } from '@/lib/device/picture/hashOf'
import { closeLogs, theLog } from '@/lib/server/database'
import { listEndings } from '@/lib/server/devices/endings'
import { listSetAside } from '@/lib/server/devices/setAside'
import { store } from '@/lib/server/people/store'
import { add, cookiesOf, password, send, withFreshData } from '../server/people/team'
import { pictureOf } from '../server/photos/somePictures'
import { appHandlers } from '../server/whole/appFiles'

withFreshData()
afterEach(closeLogs)

/** One phone at the door of the real server: its databases, and the one session that its browser holds. */
let cookie = ''
let broken: string | undefined
/** For whom nothing that is handed over arrives. */
let brokenFor: string | undefined
/** What another tab of the phone has just done too. */
let doneTwice: string | undefined
/** What the phone sent to hand over, and by whose session. */
let handed: [route: string, cookie: string][] = []
const people: Record<string, string> = {}
let manager = ''

beforeEach(async () => {
  globalThis.indexedDB = new IDBFactory()
  broken = undefined
  brokenFor = undefined
  doneTwice = undefined
  handed = []
  const handlers = await appHandlers()
  people.mara = await add('Mara Otell', 'manager')
  people.jonas = await add('Jonas Merrill', 'technician')
  people.ilse = await add('Ilse Quandt', 'dispatcher')
  manager = await signedIn('Mara Otell')
  vi.stubGlobal('fetch', async (at: string, init: RequestInit = {}) => {
    const request = new Request(`http://localhost${at}`, init)
    request.headers.set('origin', 'http://localhost')
    if (init.credentials !== 'omit') request.headers.set('cookie', cookie)
    const { pathname } = new URL(request.url)
    const sha256 = /[0-9a-f]{64}/.exec(pathname)?.[0] ?? ''
    const route = `${request.method} ${sha256 === '' ? pathname : pathname.replace(sha256, '[sha256]')}`
    if (route === broken) throw new TypeError('Failed to fetch')
    if (brokenFor !== undefined && request.headers.get('inchwater-person') === brokenFor)
      return new Response('Bad gateway', { status: 502 })
    if (pathname.startsWith('/api/hand-over')) handed.push([route, request.headers.get('cookie') ?? ''])
    if (route === doneTwice)
      await handlers.get(route)!.handle(request.clone(), { params: Promise.resolve({ sha256 }) })
    return handlers.get(route)!.handle(request, { params: Promise.resolve({ sha256 }) })
  })
  return () => vi.unstubAllGlobals()
})

const signedIn = async (name: string) => cookiesOf(await signIn(send('/', { body: { name, password } })))

/** Somebody signs in on the phone and opens it. */
async function opened(name: string, id: string, role: 'technician' | 'dispatcher'): Promise<Device> {
  cookie = await signedIn(name)
  const device = await openDevice({ me: { id, name, role }, deviceId: 'phone-1', now: () => new Date() })
  await device.sync()
  expect(device.state().trouble).toBeUndefined()
  return device
}
const openedByJonas = () => opened('Jonas Merrill', people.jonas!, 'technician')
const openedByIlse = () => opened('Ilse Quandt', people.ilse!, 'dispatcher')
const endPhoneOf = (personId: string) =>
  end(send('/', { cookie: manager, body: { device: 'phone-1', personId } }))
const aside = () => listSetAside(store().database)

/** How much of Jonas's is on the phone. */
async function ofJonas(): Promise<number> {
  let count = 0
  for (const name of [`inchwater file ${people.jonas} technician`, `inchwater own ${people.jonas}`]) {
    const database = await openDB(name)
    for (const each of database.objectStoreNames) count += await database.count(each)
    database.close()
  }
  return count
}

/** Jonas records something without a signal and leaves the phone to somebody else. */
async function leftByJonas(): Promise<string> {
  const device = await openedByJonas()
  await device.add('maker', { name: 'Orrinmoor' })
  await device.sync()
  broken = 'POST /api/records'
  await device.add('maker', { name: 'Tessenby' })
  await device.writeDraft('report', { asWritten: '.58 WC' })
  const bytes = new Uint8Array(await pictureOf('jpeg'))
  const sha256 = await hashOf(bytes)
  const picture = { sha256, mediaType: 'image/jpeg', width: 60, height: 40, bytes: bytes.length } as const
  await device.keepPicture({ ...picture, blob: new Blob([bytes], { type: 'image/jpeg' }) })
  const [furnaceId] = await device.addAll([
    { kind: 'furnace', body: { siteLabel: 'Mill Row 12', model: 'LF2-080-B', fuel: 'natural gas' } },
  ])
  await device.add('photo', { ...picture, shows: 'other', furnaceId })
  await device.sync()
  device.close()
  broken = undefined
  return sha256
}

test('an ended phone hands over and empties what its person left, while somebody else is signed in, and not by their session', async () => {
  const sha256 = await leftByJonas()
  await endPhoneOf(people.jonas!)
  const ilse = await openedByIlse()
  expect(aside().map(({ record, personId }) => [record.kind, record.author, personId])).toEqual(
    ['maker', 'furnace', 'photo'].map((kind) => [kind, people.jonas, people.jonas]),
  )
  expect(store().database.prepare('SELECT "sha256" FROM "SetAsidePicture"').pluck().all()).toEqual([sha256])
  expect(listEndings(store().database)).toMatchObject([
    { personId: people.jonas, emptiedAt: expect.any(String) },
  ])
  expect(await ofJonas()).toBe(0)
  expect(new Set(handed.map(([, by]) => by))).toEqual(new Set(['']))
  // Nothing of it came to the one who is signed in, and nothing into the log.
  expect([...ilse.state().file.makers.values()].map(({ body }) => body.name)).toEqual(['Orrinmoor'])
  expect(ilse.state()).toMatchObject({ waiting: [], refused: [], pictures: [], trouble: undefined })
  expect((await theLog().verify()).entries).toBe(1)
  const asked = handed.length
  await ilse.sync()
  expect(handed.length).toBe(asked)
  ilse.close()
})

test('what somebody left whose phone was not ended stays, also where another’s on the same phone was', async () => {
  await leftByJonas()
  const before = await ofJonas()
  const ilse = await openedByIlse()
  expect(handed).toEqual([])
  ilse.close()
  await endPhoneOf(people.ilse!)
  const oskar = await add('Oskar Fenn', 'technician')
  const third = await opened('Oskar Fenn', oskar, 'technician')
  expect(await ofJonas()).toBe(before)
  expect(aside()).toEqual([])
  expect(listEndings(store().database)).toMatchObject([
    { personId: people.ilse, emptiedAt: expect.any(String) },
  ])
  third.close()
  const jonas = await openedByJonas()
  expect(jonas.state().waiting).toEqual([])
  expect((await theLog().verify()).entries).toBe(4)
  jonas.close()
})

test.each([
  'GET /api/hand-over',
  'POST /api/hand-over',
  'PUT /api/hand-over/pictures/[sha256]',
  'POST /api/hand-over/done',
])(
  'broken off at %s it is begun again with the next contact, and nothing is lost or said twice',
  async (route) => {
    await leftByJonas()
    await endPhoneOf(people.jonas!)
    broken = route
    cookie = await signedIn('Ilse Quandt')
    const me = { id: people.ilse!, name: 'Ilse Quandt', role: 'dispatcher' } as const
    const ilse = await openDevice({ me, deviceId: 'phone-1', now: () => new Date() })
    await ilse.sync()
    expect(ilse.state().trouble?.why).toBe('no signal')
    expect(listEndings(store().database)).toMatchObject([{ emptiedAt: null }])
    broken = undefined
    await ilse.sync()
    expect(ilse.state().trouble).toBeUndefined()
    expect(aside()).toHaveLength(3)
    expect(await ofJonas()).toBe(0)
    expect(listEndings(store().database)).toMatchObject([{ emptiedAt: expect.any(String) }])
    ilse.close()
  },
)

test('with a key that the server’s secret does not fit, all stays until its person signs in there', async () => {
  await leftByJonas()
  const file = await openDB(`inchwater file ${people.jonas} technician`)
  await file.put('facts', 'f'.repeat(64), 'handOverKey')
  file.close()
  await endPhoneOf(people.jonas!)
  const before = await ofJonas()
  const ilse = await openedByIlse()
  expect([await ofJonas(), aside()]).toEqual([before, []])
  ilse.close()
  cookie = await signedIn('Jonas Merrill')
  const me = { id: people.jonas!, name: 'Jonas Merrill', role: 'technician' } as const
  const jonas = await openDevice({ me, deviceId: 'phone-1', now: () => new Date() })
  await jonas.sync()
  expect(jonas.state().ended).toBe('emptied')
  expect(aside()).toHaveLength(3)
  jonas.close()
})

test('what fails for one person keeps nobody else’s on the phone, and is told once all had their turn', async () => {
  await leftByJonas()
  const oskar = await add('Oskar Fenn', 'technician')
  const third = await opened('Oskar Fenn', oskar, 'technician')
  third.close()
  for (const personId of [people.jonas!, oskar]) await endPhoneOf(personId)
  expect((await indexedDB.databases())[0]?.name).toContain(people.jonas)
  brokenFor = people.jonas
  cookie = await signedIn('Ilse Quandt')
  const me = { id: people.ilse!, name: 'Ilse Quandt', role: 'dispatcher' } as const
  const ilse = await openDevice({ me, deviceId: 'phone-1', now: () => new Date() })
  await ilse.sync()
  const emptied = () =>
    listEndings(store().database).flatMap(({ personId, emptiedAt }) => (emptiedAt === null ? [] : [personId]))
  expect(emptied()).toEqual([oskar])
  expect(ilse.state().trouble?.why).toBe('server trouble')
  brokenFor = undefined
  await ilse.sync()
  expect(emptied().sort()).toEqual([oskar, people.jonas].sort())
  expect(ilse.state().trouble).toBeUndefined()
  ilse.close()
})

test('where another tab of the phone came to the end of it first, it is done, and no trouble', async () => {
  await leftByJonas()
  await endPhoneOf(people.jonas!)
  doneTwice = 'POST /api/hand-over/done'
  const ilse = await openedByIlse()
  expect(handed.map(([route]) => route).slice(-2)).toEqual(['POST /api/hand-over/done', 'GET /api/hand-over'])
  // The key alone: it goes with the tab that is told so.
  expect(await ofJonas()).toBe(1)
  await ilse.sync()
  expect(ilse.state().trouble).toBeUndefined()
  ilse.close()
})

test('a page of the ended person that stayed open lets go of the file and keeps nothing new', async () => {
  const jonas = await openedByJonas()
  await jonas.add('maker', { name: 'Orrinmoor' })
  await jonas.sync()
  await endPhoneOf(people.jonas!)
  const ilse = await openedByIlse()
  expect(listEndings(store().database)).toMatchObject([{ emptiedAt: expect.any(String) }])
  expect(jonas.state().file.makers.size).toBe(1)
  await expect(jonas.add('maker', { name: 'Tessenby' })).rejects.toThrow('signed this device out')
  await jonas.writeDraft('report', { asWritten: '.58 WC' })
  await jonas.sync()
  expect(jonas.state()).toMatchObject({ ended: 'emptied', waiting: [], arrived: 0 })
  expect(jonas.state().file.makers.size).toBe(0)
  expect(await ofJonas()).toBe(0)
  jonas.close()
  ilse.close()
})

test('a page of the ended person that stayed open lets go of the file at its next try, also without a signal', async () => {
  const jonas = await openedByJonas()
  await jonas.add('maker', { name: 'Orrinmoor' })
  await jonas.sync()
  await endPhoneOf(people.jonas!)
  const ilse = await openedByIlse()
  broken = 'GET /api/auth/me'
  await jonas.sync()
  expect(jonas.state()).toMatchObject({ ended: 'emptied', arrived: 0 })
  expect(jonas.state().file.makers.size).toBe(0)
  expect(await ofJonas()).toBe(0)
  jonas.close()
  ilse.close()
})
