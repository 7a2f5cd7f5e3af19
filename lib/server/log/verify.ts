import { setImmediate as nextTurn } from 'node:timers/promises'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { withheldText } from '@/lib/records/redact'
import { contentHashOf, entryHashOf, noPreviousHash } from './hash'
import type { LogTables, WalkedRow } from './tables'
import { fieldsWithheldOf } from './withhold'

export type Verification = {
  /** How many entries fit, from the first. */
  entries: number
  /** The hash of the last entry that fits: it stands for all of them. */
  headHash: string
  /** Records out of which something was withheld, and the number of the withholding. */
  withheld: { seq: number; id: string; bySeq: number }[]
  /** The first thing that does not fit, as a sentence. Absent when all is well. */
  trouble?: { seq: number; sentence: string }
}

/** The database's own guards of the log. Without one of them the log can be changed and nobody would be told. */
export const logGuards = [
  'LogEntry_is_never_changed',
  'LogEntry_is_never_deleted',
  'LogEntry_is_appended_to_the_chain',
  'LogContent_is_never_deleted',
  'LogContent_belongs_to_its_entry',
  'LogContent_is_changed_by_a_withholding_only',
  'No_general_purpose_switch_is_a_repair',
  'No_report_is_read_off_a_general_purpose_switch',
] as const

/** Entries between two turns of the event loop. */
const pageSize = 500

/**
 * Walks the chain from the first entry and stops at the first that does not fit: a number left out, a link to
 * another hash, an entry or its content changed, content gone without a withholding, or a guard missing.
 *
 * What is left of a record after a withholding is held to its entry, and only there: its hash covered what is gone.
 */
export async function verify(
  tables: LogTables,
  progress: (done: number, of: number) => void,
): Promise<Verification> {
  const end = tables.head()?.seq ?? 0
  const found: Verification = { entries: 0, headHash: noPreviousHash, withheld: [] }
  const missing = logGuards.filter((guard) => !tables.guards().includes(guard))
  if (missing.length > 0) {
    const sentence = `The database has lost what guards the log: ${missing.join(', ')}. Restore a back-up.`
    return { ...found, trouble: { seq: 0, sentence } }
  }
  while (found.entries < end) {
    const rows = tables.walk(found.entries, pageSize)
    for (const row of rows) {
      const sentence = whatDoesNotFitIn(row, found, tables)
      if (sentence !== undefined) return { ...found, trouble: { seq: row.seq, sentence } }
      if (row.withheldBySeq !== null) {
        found.withheld.push({ seq: row.seq, id: row.id, bySeq: row.withheldBySeq })
      }
      found.entries = row.seq
      found.headHash = row.hash
    }
    if (rows.length === 0) break
    progress(found.entries, end)
    await nextTurn()
  }
  const contents = tables.contentCount(end)
  if (contents !== found.entries) {
    const sentence = `There are ${found.entries} entries and ${contents} contents; some content has no entry.`
    return { ...found, trouble: { seq: found.entries, sentence } }
  }
  return found
}

function whatDoesNotFitIn(
  row: WalkedRow,
  before: { entries: number; headHash: string },
  tables: LogTables,
): string | undefined {
  const { seq } = row
  if (seq !== before.entries + 1) return `Entry ${before.entries + 1} is missing; the next one is ${seq}.`
  if (row.previousHash !== before.headHash) {
    return `Entry ${seq} does not follow entry ${seq - 1}: one of the two was put there later.`
  }
  if (entryHashOf(row.previousHash, row.contentHash, row) !== row.hash) {
    return `Entry ${seq} was changed: its hash is not the one of what it says.`
  }
  if (row.bytes === null) return `The content of entry ${seq} is gone, and no withholding took it.`
  const said = readRecord(row.bytes)
  if (row.withheldBySeq === null) {
    if (row.salt === null || contentHashOf(row.salt, row.bytes) !== row.contentHash) {
      return `The content of entry ${seq} was changed: its hash is not the one in the chain.`
    }
  } else {
    const wrong = whatDoesNotFitInWithheld(row, said?.body ?? {}, tables)
    if (wrong !== undefined) return wrong
  }
  const differing = sharedColumns.find((column) => said?.[column] !== row[column])
  if (differing !== undefined)
    return `Entry ${seq} and its content name different things as its ${differing}.`
  return row.kind === 'withholding' ? whatIsNotWithheld(row, said?.body ?? {}, tables) : undefined
}

const sharedColumns = ['id', 'kind', 'version', 'author', 'device', 'saidAt'] as const

type Body = RecordEnvelope['body']

function whatDoesNotFitInWithheld(row: WalkedRow, body: Body, tables: LogTables): string | undefined {
  const { seq, withheldBySeq } = row
  const withholdings = tables.withholdingsOf(row.id)
  const last = withholdings.at(-1)
  if (last === undefined || tables.find(last.id)?.seq !== withheldBySeq || (withheldBySeq ?? 0) <= seq) {
    return `Entry ${seq} says that it was withheld by record ${withheldBySeq}, which says nothing of the kind.`
  }
  if (row.salt !== null) return `Entry ${seq} is withheld by record ${withheldBySeq}, but its salt was kept.`
  const kept = fieldsWithheldOf(row.id, tables).find(
    (field) => Object.hasOwn(body, field) && body[field] !== withheldText,
  )
  return kept && `The field “${kept}” of entry ${seq} was withheld by record ${withheldBySeq}, and is back.`
}

/** A withholding whose record was put back as it was before. */
function whatIsNotWithheld(row: WalkedRow, body: Body, tables: LogTables): string | undefined {
  const target = tables.find(String(body.record))
  return target?.withheldBySeq === null
    ? `Entry ${row.seq} withholds something of entry ${target.seq}, which still has it.`
    : undefined
}

function readRecord(bytes: string): Partial<RecordEnvelope> | undefined {
  try {
    return JSON.parse(bytes) as Partial<RecordEnvelope>
  } catch (cause) {
    if (cause instanceof SyntaxError) return undefined
    throw cause
  }
}
