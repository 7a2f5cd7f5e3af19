import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { openFileDatabase, openOwnDatabase } from '@/lib/device/database'
import { type Device, newRecordId, openDevice } from '@/lib/device/device'
import type { RecordEnvelope, StoredRecord } from '@/lib/records/envelope'
import { redact } from '@/lib/records/redact'

const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
const open = () => openDevice({ me, deviceId: 'd1', now: () => new Date('2026-02-01T10:00:00Z') })

/** The server's log, what it says of pictures, and the addresses that can't be reached. */
let log: StoredRecord[] = []
let pictureNews: { sha256: string; held: boolean }[] = []
let unreachable: readonly string[] = []
/** What the next answer with changes waits for on its way. */
let delay: Promise<void> | undefined
const answer = (value: unknown): Response => Response.json({ ok: true, value })
const markAt = (seq: number): string => (log[seq - 1]?.id ?? '').replaceAll('-', '').padStart(64, '0')

function take(record: RecordEnvelope): { id: string; outcome: string; seq: number } {
  const known = log.find(({ id }) => id === record.id)
  if (known !== undefined) return { id: record.id, outcome: 'already stored', seq: known.seq }
  const seq = log.length + 1
  log.push({ ...record, seq, receivedAt: record.saidAt, clockShiftMs: 0 })
  return { id: record.id, outcome: 'stored', seq }
}

function changesFor(asked: URLSearchParams): object {
  const [after, picturesAfter] = [Number(asked.get('after')), Number(asked.get('pictures'))]
  if (after > 0 && asked.get('mark') !== markAt(after))
    return { records: [], next: 0, more: true, anew: true }
  const records = log.filter(({ seq }) => seq > after)
  const next = records.at(-1)?.seq ?? after
  const pictures = { news: pictureNews.slice(picturesAfter), next: pictureNews.length }
  return { records, next, more: false, mark: markAt(next), pictures }
}

/** Holds up the next answer with changes that is on its way to a tab. @returns resolves once it is there, and lets it go */
async function holdUpAnswerTo(tab: Device): Promise<() => Promise<void>> {
  let letGo = (): void => {}
  delay = new Promise((resolve) => {
    letGo = resolve
  })
  const syncing = tab.sync()
  await vi.waitFor(() => expect(delay).toBeUndefined())
  return () => {
    letGo()
    return syncing
  }
}

/** A manager withholds where a furnace is. */
function withholdSite(id: string): void {
  const at = log.findIndex((record) => record.id === id)
  const withheld = log[at]!
  const by = '01990000-0000-7000-8000-00000000000f'
  log[at] = { ...redact(withheld, ['siteLabel']), withheld: { by, fields: ['siteLabel'] } }
  take({
    ...withheld,
    id: by,
    kind: 'withholding',
    author: 'm1',
    body: { record: id, fields: ['siteLabel'], reason: 'asked' },
  })
}

const furnace = {
  kind: 'furnace',
  body: { siteLabel: 'Told in confidence', model: 'LF2', fuel: 'natural gas' },
}

/** All that the file on the disk says. */
async function fileOnDisk(): Promise<string> {
  const database = await openFileDatabase(me.id, me.role)
  const all = JSON.stringify([await database.getAll('records'), await database.getAll('pages')])
  database.close()
  return all
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  log = []
  pictureNews = []
  unreachable = []
  delay = undefined
  vi.stubGlobal('fetch', async (input: string, init?: RequestInit) => {
    const url = new URL(input, 'http://localhost')
    if (unreachable.includes(url.pathname)) throw new TypeError('Failed to fetch')
    if (url.pathname === '/api/auth/me') return answer(me)
    if (url.pathname === '/api/records') {
      const { records } = JSON.parse(String(init?.body)) as { records: RecordEnvelope[] }
      return answer({ answers: records.map(take) })
    }
    if (url.pathname !== '/api/changes') return answer([])
    const answered = answer(changesFor(url.searchParams))
    const waited = delay
    delay = undefined
    await waited
    return answered
  })
  return () => vi.unstubAllGlobals()
})

describe('withheld fields leave a device with two tabs open', () => {
  test('where one tab sent the record and the other fetched it once it was withheld', async () => {
    const [one, other] = [await open(), await open()]
    await one.sync()
    await other.sync()
    unreachable = ['/api/changes']
    const [id] = await one.addAll([furnace])
    await one.sync()
    one.close()
    expect(await fileOnDisk()).toContain('Told in confidence')
    withholdSite(id!)
    unreachable = []
    await other.sync()
    expect(other.state().trouble).toBeUndefined()
    other.close()
    expect(await fileOnDisk()).not.toContain('Told in confidence')
  })

  test('where one tab sends once more what the other has sent and fetched withheld', async () => {
    const one = await open()
    await one.sync()
    unreachable = ['/api/auth/me']
    const [id] = await one.addAll([furnace])
    await one.sync()
    const own = await openOwnDatabase(me.id)
    const [item] = await own.getAll('outbox')
    own.close()
    // The service worker sends it meanwhile, and leaves the outbox as it is.
    take(item!.record)
    withholdSite(id!)
    unreachable = []
    const other = await open()
    await other.sync()
    await one.sync()
    for (const device of [one, other]) {
      expect(device.state()).toMatchObject({ trouble: undefined, waiting: [] })
      expect(device.state().file.furnaces.size).toBe(1)
      expect(JSON.stringify([...device.state().file.furnaces.values()])).not.toContain('Told in confidence')
      device.close()
    }
    expect(await fileOnDisk()).not.toContain('Told in confidence')
  })
})

describe('what one tab was answered before another has taken in newer things', () => {
  const maker = (name: string): RecordEnvelope => ({
    id: newRecordId(),
    kind: 'maker',
    version: 1,
    body: { name },
    saidAt: '2026-02-01T10:00:00.000Z',
    author: 'p2',
    device: 'd2',
  })
  const namesOf = ({ state }: Device) => [...state().file.makers.values()].map(({ body }) => body.name)

  test('is not taken in where the log was begun anew since, though it is as long again', async () => {
    take(maker('Orrinmoor'))
    const [one, other] = [await open(), await open()]
    await one.sync()
    await other.sync()
    take(maker('Lost with the server'))
    const letArrive = await holdUpAnswerTo(other)
    log = []
    take(maker('Tessenby'))
    await one.sync()
    // Nobody hears more than that, so what was taken in is not mended by the next contact.
    unreachable = ['/api/changes']
    await letArrive()
    for (const device of [one, other]) {
      expect(namesOf(device)).toEqual(['Tessenby'])
      device.close()
    }
    expect(await fileOnDisk()).not.toContain('Lost with the server')
  })

  test('says nothing of a picture that the server holds no longer', async () => {
    const [one, other] = [await open(), await open()]
    await one.sync()
    await other.sync()
    const sha256 = 'a'.repeat(64)
    pictureNews.push({ sha256, held: true })
    const letArrive = await holdUpAnswerTo(other)
    pictureNews.push({ sha256, held: false })
    await one.sync()
    // The other tab is closed before it hears more.
    unreachable = ['/api/changes']
    await letArrive()
    other.close()
    unreachable = []
    await one.sync()
    one.close()
    const database = await openFileDatabase(me.id, me.role)
    expect(await database.getAllKeys('picturesHeld')).toEqual([])
    expect(await database.get('facts', 'picturesAfter')).toBe(2)
    database.close()
  })
})
