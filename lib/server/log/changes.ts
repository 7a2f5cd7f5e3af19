import type { RecordEnvelope, Role, StoredRecord } from '@/lib/records/envelope'
import type { Kinds } from './judge'
import type { LogRow, LogTables } from './tables'
import { fieldsWithheldOf } from './withhold'

export type ChangesAsked = {
  /** The last number the asker has examined; 0 at first. */
  after: number
  role: Role
  /** The most records to answer with, 1 or more. */
  limit: number
}

/** `next` is the last number examined, to be asked after next; `more` says that the log goes on behind it. */
export type Changes = { records: StoredRecord[]; next: number; more: boolean }

/**
 * The records after a number that a role may see, in order. Asking again after `next` until there is no more
 * gives every one of them once; records of other kinds leave gaps in the numbers.
 *
 * @throws RangeError unless `after` is a whole number from 0 and `limit` one from 1
 */
export function readChanges({ after, role, limit }: ChangesAsked, kinds: Kinds, tables: LogTables): Changes {
  if (!Number.isSafeInteger(after) || after < 0) throw new RangeError('readChanges requires after ≥ 0')
  if (!Number.isSafeInteger(limit) || limit < 1) throw new RangeError('readChanges requires limit ≥ 1')
  // The end first: what others append while this reads is for the next time.
  const end = tables.head()?.seq ?? 0
  const rows = tables.page(after, end, kindsSeenBy(role, kinds), limit)
  const last = rows.at(-1)
  const next = rows.length === limit && last !== undefined ? last.seq : Math.max(after, end)
  return { records: rows.map((row) => storedRecord(row, tables)), next, more: next < end }
}

/** The kinds of record that a role may see. */
export const kindsSeenBy = (role: Role, kinds: Kinds): string[] =>
  Object.values(kinds)
    .filter((kind) => kind.maySee.includes(role))
    .map((kind) => kind.kind)

/** A row as the record it holds, with what the log adds to it. */
export function storedRecord(row: LogRow, tables: LogTables): StoredRecord {
  const record = JSON.parse(row.bytes) as RecordEnvelope
  const { seq, receivedAt, clockShiftMs } = row
  const stored = { ...record, seq, receivedAt, clockShiftMs }
  const by = row.withheldBySeq === null ? undefined : tables.withholdingsOf(row.id).at(-1)?.id
  return by === undefined ? stored : { ...stored, withheld: { by, fields: fieldsWithheldOf(row.id, tables) } }
}
