import { setImmediate as nextTurn, setTimeout as sleep } from 'node:timers/promises'
import Database from 'better-sqlite3'
import { type Problem, type Result, success } from '@/lib/core/result'
import { databaseFile } from '../database'
import { noPreviousHash } from '../log/hash'
import type { Kinds } from '../log/judge'
import { type LogTables, openTables, RefusedByDatabase } from '../log/tables'
import { LogBusy } from '../log/writeLock'
import type { DocumentEntry } from './logDocument'
import { DocumentDamaged, readDocument } from './readDocument'
import { type TakenOver, takeOverPeople } from './takeOverPeople'
import { whyNotNext } from './whyNotNext'

export type ImportedLog = {
  entries: number
  headHash: string
  /** Records out of which something is withheld: it stays so. */
  withheld: number
  people: TakenOver
}

/** Entries between two turns of the event loop, and the longest wait for the write lock, in milliseconds. */
const turnEvery = 200
const patienceMs = 10_000

/** What stands in a withheld entry's salt until its withholding is there and takes it; in one transaction. */
const noSalt = '0'.repeat(32)

/** A reason for which nothing is taken in. */
class NotTakenIn extends Error {
  constructor(readonly problem: Problem) {
    super(problem.message)
  }
}

/**
 * Takes a whole exported log into an empty one: the same entries with the same numbers, salts and hashes, and what was
 * withheld stays withheld. One transaction: the whole of it, or nothing.
 *
 * @param file the exported document
 * @param by the manager's id
 * @returns a problem when the log is not empty, or when an entry does not fit, which is named
 * @throws LogBusy when nobody could write for ten seconds
 */
export async function importLog(
  file: string,
  { kinds, by, now, folder }: { kinds: Kinds; by: string; now: Date; folder?: string },
): Promise<Result<ImportedLog>> {
  const read = readDocument(file)
  if (!read.ok) return read
  const { head: wanted, entries } = read.value
  const db = new Database(databaseFile(folder), { fileMustExist: true })
  try {
    const tables = openTables(db)
    await beginPatiently(tables)
    try {
      if (tables.head() !== undefined) throw new NotTakenIn(notEmpty)
      const { head, withheld } = await takeIn(entries, kinds, tables)
      if (head.seq !== wanted.head.seq || head.hash !== wanted.head.hash)
        throw new NotTakenIn(cutShort(head.seq, wanted.head.seq))
      const people = await takeOverPeople(db, wanted.people, by, now)
      tables.commit()
      tables.scrub()
      return success({ entries: head.seq, headHash: head.hash, withheld, people })
    } catch (cause) {
      tables.rollback()
      if (cause instanceof NotTakenIn) return { ok: false, problem: cause.problem }
      throw cause
    }
  } finally {
    db.close()
  }
}

async function takeIn(entries: Generator<unknown, void>, kinds: Kinds, tables: LogTables) {
  let head = { seq: 0, hash: noPreviousHash }
  let withheld = 0
  /** What waits for the entry that withholds it, by that entry's number. */
  const blankAt = new Map<number, { seq: number; bytes: string }[]>()
  for (;;) {
    const next = nextOf(entries, head.seq + 1)
    if (next.done) break
    const judged = whyNotNext(next.value, head, kinds, tables)
    if ('why' in judged) throw doesNotFit(head.seq + 1, judged.why)
    const { entry, bytes } = judged
    insert(entry, bytes, tables)
    head = { seq: entry.seq, hash: entry.hash }
    if (entry.withheldBySeq !== null) {
      const waiting = blankAt.get(entry.withheldBySeq) ?? []
      blankAt.set(entry.withheldBySeq, [...waiting, { seq: entry.seq, bytes }])
      withheld += 1
    }
    blank(entry, blankAt.get(entry.seq), tables)
    blankAt.delete(entry.seq)
    if (head.seq % turnEvery === 0) await nextTurn()
  }
  for (const [by, [waiting]] of blankAt)
    throw doesNotFit(waiting!.seq, `it says that entry ${by} withholds it, which is not there.`)
  return { head, withheld }
}

function nextOf(entries: Generator<unknown, void>, seq: number): IteratorResult<unknown, void> {
  try {
    return entries.next()
  } catch (cause) {
    if (cause instanceof DocumentDamaged) throw doesNotFit(seq, `${cause.message}.`)
    throw cause
  }
}

function insert(entry: DocumentEntry, bytes: string, tables: LogTables): void {
  const { seq, receivedAt, clockShiftMs, contentHash, previousHash, hash, salt, record } = entry
  const { id, kind, version, author, device, saidAt } = record
  const row = { seq, id, kind, version, author, device, saidAt, receivedAt, clockShiftMs }
  if (tables.has(id)) throw doesNotFit(seq, 'its id is in the file already.')
  try {
    tables.insert({ ...row, contentHash, previousHash, hash }, { bytes, salt: salt ?? noSalt })
  } catch (cause) {
    if (cause instanceof RefusedByDatabase) throw doesNotFit(seq, cause.refusal.sentence)
    throw cause
  }
}

/** Takes the salt of what an entry withholds, as the database lets nobody but a withholding do it. */
function blank(
  { seq, record }: DocumentEntry,
  waiting: readonly { seq: number; bytes: string }[] | undefined,
  tables: LogTables,
): void {
  for (const target of waiting ?? []) {
    if (record.kind !== 'withholding' || tables.find(String(record.body.record))?.seq !== target.seq)
      throw doesNotFit(target.seq, `it says that entry ${seq} withholds it, which says nothing of the kind.`)
    tables.blank(target.seq, target.bytes, seq)
  }
}

async function beginPatiently(tables: LogTables): Promise<void> {
  const startedMs = performance.now()
  while (!tables.begin()) {
    if (performance.now() - startedMs > patienceMs)
      throw new LogBusy('Another program kept the log locked for ten seconds.')
    await sleep(20)
  }
}

const notEmpty: Problem = {
  code: 'log-not-empty',
  message:
    'This server has records already, and a whole log is taken into an empty one only: two chains cannot be made one. Start a new server with an empty data folder, and take it in there.',
}

const doesNotFit = (seq: number, why: string): NotTakenIn =>
  new NotTakenIn({
    code: 'entry-does-not-fit',
    message: `Entry ${seq} does not fit: ${why} Nothing was taken in. Take an export that is whole.`,
  })

const cutShort = (found: number, wanted: number): Problem => ({
  code: 'entry-does-not-fit',
  message: `The file says that it ends with entry ${wanted}, and it ends with another one, ${found}. Nothing was taken in. Take an export that is whole.`,
})
