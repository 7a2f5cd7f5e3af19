import 'fake-indexeddb/auto'
import { createHash } from 'node:crypto'
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb'
import { openDB } from 'idb'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { type Device, newRecordId, openDevice } from '@/lib/device/device'
import { nextBatch, type OutboxItem, settleOutbox } from '@/lib/device/outbox'
import type { RecordEnvelope, StoredRecord } from '@/lib/records/envelope'

/** A server of a few lines: a log in memory, and switches for what can go wrong. */
class PretendServer {
  log: StoredRecord[] = []
  signedIn = true
  reachable = true
  refuse = new Map<string, string>()
  /** Answers lost on the way back: the batch is taken, the device never hears of it. */
  loseNextAnswer = false
  batches = 0
  pageSize = 1000
  who = { id: 'p1', name: 'Wenna', role: 'technician' }
  /** A manager has ended the session on this device. */
  ended = false
  setAside: RecordEnvelope[] = []
  /** Hand-overs from now on whose answer, or whose way there, is lost. */
  brokenHandOvers: ('before' | 'after')[] = []
  emptied = 0
  /** The bytes of pictures that were handed over, by hash. */
  pictures = new Map<string, number>()
  /** What is answered to the next picture that is handed over, if it is no yes. */
  refusePicture: { status: number; code: string } | undefined
  /** The hashes of pictures that the device said it can't hand over. */
  lost: string[] = []
  /** Look-ups by mark, and how often any were sent. */
  lookUps = new Map<string, { positionId: string; day: string }>()
  lookUpsSent = 0
  lookUpsAsked = 0

  handle = async (input: string | URL | Request, init?: RequestInit): Promise<Response> => {
    const url = new URL(String(input), 'http://localhost')
    if (!this.reachable) throw new TypeError('Failed to fetch')
    if (!this.signedIn) return Response.json({}, { status: 401 })
    if (url.pathname.startsWith('/api/hand-over/pictures/')) {
      if (this.brokenHandOvers.shift() !== undefined) throw new TypeError('Failed to fetch')
      if (url.pathname.endsWith('/lost')) {
        this.lost.push(JSON.parse(String(init?.body)).sha256)
        return Response.json({ ok: true, value: true })
      }
      if (this.refusePicture !== undefined) {
        const { status, code } = this.refusePicture
        this.refusePicture = undefined
        return Response.json({ ok: false, problem: { code, message: 'A sentence.' } }, { status })
      }
      this.pictures.set(url.pathname.split('/').at(-1)!, (init!.body as ArrayBuffer).byteLength)
      return Response.json({ ok: true, value: true })
    }
    if (url.pathname.startsWith('/api/hand-over'))
      return this.handOver(url.pathname, JSON.parse(String(init?.body)))
    if (this.ended)
      return Response.json(
        { ok: false, problem: { code: 'device-ended', message: 'Ended.' } },
        { status: 401 },
      )
    if (url.pathname === '/api/records') return this.take(JSON.parse(String(init?.body)).records)
    if (url.pathname === '/api/changes') {
      const after = Number(url.searchParams.get('after'))
      const sent = url.searchParams.get('mark')
      if (sent !== null && sent !== this.markAt(after))
        return Response.json({ ok: true, value: { records: [], next: 0, more: true, anew: true } })
      const records = this.log.filter((record) => record.seq > after).slice(0, this.pageSize)
      const next = records.at(-1)?.seq ?? after
      return Response.json({
        ok: true,
        value: { records, next, more: next < this.log.length, mark: this.markAt(next) },
      })
    }
    if (url.pathname === '/api/look-ups') return this.countLookUps(init)
    if (url.pathname === '/api/auth/me') return Response.json({ ok: true, value: this.who })
    if (url.pathname === '/api/people') {
      return Response.json({
        ok: true,
        value: [{ id: 'p1', name: 'Wenna', role: 'technician', active: true }],
      })
    }
    return Response.json({}, { status: 404 })
  }

  private countLookUps(init?: RequestInit): Response {
    if (init?.method !== 'POST') {
      this.lookUpsAsked += 1
      return Response.json({ ok: true, value: [{ positionId: 'q1', times: this.lookUps.size }] })
    }
    this.lookUpsSent += 1
    const { lookUps } = JSON.parse(String(init.body)) as {
      lookUps: { mark: string; positionId: string; day: string }[]
    }
    for (const { mark, ...seen } of lookUps) this.lookUps.set(mark, seen)
    if (this.loseNextAnswer) {
      this.loseNextAnswer = false
      throw new TypeError('Failed to fetch')
    }
    return Response.json({ ok: true, value: { counted: lookUps.length } })
  }

  /** Stands for the log up to a number, as the hash of its chain does. */
  private markAt = (seq: number): string | undefined => {
    const upTo = this.log.slice(0, seq).map(({ id }) => id.replaceAll('-', ''))
    return seq < 1 || seq > this.log.length ? undefined : upTo.join('').slice(-64).padStart(64, '0')
  }

  private handOver(path: string, body: { records?: RecordEnvelope[] }): Response {
    const broken = this.brokenHandOvers.shift()
    if (broken === 'before') throw new TypeError('Failed to fetch')
    if (!this.ended) return Response.json({}, { status: 409 })
    const records = body.records ?? []
    for (const record of records)
      if (!this.setAside.some(({ id }) => id === record.id)) this.setAside.push(record)
    if (path.endsWith('/done')) {
      this.emptied += 1
      this.ended = false
      this.signedIn = false
    }
    if (broken === 'after') throw new TypeError('Failed to fetch')
    return Response.json({
      ok: true,
      value: path.endsWith('/done') ? true : { held: records.map(({ id }) => id) },
    })
  }

