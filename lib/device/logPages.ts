import type { IDBPObjectStore, IDBPTransaction, StoreNames } from 'idb'
import type { HeldRecord } from '@/lib/records/fold/entry'
import type { FileDatabase, FileSchema } from './database'
import { toldByDone } from './toldByDone'

/**
 * The log as it came by the feed, in pages of many records, oldest first. A phone reads a team's file at each start, and
 * a store with a value for each record takes three times as long to read. What was said here and is not back by the
 * feed yet is apart from it, in the store `records`.
 */

/** How many records are in a page: few enough that a page is quickly written anew when one record comes. */
const pageRecords = 500

type Pages<Mode extends IDBTransactionMode> = IDBPObjectStore<
  FileSchema,
  ArrayLike<StoreNames<FileSchema>>,
  'pages',
  Mode
>

/** What the feed has brought so far: up to which number and what the log is known by there; the same of the news of pictures. */
export type FedUpTo = {
  after: number
  mark: string | undefined
  picturesAfter: number
  picturesMark: string | undefined
}

/** The log on this device at one moment, and the hashes of the pictures that the server holds. */
export type KeptLog = FedUpTo & { records: Map<string, HeldRecord>; picturesHeld: Set<string> }

export const emptyLog = (): KeptLog => ({
  records: new Map(),
  after: 0,
  mark: undefined,
  picturesHeld: new Set(),
  picturesAfter: 0,
  picturesMark: undefined,
})

const logStores: ['records', 'pages', 'facts', 'picturesHeld'] = ['records', 'pages', 'facts', 'picturesHeld']
type Facts = Pick<
  IDBPObjectStore<FileSchema, ArrayLike<StoreNames<FileSchema>>, 'facts', IDBTransactionMode>,
  'get'
>

/** Read in the transaction that writes: what another tab has taken in meanwhile is seen by it. */
export async function fedUpTo(facts: Facts): Promise<FedUpTo> {
  const [after, mark, picturesAfter, picturesMark] = await Promise.all([
    facts.get('after') as Promise<number | undefined>,
    facts.get('mark') as Promise<string | undefined>,
    facts.get('picturesAfter') as Promise<number | undefined>,
    facts.get('picturesMark') as Promise<string | undefined>,
  ])
  return { after: after ?? 0, mark, picturesAfter: picturesAfter ?? 0, picturesMark }
}

/**
 * Everything of it in one transaction: records and number of two moments would leave a hole. What the pages hold is
 * taken out of what was sent from here: such a copy may say what has been withheld since.
 */
export async function readLog(database: FileDatabase): Promise<KeptLog> {
  const { log, twice } = await logIn(database.transaction(logStores))
  if (twice.length === 0) return log
  // Read once more where it can be written: between the two another tab may have begun anew.
  const tidying = database.transaction(logStores, 'readwrite')
  const tidied = await logIn(tidying)
  for (const id of tidied.twice) void tidying.objectStore('records').delete(id)
  await tidying.done
  return tidied.log
}

/** @returns the log, and the ids of what is both among what was sent from here and in the pages */
async function logIn(
  reading: IDBPTransaction<FileSchema, typeof logStores, IDBTransactionMode>,
): Promise<{ log: KeptLog; twice: string[] }> {
  const [sent, pages, held, upTo] = await Promise.all([
    reading.objectStore('records').getAll(),
    reading.objectStore('pages').getAll(),
    reading.objectStore('picturesHeld').getAllKeys(),
    fedUpTo(reading.objectStore('facts')),
  ])
  const records = new Map<string, HeldRecord>()
  for (const page of pages) for (const record of page) records.set(record.id, record)
  const twice = sent.flatMap(({ id }) => (records.has(id) ? [id] : []))
  for (const record of sent) if (!records.has(record.id)) records.set(record.id, record)
  return { log: { ...upTo, records, picturesHeld: new Set(held) }, twice }
}

/** Puts what the feed brought behind what is there, in the same transaction as the number that it goes up to. */
export async function appendToPages(
  pages: Pages<'readwrite'> | Pages<'versionchange'>,
  records: readonly HeldRecord[],
): Promise<void> {
  if (records.length === 0) return
  const last = await pages.openCursor(null, 'prev')
  const unfilled = last !== null && last.value.length < pageRecords
  let number = last === null ? 0 : last.key + (unfilled ? 0 : 1)
  const together = unfilled ? [...last.value, ...records] : records
  for (let at = 0; at < together.length; at += pageRecords, number++)
    void pages.put(together.slice(at, at + pageRecords), number).catch(toldByDone)
}

/** Puts records in the place of those of the same id, wherever they are. Seldom: only what is withheld changes. */
export async function replaceInPages(
  pages: Pages<'readwrite'>,
  changed: readonly HeldRecord[],
): Promise<void> {
  if (changed.length === 0) return
  const byId = new Map(changed.map((record) => [record.id, record]))
  for (let cursor = await pages.openCursor(); cursor !== null; cursor = await cursor.continue()) {
    if (!cursor.value.some(({ id }) => byId.has(id))) continue
    void cursor.update(cursor.value.map((record) => byId.get(record.id) ?? record))
  }
}
