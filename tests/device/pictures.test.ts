import 'fake-indexeddb/auto'
import { createHash } from 'node:crypto'
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb'
import { beforeEach, expect, test, vi } from 'vitest'
import { type Device, openDevice } from '@/lib/device/device'
import type { PreparedPicture } from '@/lib/device/picture/prepare'
import type { RecordEnvelope, StoredRecord } from '@/lib/records/envelope'
import { pictureState } from '@/lib/records/view/photos'

/** A server of a few lines that keeps records and pictures, and says of each picture once that it holds it. */
class PretendServer {
  log: StoredRecord[] = []
  pictures = new Map<string, Uint8Array>()
  news: { sha256: string; held: boolean }[] = []
  withheld = new Set<string>()
  reachable = true
  refuse: { status: number; code: string } | undefined
  /** What came, in its order. */
  came: string[] = []
  loseNextAnswer = false
  /** What happens on the server once it has taken the next picture. */
  onceTaken: (() => void) | undefined
  /** How often the server was put back to a back-up. */
  restored = 0

  handle = async (input: string | URL | Request, init?: RequestInit): Promise<Response> => {
    const url = new URL(String(input), 'http://localhost')
    if (!this.reachable) throw new TypeError('Failed to fetch')
    const answer = (value: unknown) => Response.json({ ok: true, value })
    if (url.pathname === '/api/auth/me') return answer({ id: 'p1', name: 'Wenna', role: 'technician' })
    if (url.pathname === '/api/people') return answer([])
    if (url.pathname === '/api/records')
      return answer({ answers: this.take(JSON.parse(String(init?.body)).records) })
    if (url.pathname.startsWith('/api/photos/')) return this.put(url.pathname.slice(12), init?.body as Blob)
    const after = Number(url.searchParams.get('after'))
    const from = Number(url.searchParams.get('pictures'))
    const [mark, sent] = [String(this.restored), url.searchParams.get('mark')]
    if (sent !== null && sent !== mark) return answer({ records: [], next: 0, more: true, anew: true })
    return answer({
      mark,
      records: this.log.filter(({ seq }) => seq > after),
      next: this.log.length,
      more: false,
      pictures: this.newsSince(from, url.searchParams.get('picturesMark')),
    })
  }

  private newsSince(from: number, sent: string | null) {
    const markAt = (number: number) =>
      createHash('sha256')
        .update(JSON.stringify(this.news.slice(0, number)))
        .digest('hex')
    const [next, mark] = [this.news.length, markAt(this.news.length)]
    return from > next || (sent !== null && sent !== markAt(from))
      ? { news: this.news, next, mark, anew: true }
      : { news: this.news.slice(from), next, mark }
  }

  add(record: RecordEnvelope): number {
    this.log.push({ ...record, seq: this.log.length + 1, receivedAt: record.saidAt, clockShiftMs: 0 })
    return this.log.length
  }

  private take(records: RecordEnvelope[]) {
    return records.map((record) => {
      this.came.push(record.kind)
      const known = this.log.find(({ id }) => id === record.id)
      if (known !== undefined) return { id: record.id, outcome: 'already stored', seq: known.seq }
      return { id: record.id, outcome: 'stored', seq: this.add(record) }
    })
  }

  private async put(sha256: string, blob: Blob): Promise<Response> {
    this.came.push('picture')
    const refuse = (status: number, code: string) =>
      Response.json({ ok: false, problem: { code, message: 'A sentence.' } }, { status })
    if (this.refuse !== undefined) return refuse(this.refuse.status, this.refuse.code)
    if (this.withheld.has(sha256)) return refuse(410, 'withheld')
    if (!this.log.some(({ body }) => body.sha256 === sha256)) return refuse(409, 'record-first')
    const bytes = new Uint8Array(await blob.arrayBuffer())
    expect(createHash('sha256').update(bytes).digest('hex')).toBe(sha256)
    if (!this.pictures.has(sha256)) this.news.push({ sha256, held: true })
    this.pictures.set(sha256, bytes)
    this.onceTaken?.()
    this.onceTaken = undefined
    if (this.loseNextAnswer) {
      this.loseNextAnswer = false
      throw new TypeError('Failed to fetch')
    }
    return Response.json({ ok: true, value: { sha256 } })
  }
}

const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
let server: PretendServer
let clock: Date
const open = (): Promise<Device> => openDevice({ me, deviceId: 'd1', now: () => clock })

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  server = new PretendServer()
  clock = new Date('2026-02-01T10:00:00Z')
  vi.stubGlobal('fetch', server.handle)
  return () => vi.unstubAllGlobals()
})