  private take(records: RecordEnvelope[]): Response {
    this.batches += 1
    const answers = records.map((record) => {
      const sentence = this.refuse.get(record.id) ?? this.refuse.get(record.kind)
      if (sentence !== undefined) return { id: record.id, outcome: 'refused', rule: 'a rule', sentence }
      const known = this.log.find((entry) => entry.id === record.id)
      if (known) return { id: record.id, outcome: 'already stored', seq: known.seq }
      const seq = this.log.length + 1
      this.log.push({ ...record, seq, receivedAt: record.saidAt, clockShiftMs: 0 })
      return { id: record.id, outcome: 'stored', seq }
    })
    if (this.loseNextAnswer) {
      this.loseNextAnswer = false
      throw new TypeError('Failed to fetch')
    }
    return Response.json({ ok: true, value: { answers } })
  }
}

let server: PretendServer
let clock: Date
const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
const open = (): Promise<Device> => openDevice({ me, deviceId: 'd1', now: () => clock })
const makerNames = (device: Device) =>
  [...device.state().file.makers.values()].map((entry) => entry.body.name)

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  server = new PretendServer()
  clock = new Date('2026-02-01T10:00:00Z')
  vi.stubGlobal('fetch', server.handle)
  return () => vi.unstubAllGlobals()
})

describe('device.add(kind, body)', () => {
  test('shows the record at once, sends it, and lets go of it only when the server has it', async () => {
    const device = await open()
    server.reachable = false
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    expect(makerNames(device)).toEqual(['Orrinmoor'])
    expect(device.state().waiting).toHaveLength(1)
    expect(device.state().trouble?.why).toBe('no signal')

    server.reachable = true
    await device.sync()
    expect(device.state().waiting).toEqual([])
    expect(device.state().trouble).toBeUndefined()
    expect(server.log.map((entry) => entry.body.name)).toEqual(['Orrinmoor'])
    expect([...device.state().file.makers.values()][0]?.waiting).toBe(false)
  })

  test('survives closing: what waits is there when the device is opened again', async () => {
    server.reachable = false
    const first = await open()
    await first.add('maker', { name: 'Tessenby' })
    await first.sync()
    first.close()
    const second = await open()
    expect(makerNames(second)).toEqual(['Tessenby'])
    expect(second.state().waiting).toHaveLength(1)
    second.close()
  })

  test('an answer lost on the way back stores the record once all the same', async () => {
    const device = await open()
    server.loseNextAnswer = true
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    await device.sync()
    expect(server.log).toHaveLength(1)
    expect(device.state().waiting).toEqual([])
  })

  test('a session that ran out keeps the record and sends it after sign-in', async () => {
    const device = await open()
    server.signedIn = false
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    expect(device.state().trouble?.why).toBe('signed out')
    expect(device.state().waiting).toHaveLength(1)
    server.signedIn = true
    await device.sync()
    expect(server.log).toHaveLength(1)
  })

  test('sends in the order in which things were said', async () => {
    const device = await open()
    server.reachable = false
    for (const name of ['first', 'second', 'third']) await device.add('maker', { name })
    server.reachable = true
    await device.sync()
    expect(server.log.map((entry) => entry.body.name)).toEqual(['first', 'second', 'third'])
  })

  test('a kind that does not exist is the caller’s mistake', async () => {
    const device = await open()
    await expect(device.add('rumour', {})).rejects.toThrow(RangeError)
  })
})

describe('device.addAll(records)', () => {
  const maker = (name: string, id?: string) => ({ kind: 'maker', body: { name }, ...(id && { id }) })

  test('says them in one step and in their order, and one may name another by the id made for it', async () => {
    const device = await open()
    const id = newRecordId()
    const range = { kind: 'equipment range', body: { makerId: id, name: 'Larkfell 2' } }
    const ids = await device.addAll([maker('Orrinmoor', id), range])
    expect(ids).toEqual([id, expect.stringMatching(/^[0-9a-f-]{36}$/)])
    await device.sync()
    expect(server.log.map((record) => [record.id, record.body])).toEqual([
      [id, { name: 'Orrinmoor' }],
      [ids[1], range.body],
    ])
    expect(new Set(server.log.map(({ saidAt }) => saidAt)).size).toBe(1)
  })

  test('thousands go in many batches: the file is folded a few times only, and what waits is counted down', async () => {
    const device = await open()
    server.reachable = false
    const kept: number[] = []
    const told = (count: number) => void kept.push(count)
    await device.addAll(
      Array.from({ length: 1100 }, (_, at) => maker(`Maker ${at}`)),
      { told },
    )
    expect(kept).toEqual([500, 1000])
    await device.sync()
    server.reachable = true
    const files = new Set<unknown>()
    const counts: number[] = []
    device.subscribe(() => {
      files.add(device.state().file)
      counts.push(device.state().waiting.length)
    })
    await device.sync()
    expect(server.log).toHaveLength(1100)
    expect(server.batches).toBe(6)
    expect(files.size).toBeLessThan(5)
    for (const left of [900, 700, 500, 300, 100, 0]) expect(counts).toContain(left)
    expect([...device.state().file.makers.values()].every(({ waiting }) => !waiting)).toBe(true)
  })

  test('a connection that breaks in the middle goes on where it broke, and doubles nothing', async () => {
    const device = await open()
    server.reachable = false
    await device.addAll(Array.from({ length: 500 }, (_, at) => maker(`Maker ${at}`)))
    await device.sync()
    server.reachable = true
    server.loseNextAnswer = true
    await device.sync()
    expect(device.state().waiting).toHaveLength(500)
    device.close()
    const again = await open()
    await again.sync()
    expect(server.log.map(({ body }) => body.name)).toEqual(
      Array.from({ length: 500 }, (_, at) => `Maker ${at}`),
    )
    expect(again.state().waiting).toEqual([])
  })

  test('with one that is of no kind says none of them, on the disk neither', async () => {
    server.reachable = false
    const device = await open()
    const added = device.addAll([maker('Orrinmoor'), { kind: 'rumour', body: {} }])
    await expect(added).rejects.toThrow(new RangeError('addAll: "rumour" is no kind of record'))
    expect(device.state().waiting).toEqual([])
    device.close()
    const again = await open()
    expect(again.state().waiting).toEqual([])
    again.close()
  })

  test('of nothing is nothing', async () => {
    expect(await (await open()).addAll([])).toEqual([])
  })
})

