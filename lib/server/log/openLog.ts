import type { Database } from 'better-sqlite3'
import type { Answer } from '@/lib/records/answer'
import type { Role, StoredRecord } from '@/lib/records/envelope'
import { thePicture } from '@/lib/records/withholdable'
import { appendBatch } from './append'
import { type Changes, type ChangesAsked, kindsSeenBy, readChanges, storedRecord } from './changes'
import { noPreviousHash } from './hash'
import type { Kinds, Sender } from './judge'
import { openTables, RefusedByDatabase } from './tables'
import { type Verification, verify } from './verify'
import { fieldsWithheldOf } from './withhold'
import { underWriteLock } from './writeLock'

/** The append-only log: the one place where what people say is kept. */
export type Log = {
  /**
   * Stores what a person sends, in one transaction, and answers record by record in the order sent.
   *
   * @throws RangeError when sentAt is no moment; LogBusy when nobody could write for ten seconds
   */
  appendRecords(batch: { sentAt: string; records: readonly unknown[] }, sender: Sender): Promise<Answer[]>
  readChanges(asked: ChangesAsked): Changes
  /** The number of the newest record that a role may see; 0 while there is none. */
  newestSeq(role: Role): number
  /** The newest entry: its number, and the hash that stands for it and all before it. */
  head(): { seq: number; hash: string }
  lookup(id: string): StoredRecord | undefined
  /** The hash of the entry with this number; undefined when there is none. It stands for all entries up to there. */
  hashAt(seq: number): string | undefined
  /** Whether a photo names a picture by its hash, and whether a withholding of any such photo took the picture. */
  pictureNamed(sha256: string): PictureNamed
  /** Walks the whole chain. `progress` is told how many entries of how many were walked. */
  verify(progress?: (done: number, of: number) => void): Promise<Verification>
}

export type PictureNamed = 'not named' | 'named' | 'withheld'

export type LogOptions = {
  /** A connection of the log's own, to a database that prisma/migrate.ts prepared. */
  db: Database
  kinds: Kinds
  now: () => Date
  /** Spreads the waiting for a lock: a number in [0, 1). */
  jitter?: () => number
}

/** @example openLog({ db, kinds: recordKinds, now: () => new Date() }) */
export function openLog({ db, kinds, now, jitter = Math.random }: LogOptions): Log {
  const tables = openTables(db)
  // From the start: whoever wrote last may have stopped before it could.
  let scrubWanted = true

  return {
    async appendRecords({ sentAt, records }, sender) {
      const receivedAt = now()
      const sentAtMs = Date.parse(sentAt)
      if (Number.isNaN(sentAtMs))
        throw new RangeError('appendRecords requires sentAt to be a moment, ISO 8601')
      const append = (careful: boolean) =>
        underWriteLock(tables, jitter, () =>
          appendBatch(records, { tables, kinds, sender, sentAtMs, receivedAt, careful }),
        )
      const { answers, withheldSomething } = await append(false).catch((cause) => {
        // Seldom: the kinds' own rules let pass what the database refuses. The batch is undone, and done with care.
        if (cause instanceof RefusedByDatabase) return append(true)
        throw cause
      })
      scrubWanted ||= withheldSomething
      // With a reader in the way it is tried again after the next batch.
      if (scrubWanted) scrubWanted = !tables.scrub()
      return answers
    },
    pictureNamed(sha256) {
      const photos = tables.photosNaming(sha256)
      if (photos.length === 0) return 'not named'
      const isWithheld = photos.some(
        ({ id, withheldBySeq }) =>
          withheldBySeq !== null && fieldsWithheldOf(id, tables).includes(thePicture),
      )
      return isWithheld ? 'withheld' : 'named'
    },
    readChanges: (asked) => readChanges(asked, kinds, tables),
    newestSeq: (role) => tables.newest(kindsSeenBy(role, kinds)),
    head: () => tables.head() ?? { seq: 0, hash: noPreviousHash },
    lookup: (id) => {
      const row = tables.find(id)
      return row && storedRecord(row, tables)
    },
    hashAt(seq) {
      const [row] = seq < 1 ? [] : tables.walk(seq - 1, 1)
      return row?.seq === seq ? row.hash : undefined
    },
    verify: (progress = () => {}) => verify(tables, progress),
  }
}