const furnaceId = '01920000-0000-7000-8000-000000000009'
const picture = (text: string): PreparedPicture => ({
  blob: new Blob([text], { type: 'image/jpeg' }),
  sha256: createHash('sha256').update(text).digest('hex'),
  mediaType: 'image/jpeg',
  width: 40,
  height: 30,
  bytes: text.length,
})
const bodyOf = ({ blob: _, ...taken }: PreparedPicture) => ({ ...taken, shows: 'other', furnaceId })
const stateOf = (device: Device, { sha256 }: PreparedPicture) => pictureState(device.state().file, sha256)
const keptOn = (device: Device) => device.state().pictures.map(({ sha256 }) => sha256)

test('a picture is sent after its record, and the device knows at once that the server holds it', async () => {
  const device = await open()
  const one = picture('one')
  expect(await device.keepPicture(one)).toMatchObject({ ok: true })
  await device.sync()
  expect(server.came).toEqual([])
  await device.add('photo', bodyOf(one))
  expect(stateOf(device, one)).toBe('not here yet')
  await device.sync()
  expect(server.came).toEqual(['photo', 'picture'])
  expect(stateOf(device, one)).toBe('held')
  await device.sync()
  expect(server.came).toHaveLength(2)
  device.close()
})

test('without a signal pictures wait through closing, and arrive once, in their order', async () => {
  server.reachable = false
  const first = await open()
  const three = ['a', 'b', 'c'].map(picture)
  for (const each of three) {
    clock = new Date(clock.getTime() + 1000)
    await first.keepPicture(each)
    await first.add('photo', bodyOf(each))
  }
  await first.sync()
  first.close()
  server.reachable = true
  const second = await open()
  expect(await (await second.readPicture(three[1]!.sha256))?.text()).toBe('b')
  await second.sync()
  expect([...server.pictures.values()].map((bytes) => new TextDecoder().decode(bytes))).toEqual([
    'a',
    'b',
    'c',
  ])
  expect(three.map((each) => stateOf(second, each))).toEqual(['held', 'held', 'held'])
  second.close()
})

test('an answer lost on the way back, and a signal lost between record and picture, lose and double nothing', async () => {
  const device = await open()
  const one = picture('one')
  await device.keepPicture(one)
  server.loseNextAnswer = true
  await device.add('photo', bodyOf(one))
  await device.sync()
  await device.sync()
  expect(server.news).toHaveLength(1)
  expect(stateOf(device, one)).toBe('held')
  expect(device.state().trouble).toBeUndefined()
  device.close()
})

test('what the server refuses for good is kept with its sentence, holds up no other, and can be tried again or dropped', async () => {
  const device = await open()
  const [bad, good] = [picture('bad'), picture('good')]
  await device.keepPicture(bad)
  server.refuse = { status: 422, code: 'more-than-a-picture' }
  await device.add('photo', bodyOf(bad))
  await device.sync()
  expect(device.state().pictures).toMatchObject([{ sha256: bad.sha256, refusal: 'A sentence.', named: true }])
  server.refuse = undefined
  await device.keepPicture(good)
  await device.add('photo', bodyOf(good))
  await device.sync()
  expect([stateOf(device, bad), stateOf(device, good)]).toEqual(['not here yet', 'held'])
  await device.sendPictureAgain(bad.sha256)
  expect(stateOf(device, bad)).toBe('held')
  await device.dropPicture(bad.sha256)
  expect(keptOn(device)).toEqual([good.sha256])
  device.close()
})

test('a picture that the server has no time for stays to be sent again, is told as trouble, and holds up no other', async () => {
  const device = await open()
  const [slow, next] = [picture('slow'), picture('next')]
  server.refuse = { status: 503, code: 'try-again' }
  for (const each of [slow, next]) {
    clock = new Date(clock.getTime() + 1000)
    await device.keepPicture(each)
    await device.add('photo', bodyOf(each))
  }
  server.came = []
  await device.sync()
  expect(server.came.slice(-2)).toEqual(['picture', 'picture'])
  expect(device.state().pictures.map(({ refusal }) => refusal)).toEqual([undefined, undefined])
  expect(device.state().trouble).toEqual({ ok: false, why: 'server trouble', message: 'A sentence.' })
  server.refuse = undefined
  await device.sync()
  expect(device.state().trouble).toBeUndefined()
  expect([stateOf(device, slow), stateOf(device, next)]).toEqual(['held', 'held'])
  device.close()
})

test('a device drops a picture that was withheld at its next contact, also one that it had not sent', async () => {
  const device = await open()
  const one = picture('one')
  await device.keepPicture(one)
  const [photoId] = [await device.add('photo', bodyOf(one))]
  await device.sync()
  expect(keptOn(device)).toEqual([one.sha256])
  server.withheld.add(one.sha256)
  server.add({
    id: '01940000-0000-7000-8000-000000000001',
    kind: 'withholding',
    version: 1,
    body: { record: photoId, fields: ['picture'], reason: 'A child is in it.' },
    saidAt: clock.toISOString(),
    author: 'p2',
    device: 'd2',
  })
  await device.sync()
  expect(stateOf(device, one)).toBe('withheld')
  expect(keptOn(device)).toEqual([])
  expect(await device.readPicture(one.sha256)).toBeUndefined()
  // Taken from another device before that device heard of it:
  await device.keepPicture(one)
  await device.add('photo', bodyOf(one))
  await device.sync()
  expect(keptOn(device)).toEqual([])
  device.close()
})