describe('refused records', () => {
  test('stay on the device with the reason, out of the file, until their person drops them', async () => {
    server.refuse.set('maker', 'There is a maker of that name.')
    const device = await open()
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    const [refused] = device.state().refused
    expect(refused?.refusal?.sentence).toBe('There is a maker of that name.')
    expect(makerNames(device)).toEqual([])
    await device.dropRefused(refused!.record.id)
    expect(device.state().refused).toEqual([])
  })

  test('can be sent again once the reason is gone', async () => {
    server.refuse.set('maker', 'This server does not know that kind yet. Update it.')
    const device = await open()
    const id = await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    server.refuse.clear()
    await device.sendAgain(id)
    expect(device.state().refused).toEqual([])
    expect(server.log.map((entry) => entry.body.name)).toEqual(['Orrinmoor'])
    await expect(device.sendAgain('nobody')).rejects.toThrow(RangeError)
  })

  test('do not hold up the ones behind them', async () => {
    const device = await open()
    server.reachable = false
    const bad = await device.add('maker', { name: 'bad' })
    await device.add('maker', { name: 'good' })
    server.refuse.set(bad, 'no')
    server.reachable = true
    await device.sync()
    expect(server.log.map((entry) => entry.body.name)).toEqual(['good'])
  })
})

describe('device.sync()', () => {
  test('fetches page by page and goes on from the last number examined', async () => {
    server.pageSize = 2
    const writer = await open()
    for (const name of ['a', 'b', 'c', 'd', 'e']) await writer.add('maker', { name })
    await writer.sync()
    writer.close()
    globalThis.indexedDB = new IDBFactory()
    const reader = await open()
    await reader.sync()
    expect(makerNames(reader)).toEqual(['a', 'b', 'c', 'd', 'e'])
    expect(reader.state().freshAt).toBe(clock.toISOString())
    expect(reader.state().names.get('p1')).toBe('Wenna')
    reader.close()
  })

  test('tells the server that what came has arrived, once it is shown, and asks no more where nothing came', async () => {
    const asked: number[] = []
    vi.stubGlobal('fetch', (input: string, init?: RequestInit) => {
      const url = new URL(input, 'http://localhost')
      if (url.pathname === '/api/changes') asked.push(Number(url.searchParams.get('after')))
      return server.handle(input, init)
    })
    const device = await open()
    await device.sync()
    expect(asked).toEqual([0])
    server.log.push({
      id: newRecordId(),
      kind: 'maker',
      version: 1,
      body: { name: 'Orrinmoor' },
      saidAt: clock.toISOString(),
      author: 'p2',
      device: 'd2',
      seq: 1,
      receivedAt: clock.toISOString(),
      clockShiftMs: 0,
    })
    await device.sync()
    expect(asked).toEqual([0, 0, 1])
    expect(makerNames(device)).toEqual(['Orrinmoor'])
    device.close()
  })

  test('a server that answers nonsense is named, and nothing is lost', async () => {
    const device = await open()
    server.reachable = false
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    vi.stubGlobal('fetch', async () => new Response('<html>', { status: 200 }))
    await device.sync()
    expect(device.state().trouble).toMatchObject({ why: 'server trouble' })
    expect(device.state().waiting).toHaveLength(1)
  })
})

describe('one database per person', () => {
  test('another person on the same device neither sees nor sends the first one’s records', async () => {
    server.reachable = false
    const mine = await open()
    await mine.add('maker', { name: 'Orrinmoor' })
    await mine.sync()
    mine.close()
    server.reachable = true
    server.who = { ...me, id: 'p2' }
    const other = await openDevice({ me: { ...me, id: 'p2' }, deviceId: 'd1', now: () => clock })
    await other.sync()
    expect(makerNames(other)).toEqual([])
    expect(server.log).toEqual([])
    other.close()
  })
})

describe('somebody else signs in while a page is open', () => {
  test('nothing of the first person’s is sent under the other’s session, and it goes out when they are back', async () => {
    const device = await open()
    server.who = { ...me, id: 'p2', name: 'Oskar' } as typeof server.who
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    expect(server.batches).toBe(0)
    expect(device.state().trouble).toMatchObject({ why: 'signed out' })
    expect(device.state().waiting).toHaveLength(1)
    server.who = { ...me }
    await device.sync()
    expect(server.log).toHaveLength(1)
    device.close()
  })

  test('a record refused as somebody else’s still waits for its own person', () => {
    const record = { id: 'a', kind: 'maker', version: 1, body: {}, saidAt: '', author: 'p1', device: 'd1' }
    const sent = settleOutbox(
      [{ order: 1, record }],
      [{ id: 'a', outcome: 'refused', rule: 'own records only', sentence: 'x' }],
    )
    expect(sent).toEqual({ stored: [], refused: [] })
  })
})

