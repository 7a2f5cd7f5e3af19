import 'fake-indexeddb/auto'
import { IDBFactory } from 'fake-indexeddb'
import fc from 'fast-check'
import { openDB } from 'idb'
import { beforeEach, describe, expect, test, vi } from 'vitest'
import { type FileDatabase, openFileDatabase } from '@/lib/device/database'
import { openDevice } from '@/lib/device/device'
import { appendToPages, readLog, replaceInPages } from '@/lib/device/logPages'
import type { HeldRecord } from '@/lib/records/fold/entry'

const idAt = (seq: number): string => `01900000-0000-7000-8000-${String(seq).padStart(12, '0')}`
const recordAt = (seq: number, name = `Maker ${seq}`): HeldRecord => ({
  id: idAt(seq),
  kind: 'maker',
  version: 1,
  body: { name },
  saidAt: '2026-02-01T10:00:00.000Z',
  author: 'p2',
  device: 'd2',
  seq,
  receivedAt: '2026-02-01T10:00:00.000Z',
  clockShiftMs: 0,
})
const recordsUpTo = (from: number, to: number): HeldRecord[] =>
  Array.from({ length: Math.max(0, to - from + 1) }, (_, place) => recordAt(from + place))

async function append(database: FileDatabase, records: readonly HeldRecord[]): Promise<void> {
  const writing = database.transaction(['pages', 'facts'], 'readwrite')
  await appendToPages(writing.objectStore('pages') as never, records)
  await writing.done
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
})

describe('the pages of the log', () => {
  test('hold what was appended, in its order, in pages of at most 500', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.integer({ min: 0, max: 1200 }), { maxLength: 5 }), async (lengths) => {
        globalThis.indexedDB = new IDBFactory()
        const database = await openFileDatabase('p1', 'technician')
        let seq = 0
        for (const length of lengths) {
          await append(database, recordsUpTo(seq + 1, seq + length))
          seq += length
        }
        const pages = await database.getAll('pages')
        const { records } = await readLog(database)
        database.close()
        expect([...records.values()]).toEqual(recordsUpTo(1, seq))
        expect(pages).toHaveLength(Math.ceil(seq / 500))
      }),
      { numRuns: 15 },
    )
  })

  test('keep nothing of what a record said before it was replaced', async () => {
    const database = await openFileDatabase('p1', 'technician')
    await append(database, [...recordsUpTo(1, 700), recordAt(701, 'Told in confidence'), recordAt(702)])
    await append(database, recordsUpTo(703, 1100))
    const blanked = { ...recordAt(701), body: {}, withheld: { by: 'w1', fields: ['name'] } }
    const writing = database.transaction(['pages'], 'readwrite')
    await replaceInPages(writing.objectStore('pages') as never, [blanked])
    await writing.done
    expect(JSON.stringify(await database.getAll('pages'))).not.toContain('Told in confidence')
    const { records } = await readLog(database)
    expect(records.get(idAt(701))).toEqual(blanked)
    expect(records.size).toBe(1100)
    database.close()
  })
})

test('readLog(database) takes out of what was sent from here what the pages hold, and leaves the rest', async () => {
  const database = await openFileDatabase('p1', 'technician')
  const blanked = { ...recordAt(2), body: {}, withheld: { by: 'w1', fields: ['name'] } }
  await append(database, [recordAt(1), blanked])
  for (const record of [recordAt(2, 'Told in confidence'), recordAt(3)]) await database.put('records', record)
  const { records } = await readLog(database)
  expect([...records.values()]).toEqual([recordAt(1), blanked, recordAt(3)])
  expect(await database.getAll('records')).toEqual([recordAt(3)])
  database.close()
})

/** A file as a program without pages kept it. */
async function keptWithoutPages(records: readonly HeldRecord[], after: number): Promise<void> {
  const before = await openDB('inchwater file p1 technician', 2, {
    upgrade(database) {
      database.createObjectStore('records', { keyPath: 'id' })
      database.createObjectStore('facts')
      database.createObjectStore('picturesHeld')
    },
  })
  for (const record of records) await before.put('records', record)
  await before.put('facts', after, 'after')
  await before.put('facts', 'the mark', 'mark')
  before.close()
}

test.each(['a put throws', 'the browser aborts it'])(
  'a move into pages that fails (%s) loses nothing, and is done at the next opening',
  async (failing) => {
    await keptWithoutPages(recordsUpTo(1, 620), 610)
    const unhandled = vi.fn()
    process.on('unhandledRejection', unhandled)
    const { put } = IDBObjectStore.prototype
    const spy = vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (
      this: IDBObjectStore,
      ...given
    ) {
      if (this.name === 'pages' && given[1] === 1) {
        if (failing === 'thrown') throw new DOMException('full', 'QuotaExceededError')
        this.transaction.abort()
      }
      return put.apply(this, given)
    })
    await expect(openFileDatabase('p1', 'technician')).rejects.toThrow()
    spy.mockRestore()
    const database = await openFileDatabase('p1', 'technician')
    const { records, after } = await readLog(database)
    expect([records.size, after]).toEqual([620, 610])
    expect(await database.count('records')).toBe(10)
    database.close()
    await new Promise((resolve) => setTimeout(resolve, 20))
    process.off('unhandledRejection', unhandled)
    expect(unhandled).not.toHaveBeenCalled()
  },
)

test('a file that a program without pages kept is moved into them, but for what the feed has not brought', async () => {
  await keptWithoutPages(recordsUpTo(1, 620), 610)
  const database = await openFileDatabase('p1', 'technician')
  const { records, after, mark } = await readLog(database)
  expect([...records.keys()].sort()).toEqual(
    recordsUpTo(1, 620)
      .map(({ id }) => id)
      .sort(),
  )
  expect([after, mark]).toEqual([610, 'the mark'])
  expect((await database.getAll('records')).map(({ seq }) => seq).sort()).toEqual(
    recordsUpTo(611, 620).map(({ seq }) => seq),
  )
  database.close()
})

test('two tabs of one person take the same news in once, and leave no hole', async () => {
  const log = recordsUpTo(1, 40)
  // Each waits for the other before it is answered, so that both ask after the same number.
  let asking: (() => void)[] = []
  vi.stubGlobal('fetch', async (input: string) => {
    const url = new URL(input, 'http://localhost')
    const answer = (value: unknown) => Response.json({ ok: true, value })
    if (url.pathname === '/api/auth/me') return answer({ id: 'p1', name: 'Wenna', role: 'technician' })
    if (url.pathname !== '/api/changes') return answer([])
    const after = Number(url.searchParams.get('after'))
    if (after === 0)
      await new Promise<void>((go) => {
        asking.push(go)
        if (asking.length < 2) return
        for (const each of asking) each()
        asking = []
      })
    const records = log.filter(({ seq }) => seq! > after).slice(0, 25)
    const next = records.at(-1)?.seq ?? after
    return answer({ records, next, more: next < log.length, mark: String(next).padStart(64, '0') })
  })
  const me = { id: 'p1', name: 'Wenna', role: 'technician' } as const
  const open = () => openDevice({ me, deviceId: 'd1', now: () => new Date('2026-02-01T10:00:00Z') })
  const [one, other] = [await open(), await open()]
  await Promise.all([one.sync(), other.sync()])
  for (const device of [one, other]) {
    expect(device.state().trouble).toBeUndefined()
    expect(device.state().file.makers.size).toBe(log.length)
    device.close()
  }
  const database = await openFileDatabase('p1', 'technician')
  expect((await database.getAll('pages')).flat()).toEqual(log)
  database.close()
  vi.unstubAllGlobals()
})