test('with no room left the picture is refused in a sentence, copies that the server holds make room first, and no record is lost', async () => {
  const device = await open()
  const [old, next] = [picture('old'), picture('next')]
  await device.keepPicture(old)
  await device.add('photo', bodyOf(old))
  await device.sync()
  const put = IDBObjectStore.prototype.put
  const full = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
    this: IDBObjectStore,
    ...args
  ) {
    if (this.name !== 'pictureBytes') return put.apply(this, args)
    throw new DOMException('The quota has been exceeded.', 'QuotaExceededError')
  })
  expect(await device.keepPicture(next)).toMatchObject({
    ok: false,
    problem: { code: 'no-room', message: expect.stringContaining('save the record without it') },
  })
  expect(keptOn(device)).toEqual([])
  await device.add('maker', { name: 'Orrinmoor' })
  await device.sync()
  expect(server.came.at(-1)).toBe('maker')
  full.mockRestore()
  expect(await device.keepPicture(next)).toMatchObject({ ok: true })
  device.close()
})

test('the newest forty copies stay for a place without a signal; what no form and no record names goes after a month', async () => {
  const device = await open()
  const many = Array.from({ length: 42 }, (_, at) => picture(`number ${at}`))
  for (const each of many) {
    clock = new Date(clock.getTime() + 1000)
    await device.keepPicture(each)
  }
  await device.addAll(many.map((each) => ({ kind: 'photo', body: bodyOf(each) })))
  const draft = picture('of a form that was left')
  clock = new Date(clock.getTime() + 1000)
  await device.keepPicture(draft)
  await device.sync()
  await device.sync()
  expect(keptOn(device)).toEqual([...many.slice(2), draft].map(({ sha256 }) => sha256))
  clock = new Date(clock.getTime() + 31 * 24 * 3600_000)
  await device.sync()
  expect(keptOn(device)).toEqual(many.slice(2).map(({ sha256 }) => sha256))
  device.close()
})

test('a picture that the server holds no longer is sent again by a device that still has it', async () => {
  const device = await open()
  const one = picture('one')
  await device.keepPicture(one)
  await device.add('photo', bodyOf(one))
  await device.sync()
  server.pictures.clear()
  server.news.push({ sha256: one.sha256, held: false })
  await device.sync()
  expect(server.pictures.size).toBe(1)
  expect(stateOf(device, one)).toBe('held')
  device.close()
})

test('after a back-up was restored the device forgets which pictures the server held, though others brought as much news since', async () => {
  const device = await open()
  const one = picture('one')
  await device.keepPicture(one)
  await device.add('photo', bodyOf(one))
  await device.sync()
  expect(stateOf(device, one)).toBe('held')
  // The back-up was older than the picture; others have sent two since.
  server.restored += 1
  server.log = []
  server.pictures.clear()
  server.news = ['two', 'three'].map((text) => ({ sha256: picture(text).sha256, held: true }))
  await device.sync()
  expect(server.came).toEqual(['photo', 'picture', 'photo', 'picture'])
  expect([...server.pictures.keys()]).toEqual([one.sha256])
  expect(stateOf(device, one)).toBe('held')
  device.close()
})

test.each([
  { told: 'by the news too', restoredAtOnce: false },
  { told: 'by the answer to it alone', restoredAtOnce: true },
])(
  'after a back-up was restored that has the record of a photo and not its picture, held $told, the picture is sent again',
  async ({ restoredAtOnce }) => {
    const device = await open()
    const [before, one] = [picture('before'), picture('one')]
    await device.keepPicture(before)
    await device.add('photo', bodyOf(before))
    await device.sync()
    // The log is as it was, and somebody else has sent as many pictures since.
    const restore = () => {
      server.pictures.delete(one.sha256)
      server.news = [before, picture('two')].map(({ sha256 }) => ({ sha256, held: true }))
    }
    await device.keepPicture(one)
    server.came = []
    if (restoredAtOnce) server.onceTaken = restore
    await device.add('photo', bodyOf(one))
    await device.sync()
    await device.sync()
    if (!restoredAtOnce) restore()
    await device.sync()
    expect(server.came).toEqual(['photo', 'picture', 'picture'])
    expect([stateOf(device, before), stateOf(device, one)]).toEqual(['held', 'held'])
    expect(server.pictures.has(one.sha256)).toBe(true)
    device.close()
  },
)