describe('withheld fields', () => {
  test('leave a device that had fetched them before', async () => {
    const furnace = { id: 'f1', kind: 'furnace', version: 1, body: { siteLabel: 'Mill Row 12', model: 'X' } }
    const said = { saidAt: '2026-02-01T10:00:00Z', receivedAt: '2026-02-01T10:00:00Z', clockShiftMs: 0 }
    const uuid = (n: number) => `01920000-0000-7000-8000-00000000000${n}`
    server.log.push({ ...furnace, ...said, id: uuid(1), author: 'p1', device: 'd1', seq: 1 })
    const device = await open()
    await device.sync()
    expect(device.state().file.furnaces.get(uuid(1))?.body.siteLabel).toBe('Mill Row 12')
    const body = { record: uuid(1), fields: ['siteLabel'], reason: 'asked for' }
    const withholding = {
      id: uuid(2),
      kind: 'withholding',
      version: 1,
      body,
      author: 'p9',
      device: 'd9',
      seq: 2,
    }
    server.log.push({ ...withholding, ...said })
    await device.sync()
    const blanked = device.state().file.furnaces.get(uuid(1))
    expect(blanked?.body.siteLabel).toBe('[withheld]')
    expect(blanked?.withheld).toEqual({ by: uuid(2), fields: ['siteLabel'] })
    device.close()
    const again = await open()
    expect(again.state().file.furnaces.get(uuid(1))?.body.siteLabel).toBe('[withheld]')
    again.close()
  })
})

describe('drafts', () => {
  test('what was typed is there after the app was closed', async () => {
    const first = await open()
    await first.writeDraft('report', { asWritten: '.58 WC' })
    first.close()
    const second = await open()
    expect(await second.readDraft('report')).toEqual({ asWritten: '.58 WC' })
    await second.clearDraft('report')
    expect(await second.readDraft('report')).toBeUndefined()
    second.close()
  })
})

describe('settleOutbox(items, answers), nextBatch(items, most)', () => {
  const item = (id: string, order: number): OutboxItem => ({
    order,
    record: {
      id,
      kind: 'maker',
      version: 1,
      body: {},
      saidAt: '2026-02-01T10:00:00Z',
      author: 'p1',
      device: 'd1',
    },
  })

  test('a record that waits for another, or has no answer, stays to be sent again', () => {
    const sent = settleOutbox(
      [item('a', 1), item('b', 2), item('c', 3)],
      [
        { id: 'a', outcome: 'waiting for', ids: ['z'] },
        { id: 'b', outcome: 'stored', seq: 4 },
      ],
    )
    expect(sent.stored.map(({ record }) => record.id)).toEqual(['b'])
    expect(sent.refused).toEqual([])
  })

  test('a batch of long notes stops before the server would refuse it, and one long record goes alone', () => {
    const long = (id: string, order: number): OutboxItem => ({
      order,
      record: { ...item(id, order).record, body: { note: 'é'.repeat(300) } },
    })
    const most = { records: 200, bytes: 1000 }
    const items = [long('a', 1), long('b', 2), long('c', 3)]
    expect(nextBatch(items, most).map(({ record }) => record.id)).toEqual(['a'])
    expect(nextBatch(items, { ...most, bytes: 1 }).map(({ record }) => record.id)).toEqual(['a'])
    expect(nextBatch(items, { ...most, bytes: 1e6 })).toHaveLength(3)
  })

  test('a batch takes the oldest first and leaves refused ones out', () => {
    const refused = { ...item('a', 1), refusal: { rule: 'r', sentence: 's' } }
    const batch = nextBatch([item('c', 3), refused, item('b', 2), item('d', 4)], {
      records: 2,
      bytes: 1e6,
    })
    expect(batch.map(({ record }) => record.id)).toEqual(['b', 'c'])
  })
})

const pictureOf = (text: string) =>
  ({
    blob: new Blob([text]),
    sha256: createHash('sha256').update(text).digest('hex'),
    mediaType: 'image/png',
    bytes: text.length,
    width: 1,
    height: 1,
  }) as const

