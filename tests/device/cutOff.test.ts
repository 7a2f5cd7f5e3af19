import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { v7 as uuidv7 } from 'uuid'
import { beforeEach, expect, test, vi } from 'vitest'
import { seededRandom } from '@/lib/core/seeded'
import { type Device, openDevice } from '@/lib/device/device'
import type { StoredRecord } from '@/lib/records/envelope'

/** A log of 30 days: makers, some of them withdrawn or with a field withheld later on. */
const start = Date.parse('2026-02-01T08:00:00Z')
const log: StoredRecord[] = []
const random = seededRandom(30)
const append = (kind: string, body: Record<string, unknown>, day: number): string => {
  const id = uuidv7({ msecs: start + day * 86_400_000 + log.length })
  const saidAt = new Date(start + day * 86_400_000).toISOString()
  const seq = log.length + 1
  log.push({
    id,
    kind,
    version: 1,
    body,
    saidAt,
    author: 'p2',
    device: 'd2',
    seq,
    receivedAt: saidAt,
    clockShiftMs: 0,
  })
  return id
}
for (let day = 0; day < 30; day++) {
  for (let n = 0; n < 120; n++) append('maker', { name: `${day}.${n}` }, day)
  const earlier = log.filter(({ kind }) => kind === 'maker')
  const some = () => earlier[Math.floor(random() * earlier.length)]!.id
  append('withdrawal', { record: some(), reason: 'Twice on file.' }, day)
  append('withholding', { record: some(), fields: ['name'], reason: 'A name got in.' }, day)
}

const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
const open = (): Promise<Device> =>
  openDevice({ me, deviceId: 'd1', now: () => new Date('2026-03-10T08:00:00Z') })

/** As the server shows it: what is withheld is blanked in place in what is fetched after. */
const shown = (upTo: number): StoredRecord[] => {
  const withheld = new Map(
    log
      .slice(0, upTo)
      .flatMap(({ kind, body, id }) => (kind === 'withholding' ? [[body.record as string, id]] : [])),
  )
  return log.slice(0, upTo).map((record) => {
    const by = withheld.get(record.id)
    return by === undefined
      ? record
      : { ...record, body: { name: '[withheld]' }, withheld: { by, fields: ['name'] } }
  })
}
let end = log.length
let pages: number[] = []
/** Where the stream of an answer breaks, in bytes; whole when it says nothing. */
let cutAt: (length: number) => number | undefined = () => undefined

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  end = log.length
  pages = []
  cutAt = () => undefined
  vi.stubGlobal('fetch', async (at: string) => {
    const { pathname, searchParams } = new URL(at, 'http://localhost')
    if (pathname === '/api/auth/me') return Response.json({ ok: true, value: me })
    if (pathname === '/api/people') return Response.json({ ok: true, value: [] })
    const after = Number(searchParams.get('after'))
    const limit = Number(searchParams.get('limit'))
    const records = shown(end)
      .filter(({ seq }) => seq > after)
      .slice(0, limit)
    const next = records.at(-1)?.seq ?? after
    pages.push(limit)
    const bytes = new TextEncoder().encode(
      JSON.stringify({ ok: true, value: { records, next, more: next < end } }),
    )
    const cut = cutAt(bytes.length)
    if (cut === undefined) return new Response(bytes)
    return new Response(
      new ReadableStream({
        pull(controller) {
          if (cut > 0) controller.enqueue(bytes.slice(0, cut))
          controller.error(new TypeError('network error'))
        },
      }),
    )
  })
  return () => vi.unstubAllGlobals()
})

const fileOf = (device: Device) => {
  const { records } = device.state().file
  return [...records.values()]
    .map(({ entry }) => [entry.id, entry.body, entry.withdrawn?.id, entry.withheld])
    .sort()
}
async function wholeFile(): Promise<unknown> {
  globalThis.indexedDB = new IDBFactory()
  const device = await open()
  await device.sync()
  const file = fileOf(device)
  device.close()
  return file
}

test('cut off at any byte, again and again, with the app killed in between, the file comes whole and the same', async () => {
  const whole = await wholeFile()
  globalThis.indexedDB = new IDBFactory()
  const cuts = seededRandom(7)
  cutAt = (length) => (cuts() < 0.6 ? Math.floor(cuts() * length) : undefined)
  let device = await open()
  let tries = 0
  while (device.state().freshAt === undefined || device.state().trouble !== undefined) {
    tries += 1
    expect(tries).toBeLessThan(200)
    await device.sync()
    if (cuts() < 0.3) {
      device.close()
      device = await open()
    }
  }
  expect(tries).toBeGreaterThan(3)
  expect(fileOf(device)).toEqual(whole)
  device.close()
})

test('where no answer longer than 20 kB ever arrives whole, it asks for less at a time and gets there', async () => {
  cutAt = (length) => (length > 20_000 ? 20_000 : undefined)
  const device = await open()
  for (let tries = 0; tries < 60; tries++) await device.sync()
  expect(device.state().trouble).toBeUndefined()
  expect(device.state().arrived).toBe(log.length)
  expect(Math.min(...pages)).toBeLessThan(100)
  device.close()
})

test('with a sound signal it asks for a thousand at a time again', async () => {
  cutAt = (length) => length - 1
  const device = await open()
  for (let tries = 0; tries < 8; tries++) await device.sync()
  cutAt = () => undefined
  await device.sync()
  expect(device.state().arrived).toBe(log.length)
  expect(pages.at(-1)).toBe(1000)
  device.close()
})

test('a device that was away for 30 days catches up with what was said, withdrawn and withheld since', async () => {
  const whole = await wholeFile()
  globalThis.indexedDB = new IDBFactory()
  end = 100
  const before = await open()
  await before.sync()
  before.close()
  end = log.length
  const device = await open()
  await device.sync()
  expect(device.state().arrived).toBe(log.length)
  expect(fileOf(device)).toEqual(whole)
  device.close()
})
