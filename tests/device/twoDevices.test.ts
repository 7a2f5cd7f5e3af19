import 'fake-indexeddb/auto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import Database from 'better-sqlite3'
import { IDBFactory } from 'fake-indexeddb'
import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { type Device, openDevice } from '@/lib/device/device'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { recordKinds } from '@/lib/records/registry'
import { disputesIn } from '@/lib/records/view/disputes'
import { type Log, openLog } from '@/lib/server/log/openLog'
import { migrate } from '@/prisma/migrate'
import { disputedRecords, equipmentRecords, ids } from '../app/setup/smallFile'

/** Two phones, each with its own store and its own clock, at the door of a real log. */
const wenna = { id: 'p1', name: 'Wenna', role: 'technician' } as const
const oskar = { id: 'p2', name: 'Oskar', role: 'technician' } as const

const noon = Date.parse('2026-02-01T12:00:00Z')
const hour = 3_600_000
let minutes = 0
const serverNow = () => new Date(noon + minutes * 60_000)
const clockOffBy = (ms: number) => () => new Date(serverNow().getTime() + ms)

let folder = ''
let db: Database.Database
let log: Log
let speaking: typeof wenna | typeof oskar = wenna
let signal = true

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'two-devices-'))
  migrate(path.join(folder, 'team.db'))
  db = new Database(path.join(folder, 'team.db'))
  log = openLog({ db, kinds: recordKinds, now: serverNow })
  minutes = 0
  signal = true
  const onFile = equipmentRecords.map(
    ({ seq, receivedAt, clockShiftMs, ...record }) => record as RecordEnvelope,
  )
  const author = onFile[0]!.author
  await log.appendRecords(
    { sentAt: serverNow().toISOString(), records: onFile },
    { id: author, role: 'manager' },
  )
  vi.stubGlobal('fetch', async (at: string, init?: RequestInit) => {
    if (!signal) throw new TypeError('Failed to fetch')
    const { pathname, searchParams } = new URL(at, 'http://localhost')
    const answer = (value: unknown) => Response.json({ ok: true, value })
    if (pathname === '/api/auth/me') return answer(speaking)
    if (pathname === '/api/people') return answer([])
    if (pathname === '/api/records')
      return answer({ answers: await log.appendRecords(JSON.parse(String(init?.body)), speaking) })
    const [after, limit] = [Number(searchParams.get('after')), Number(searchParams.get('limit'))]
    return answer(log.readChanges({ after, limit, role: 'technician' }))
  })
})
afterEach(() => {
  vi.unstubAllGlobals()
  db.close()
  rmSync(folder, { recursive: true })
})

async function phoneOf(me: typeof wenna | typeof oskar, now: () => Date): Promise<Device> {
  globalThis.indexedDB = new IDBFactory()
  const device = await openDevice({ me, deviceId: `phone of ${me.name}`, now })
  await sync(device)
  return device
}
async function sync(device: Device): Promise<void> {
  speaking = device.state().me.id === wenna.id ? wenna : oskar
  await device.sync()
}
const reports = disputedRecords.filter(({ kind }) => kind === 'report').map(({ body }) => body)
const everything = (device: Device) =>
  [...device.state().file.records.values()].map(({ kind, entry }) => ({ kind, ...entry }))

test('two devices that say contradictory things without a signal both keep what they said: the same dispute on both, in the same order', async () => {
  const one = await phoneOf(wenna, clockOffBy(0))
  const two = await phoneOf(oskar, clockOffBy(0))
  signal = false
  await one.add('report', reports[0]!)
  minutes = 5
  await two.add('report', reports.at(-1)!)
  await two.add('withdrawal', { record: ids.gauge, reason: 'It was dropped.' })
  await one.sync()
  await two.sync()
  expect(disputesIn(one.state().file, serverNow().toISOString())).toEqual([])
  signal = true
  minutes = 60
  // The second arrives first.
  await sync(two)
  await sync(one)
  await sync(two)
  expect([one, two].map((device) => device.state().waiting)).toEqual([[], []])
  expect(everything(one)).toEqual(everything(two))
  for (const device of [one, two]) {
    const [dispute, ...others] = disputesIn(device.state().file, serverNow().toISOString())
    expect(others).toEqual([])
    expect(dispute).toMatchObject({ position: { id: ids.low }, action: 'closes' })
    expect(device.state().file.gauges.get(ids.gauge)?.withdrawn?.reason).toBe('It was dropped.')
    device.close()
  }
})

test.each([2, -2])(
  'a clock %i hours off is put right: nothing is refused, and what was said keeps its true time',
  async (off) => {
    const device = await phoneOf(wenna, clockOffBy(off * hour))
    const right = await phoneOf(oskar, clockOffBy(0))
    signal = false
    minutes = 10
    const first = await device.add('maker', { name: 'first' })
    minutes = 20
    const second = await right.add('maker', { name: 'second' })
    minutes = 30
    const third = await device.add('maker', { name: 'third' })
    signal = true
    minutes = 45
    for (const each of [device, right, device, right]) await sync(each)
    for (const each of [device, right]) {
      expect(each.state().refused).toEqual([])
      const times = [first, second, third].map((id) => each.state().file.makers.get(id)?.at)
      expect(times).toEqual([10, 20, 30].map((at) => new Date(noon + at * 60_000).toISOString()))
      each.close()
    }
  },
)