describe('a device whose session a manager has ended', () => {
  const names = () => server.setAside.map(({ body }) => body.name)
  const stores = async () => {
    const kept: Record<string, number> = {}
    for (const name of ['inchwater file p1 technician', 'inchwater own p1']) {
      const database = await openDB(name)
      for (const store of database.objectStoreNames) kept[store] = await database.count(store)
      database.close()
    }
    return kept
  }
  const nothing = {
    records: 0,
    facts: 0,
    pages: 0,
    picturesHeld: 0,
    outbox: 0,
    drafts: 0,
    pictures: 0,
    pictureBytes: 0,
    lookUps: 0,
  }

  test('hands over what waits, refused records too, in order, empties itself, and says so', async () => {
    const device = await open()
    await device.add('maker', { name: 'sent' })
    await device.sync()
    const bad = await device.add('maker', { name: 'refused' })
    server.refuse.set(bad, 'no')
    await device.sync()
    await device.writeDraft('report', { asWritten: '.58 WC' })
    server.reachable = false
    await device.add('maker', { name: 'waiting' })
    await device.noteLookUp('q1')
    server.reachable = true
    server.ended = true
    await device.sync()
    expect(names()).toEqual(['refused', 'waiting'])
    expect(server.setAside.every((record) => !('refusal' in record))).toBe(true)
    expect(server.emptied).toBe(1)
    expect(server.log.map(({ body }) => body.name)).toEqual(['sent'])
    expect(device.state()).toMatchObject({ ended: 'emptied', waiting: [], refused: [], trouble: undefined })
    expect(device.state().file.records.size).toBe(0)
    device.close()
    expect(await stores()).toEqual(nothing)
  })

  test('loses nothing and hands over nothing twice, wherever the connection breaks or the page is killed', async () => {
    const said = Array.from({ length: 450 }, (_, place) => `n${place}`)
    const points = [
      ['before'],
      ['after'],
      ['before', 'after', 'before'],
      ['after', 'after', 'after', 'after'],
    ] as const
    for (const broken of points) {
      globalThis.indexedDB = new IDBFactory()
      server = new PretendServer()
      vi.stubGlobal('fetch', server.handle)
      server.reachable = false
      const first = await open()
      await first.addAll(said.map((name) => ({ kind: 'maker', body: { name } })))
      await first.sync()
      server.reachable = true
      server.ended = true
      server.brokenHandOvers = [...broken]
      for (const _ of broken) {
        const device = await open()
        await device.sync()
        // Killed: what is in memory is gone, what is on the disk is all that counts.
        device.close()
      }
      first.close()
      const last = await open()
      await last.sync()
      last.close()
      expect(names()).toEqual(said)
      expect(server.emptied).toBe(1)
      expect(await stores()).toEqual(nothing)
    }
  })

  test('hands over also what another page of that person adds just before it empties itself', async () => {
    const device = await open()
    server.ended = true
    const otherPage = await openDB('inchwater own p1')
    const record = { kind: 'maker', version: 1, body: { name: 'late' }, author: 'p1', device: 'd1' }
    const late = { ...record, id: newRecordId(), saidAt: '2026-02-01T10:00:00.000Z' }
    const { transaction } = IDBDatabase.prototype
    let added = false
    const spy = vi.spyOn(IDBDatabase.prototype, 'transaction').mockImplementation(function (
      this: IDBDatabase,
      names,
      ...more
    ) {
      if (!added && [...names].includes('drafts')) {
        added = true
        void otherPage.put('outbox', { id: late.id, record: late, order: 1 })
      }
      return transaction.call(this, names, ...more)
    })
    await device.sync()
    spy.mockRestore()
    otherPage.close()
    device.close()
    expect(added).toBe(true)
    expect(names()).toEqual(['late'])
    expect(server.emptied).toBe(1)
    expect(await stores()).toEqual(nothing)
  })

  test('killed after it emptied itself and before the server knew, it says so at the next start', async () => {
    const device = await open()
    server.ended = true
    server.brokenHandOvers = ['before']
    await device.sync()
    expect(device.state()).toMatchObject({ ended: 'emptying', trouble: { why: 'no signal' } })
    await expect(device.add('maker', { name: 'late' })).rejects.toThrow('signed this device out')
    device.close()
    const again = await open()
    await again.sync()
    expect(server.emptied).toBe(1)
    expect(again.state().ended).toBe('emptied')
    await again.sync()
    expect(server.emptied).toBe(1)
    again.close()
  })

  test('hands over the bytes of pictures that the server does not hold, also after a break', async () => {
    const device = await open()
    const picture = pictureOf('12345')
    const { sha256 } = picture
    expect(await device.keepPicture(picture)).toMatchObject({ ok: true })
    server.ended = true
    server.brokenHandOvers = ['before']
    await device.sync()
    expect((await stores()).pictureBytes).toBe(1)
    await device.sync()
    expect([...server.pictures]).toEqual([[sha256, 5]])
    expect(server.emptied).toBe(1)
    device.close()
    expect(await stores()).toEqual(nothing)
  })

  test('passes over a picture whose own bytes are damaged, and lets go of it only when the server has written that down', async () => {
    const device = await open()
    const [damaged, whole] = [pictureOf('damaged'), pictureOf('whole')]
    for (const picture of [damaged, whole]) await device.keepPicture(picture)
    const own = await openDB('inchwater own p1')
    await own.put('pictureBytes', new TextEncoder().encode('dam?ged').buffer, damaged.sha256)
    own.close()
    server.ended = true
    server.brokenHandOvers = ['before']
    await device.sync()
    expect((await stores()).pictures).toBe(2)
    server.brokenHandOvers = []
    await device.sync()
    expect(server.lost).toEqual([damaged.sha256])
    expect([...server.pictures]).toEqual([[whole.sha256, 5]])
    expect(server.emptied).toBe(1)
    device.close()
    expect(await stores()).toEqual(nothing)
  })

  test.each([
    [400, 'other-bytes', 'kept'],
    [400, 'bad-contact', 'kept'],
    [502, 'a-proxy', 'kept'],
    [503, 'try-again', 'kept'],
    [413, 'too-long', 'let go'],
    [422, 'no-picture', 'let go'],
  ])('a picture that is sound here and answered %i (%s) is %s', async (status, code, becomes) => {
    const device = await open()
    await device.keepPicture(pictureOf('sound'))
    server.ended = true
    server.refusePicture = { status, code }
    await device.sync()
    const kept = becomes === 'kept'
    expect((await stores()).pictureBytes).toBe(kept ? 1 : 0)
    expect(server.emptied).toBe(kept ? 0 : 1)
    expect(device.state().trouble?.why).toBe(kept ? 'server trouble' : undefined)
    await device.sync()
    expect([server.emptied, server.lost, server.pictures.size]).toEqual([1, [], kept ? 1 : 0])
    device.close()
  })

  test('what the server does not hold stays on the device', async () => {
    const device = await open()
    server.reachable = false
    await device.add('maker', { name: 'waiting' })
    await device.sync()
    vi.stubGlobal('fetch', async (input: string) =>
      String(input).includes('hand-over')
        ? Response.json({ ok: true, value: { held: [] } })
        : Response.json({ ok: false, problem: { code: 'device-ended', message: 'Ended.' } }, { status: 401 }),
    )
    await device.sync()
    expect(device.state()).toMatchObject({ ended: 'handing over', trouble: { why: 'server trouble' } })
    expect((await stores()).outbox).toBe(1)
    device.close()
  })
})

describe('a change of role', () => {
  test('leaves nothing of the other role’s file on the device, and keeps the outbox', async () => {
    const before = await open()
    await before.add('maker', { name: 'Orrinmoor' })
    await before.sync()
    server.reachable = false
    await before.add('maker', { name: 'Tessenby' })
    before.close()
    const after = await openDevice({ me: { ...me, role: 'dispatcher' }, deviceId: 'd1', now: () => clock })
    expect(after.state().waiting).toHaveLength(1)
    after.close()
    expect((await indexedDB.databases()).map(({ name }) => name).sort()).toEqual([
      'inchwater file p1 dispatcher',
      'inchwater own p1',
    ])
  })
})

describe('a newer page that takes the store over', () => {
  test('is told on the older page, which lets go of the store and sends nothing more', async () => {
    const device = await open()
    server.reachable = false
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    server.reachable = true
    const newer = await openDB('inchwater own p1', 99)
    expect(await newer.count('outbox')).toBe(1)
    expect(device.state().trouble?.why).toBe('newer page')
    await device.sync()
    expect(server.batches).toBe(0)
    newer.close()
  })
})

describe('a device without contact for more than 45 days', () => {
  const day = 24 * 60 * 60 * 1000
  const later = (days: number) => {
    clock = new Date(Date.parse('2026-02-01T10:00:00Z') + days * day)
  }
  const opened = async (): Promise<Device> => {
    const device = await open()
    await device.sync()
    return device
  }
  beforeEach(async () => {
    const device = await open()
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    device.close()
    server.reachable = false
  })

  test('shows nothing of the file, and takes what is said all the same', async () => {
    later(45)
    const intime = await opened()
    expect([intime.state().locked, makerNames(intime)]).toEqual([false, ['Orrinmoor']])
    intime.close()
    later(45.1)
    const device = await opened()
    expect([device.state().locked, device.state().file.records.size]).toEqual([true, 0])
    await device.add('maker', { name: 'Tessenby' })
    expect(makerNames(device)).toEqual(['Tessenby'])
    expect(device.state().waiting).toHaveLength(1)
    device.close()
  })

  test('shows it again, with what is new, once the session was found to stand; what waited is sent', async () => {
    later(50)
    const device = await opened()
    await device.add('maker', { name: 'Tessenby' })
    server.reachable = true
    server.signedIn = false
    await device.sync()
    expect([device.state().locked, device.state().trouble?.why]).toEqual([true, 'signed out'])
    server.signedIn = true
    await device.sync()
    expect(device.state()).toMatchObject({ locked: false, trouble: undefined, waiting: [] })
    expect(makerNames(device)).toEqual(['Orrinmoor', 'Tessenby'])
    device.close()
  })

  test('goes out of sight on an open page too', async () => {
    const device = await opened()
    later(46)
    await device.sync()
    expect([device.state().locked, makerNames(device)]).toEqual([true, []])
    device.close()
  })

  test('is not fooled by a clock that is set back, whenever', async () => {
    later(44)
    const device = await opened()
    later(45.5)
    await device.sync()
    device.close()
    later(3)
    const again = await opened()
    expect(again.state().locked).toBe(true)
    again.close()
  })

  test('a clock that once ran years ahead locks until the next contact, and not for ever', async () => {
    later(3650)
    const ahead = await opened()
    expect(ahead.state().locked).toBe(true)
    later(1)
    server.reachable = true
    await ahead.sync()
    expect(ahead.state().locked).toBe(false)
    ahead.close()
    server.reachable = false
    later(2)
    const again = await opened()
    expect([again.state().locked, makerNames(again)]).toEqual([false, ['Orrinmoor']])
    again.close()
  })

  test('withheld fields leave it although it was locked when they were withheld', async () => {
    const [{ id }] = server.log as [StoredRecord]
    later(50)
    const body = { record: id, fields: ['name'], reason: 'asked for' }
    const said = { kind: 'withholding', version: 1, author: 'p9', device: 'd9', seq: 2, body }
    const times = { saidAt: clock.toISOString(), receivedAt: clock.toISOString(), clockShiftMs: 0 }
    server.log.push({ ...said, ...times, id: '01920000-0000-7000-8000-000000000002' })
    server.reachable = true
    const device = await opened()
    expect(makerNames(device)).toEqual(['[withheld]'])
    device.close()
  })
})

describe('mending a refused record', () => {
  const from = {
    address: '/equipment/add-maker?back=1',
    drafts: [['maker', { name: 'Orinmoor' }]] as [string, unknown][],
  }
  async function refusedMaker(device: Device): Promise<string> {
    const [id] = await device.addAll([{ kind: 'maker', body: { name: 'Orinmoor' } }], { from })
    server.refuse.set(id!, 'There is a maker of nearly that name.')
    await device.sync()
    return id!
  }

  test('puts what was typed back into its form and says where that is, also after a restart', async () => {
    const first = await open()
    const id = await refusedMaker(first)
    first.close()
    const device = await open()
    expect(await device.mend(id)).toBe(from.address)
    expect(await device.readDraft('maker')).toEqual({ name: 'Orinmoor' })
    expect(device.state().refused).toHaveLength(1)
    device.close()
  })

  test('leaves alone what was typed there since', async () => {
    const device = await open()
    const id = await refusedMaker(device)
    await device.writeDraft('maker', { name: 'newer' })
    await device.mend(id)
    expect(await device.readDraft('maker')).toEqual({ name: 'newer' })
    device.close()
  })

  test('the new record takes its place under its id, and what waited for it goes', async () => {
    const device = await open()
    const id = await refusedMaker(device)
    server.reachable = false
    await device.add('equipment range', { makerId: id, name: 'Larkfell 2' })
    server.refuse.clear()
    const [mended] = await device.addAll([{ kind: 'maker', body: { name: 'Orrinmoor' } }], { instead: id })
    expect(mended).toBe(id)
    expect(device.state().refused).toEqual([])
    server.reachable = true
    await device.sync()
    expect(server.log.map((record) => [record.id === id, record.body.name])).toEqual([
      [true, 'Orrinmoor'],
      [false, 'Larkfell 2'],
    ])
    device.close()
  })

  test('of a record that is not refused, or not there any more, nothing is put back and nothing replaced', async () => {
    const device = await open()
    expect(await device.mend('nobody')).toBeUndefined()
    server.reachable = false
    const id = await device.add('maker', { name: 'waiting' })
    const [other] = await device.addAll([{ kind: 'maker', body: { name: 'new' } }], { instead: id })
    expect(other).not.toBe(id)
    expect(device.state().waiting).toHaveLength(2)
    device.close()
  })
})

describe('a server that went back to a back-up', () => {
  const others = (name: string): StoredRecord => ({
    id: newRecordId(),
    kind: 'maker',
    version: 1,
    body: { name },
    saidAt: '2026-02-01T10:00:00Z',
    author: 'p2',
    device: 'd2',
    seq: server.log.length + 1,
    receivedAt: '2026-02-01T10:00:00Z',
    clockShiftMs: 0,
  })

  test('gets back what was said on this device since; what others said stays as the server has it', async () => {
    const device = await open()
    server.log.push(others('Kept'))
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    const backup = [...server.log]
    await device.add('maker', { name: 'Tessenby' })
    server.log.push(others('Lost'))
    await device.sync()
    expect([...makerNames(device)].sort()).toEqual(['Kept', 'Lost', 'Orrinmoor', 'Tessenby'])

    server.log = backup
    await device.sync()
    expect(makerNames(device)).toEqual(['Kept', 'Orrinmoor', 'Tessenby'])
    expect(server.log.map(({ body }) => body.name)).toEqual(['Kept', 'Orrinmoor', 'Tessenby'])
    expect(device.state()).toMatchObject({ waiting: [], refused: [], trouble: undefined })
  })

  test('is noticed though others have written as much again, and the device misses nothing of it', async () => {
    const device = await open()
    await device.add('maker', { name: 'Orrinmoor' })
    await device.add('maker', { name: 'Tessenby' })
    await device.sync()
    server.log = server.log.slice(0, 1)
    for (const name of ['One', 'Two', 'Three']) server.log.push(others(name))
    await device.sync()
    expect([...makerNames(device)].sort()).toEqual(['One', 'Orrinmoor', 'Tessenby', 'Three', 'Two'])
    expect(server.log).toHaveLength(5)
  })

  test('is sent nothing that was withheld since: it is gone here as well', async () => {
    const device = await open()
    const id = await device.add('furnace', {
      siteLabel: 'Mill Row',
      model: 'X',
      fuel: 'not stated',
      note: 'Tilda',
    })
    await device.sync()
    const backup = structuredClone(server.log)
    const withholding = {
      ...others(''),
      kind: 'withholding',
      body: { record: id, fields: ['note'], reason: 'Asked for.' },
    }
    server.log.push(withholding)
    await device.sync()
    server.log = backup
    const batches = server.batches
    server.log[0]!.id = newRecordId()
    await device.sync()
    expect(server.batches).toBe(batches)
  })

  test.each([
    ['as far as before, with what others wrote', 9],
    ['less far than before', 4],
  ])(
    'gets back what it had stored behind what this device had fetched, where it has grown %s since',
    async (_, length) => {
      const device = await open()
      for (const name of ['One', 'Two', 'Three']) server.log.push(others(name))
      await device.sync()
      // Others write, the device sends, and its signal breaks off before it fetches.
      for (const name of ['Four', 'Five']) server.log.push(others(name))
      const fetched = server.handle
      vi.stubGlobal('fetch', (...args: Parameters<typeof fetched>) => {
        if (String(args[0]).startsWith('/api/changes')) throw new TypeError('Failed to fetch')
        return fetched(...args)
      })
      await device.addAll(['Orrinmoor', 'Tessenby'].map((name) => ({ kind: 'maker', body: { name } })))
      await device.sync()
      expect(device.state().waiting).toEqual([])
      expect(server.log.map(({ body }) => body.name).slice(5)).toEqual(['Orrinmoor', 'Tessenby'])

      server.log = server.log.slice(0, 4)
      while (server.log.length < length) server.log.push(others(`Since ${server.log.length}`))
      server.pageSize = 2
      vi.stubGlobal('fetch', fetched)
      await device.sync()
      const names = server.log.map(({ body }) => body.name)
      expect(names.slice(length)).toEqual(['Orrinmoor', 'Tessenby'])
      expect([...makerNames(device)].sort()).toEqual([...names].sort())
      expect(device.state()).toMatchObject({ waiting: [], refused: [], trouble: undefined })
      const batches = server.batches
      await device.sync()
      expect(server.batches).toBe(batches)
      device.close()
      const again = await open()
      expect([...makerNames(again)].sort()).toEqual([...names].sort())
      expect(again.state().waiting).toEqual([])
      again.close()
    },
  )

  test('gets it back once, also where the app is killed between the outbox and the file', async () => {
    const device = await open()
    server.log.push(others('One'))
    await device.sync()
    server.log.push(others('Two'))
    const fetched = server.handle
    vi.stubGlobal('fetch', (...args: Parameters<typeof fetched>) => {
      if (String(args[0]).startsWith('/api/changes')) throw new TypeError('Failed to fetch')
      return fetched(...args)
    })
    await device.add('maker', { name: 'Orrinmoor' })
    await device.sync()
    server.log = [server.log[0]!]
    for (const name of ['Three', 'Four', 'Five']) server.log.push(others(name))
    vi.stubGlobal('fetch', fetched)
    const put = IDBObjectStore.prototype.put
    const killed = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...args
    ) {
      if (this.name === 'facts' && args[1] === 'after') throw new DOMException('Killed.', 'AbortError')
      return put.apply(this, args)
    })
    await device.sync()
    expect(device.state().trouble?.why).toBe('store trouble')
    device.close()
    killed.mockRestore()
    const again = await open()
    await again.sync()
    const names = server.log.map(({ body }) => body.name)
    expect(names).toEqual(['One', 'Three', 'Four', 'Five', 'Orrinmoor'])
    expect([...makerNames(again)].sort()).toEqual([...names].sort())
    expect(again.state().waiting).toEqual([])
    again.close()
  })

  test('does not get back what came in the page, nor what others stored behind what was fetched', async () => {
    const device = await open()
    await device.add('maker', { name: 'Orrinmoor' })
    server.log.push(others('One'))
    await device.sync()
    const batches = server.batches
    await device.sync()
    expect([server.batches, device.state().waiting]).toEqual([batches, []])
    device.close()
  })

  test('and a device closed in the middle goes on where it was', async () => {
    const first = await open()
    await first.add('maker', { name: 'Orrinmoor' })
    await first.sync()
    server.log = []
    server.log.push(others('Kept'))
    server.pageSize = 1
    const fetched = server.handle
    let asked = 0
    vi.stubGlobal('fetch', (...args: Parameters<typeof fetched>) => {
      if (String(args[0]).startsWith('/api/changes') && ++asked > 1) server.reachable = false
      return fetched(...args)
    })
    await first.sync()
    first.close()
    vi.stubGlobal('fetch', fetched)
    server.reachable = true
    const second = await open()
    expect(second.state().waiting.map(({ record }) => record.body.name)).toEqual(['Orrinmoor'])
    await second.sync()
    expect(makerNames(second)).toEqual(['Kept', 'Orrinmoor'])
    second.close()
  })
})

describe('look-ups', () => {
  const counted = () =>
    [...server.lookUps.values()].map(({ positionId, day }) => `${day} ${positionId}`).sort()

  test('are kept without a signal, once a position and day, and go once with the next contact', async () => {
    server.reachable = false
    const first = await open()
    for (const id of ['q1', 'q1', 'q2']) await first.noteLookUp(id)
    await first.sync()
    clock = new Date('2026-02-02T07:00:00Z')
    await first.noteLookUp('q1')
    first.close()

    server.reachable = true
    const second = await open()
    await second.sync()
    await second.noteLookUp('q1')
    await second.sync()
    expect(counted()).toEqual(['2026-02-01 q1', '2026-02-01 q2', '2026-02-02 q1'])
    expect(server.lookUpsSent).toBe(1)
    expect(second.state().trouble).toBeUndefined()
  })

  test('go again under the same marks where the answer was lost', async () => {
    const device = await open()
    await device.noteLookUp('q1')
    server.loseNextAnswer = true
    await device.sync()
    expect(device.state().trouble?.why).toBe('no signal')
    await device.sync()
    expect(server.lookUpsSent).toBe(2)
    expect(counted()).toEqual(['2026-02-01 q1'])
    expect(device.state().trouble).toBeUndefined()
  })

  test('of days that are over leave the device once they were sent', async () => {
    const device = await open()
    await device.noteLookUp('q1')
    await device.sync()
    clock = new Date('2026-02-02T07:00:00Z')
    await device.sync()
    device.close()
    const own = await openDB('inchwater own p1')
    expect(await own.count('lookUps')).toBe(0)
    own.close()
  })

  test('of the team are asked for by who chooses the calls, now and then, and are there without a signal', async () => {
    const technician = await open()
    await technician.sync()
    expect([server.lookUpsAsked, technician.state().lookUps]).toEqual([0, undefined])
    technician.close()

    server.lookUps.set('m', { positionId: 'q1', day: '2026-02-01' })
    server.who = { ...server.who, role: 'dispatcher' }
    const asDispatcher = () =>
      openDevice({ me: { ...me, role: 'dispatcher' }, deviceId: 'd1', now: () => clock })
    const first = await asDispatcher()
    await first.sync()
    await first.sync()
    expect(server.lookUpsAsked).toBe(1)
    first.close()

    server.reachable = false
    const second = await asDispatcher()
    expect(second.state().lookUps).toEqual({
      at: clock.toISOString(),
      timesByPosition: new Map([['q1', 1]]),
    })
    server.reachable = true
    clock = new Date(clock.getTime() + 10 * 60_000)
    await second.sync()
    expect(server.lookUpsAsked).toBe(2)
  })
})
