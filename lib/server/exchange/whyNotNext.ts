import { canonicalBytes } from '../log/canonical'
import { contentHashOf, entryHashOf } from '../log/hash'
import type { Kinds } from '../log/judge'
import type { LogTables } from '../log/tables'
import { whatDoesNotFit } from '../log/whatDoesNotFit'
import { type DocumentEntry, documentEntry } from './logDocument'

/** An entry that fits behind the ones before it, and the bytes that its hash covers. */
export type NextEntry = { entry: DocumentEntry; bytes: string }

/**
 * Judges an entry of a document by itself and by the chain: its shape, its number, its links, its hashes, its kind
 * and body, and that what it names is there. The rules of its day let it in, so today's are not asked; the database's
 * own guards are, as it is written.
 *
 * @returns the entry, or half a sentence that says what does not fit
 */
export function whyNotNext(
  sent: unknown,
  head: { seq: number; hash: string },
  kinds: Kinds,
  tables: LogTables,
): NextEntry | { why: string } {
  const shaped = documentEntry.safeParse(sent)
  if (!shaped.success) return { why: whatDoesNotFit(shaped.error) }
  const entry = sent as DocumentEntry
  const { seq, receivedAt, clockShiftMs, contentHash, previousHash, hash, salt, withheldBySeq, record } =
    entry
  if (seq !== head.seq + 1) return { why: `its number is ${seq}, and ${head.seq + 1} is the next.` }
  if (previousHash !== head.hash) return { why: 'it does not follow the entry before it.' }
  const canonical = canonicalBytes(record)
  if (!canonical.ok) return { why: canonical.problem.message }
  const { id, kind, version, author, device, saidAt } = record
  const header = { seq, id, kind, version, author, device, saidAt, receivedAt, clockShiftMs }
  if (entryHashOf(previousHash, contentHash, header) !== hash)
    return { why: 'its hash is not the one of what it says: it was changed.' }
  if ((salt === null) !== (withheldBySeq !== null))
    return { why: 'its salt goes exactly with what is withheld.' }
  if (salt !== null && contentHashOf(salt, canonical.value) !== contentHash)
    return { why: 'its content was changed: its hash is not the one in the chain.' }
  if (withheldBySeq !== null && withheldBySeq <= seq)
    return { why: 'it says that it was withheld before it was there.' }
  const known = Object.hasOwn(kinds, kind) ? kinds[kind] : undefined
  const schema = known && Object.hasOwn(known.versions, version) ? known.versions[version] : undefined
  if (known === undefined || schema === undefined)
    return { why: `this server knows no kind “${kind}”, version ${version}. Update it, then try again.` }
  const body = schema.safeParse(record.body)
  if (!body.success) return { why: whatDoesNotFit(body.error) }
  const missing = known.refersTo(body.data as Record<string, unknown>).find((other) => !tables.has(other))
  if (missing !== undefined) return { why: `it names the record ${missing}, which is not before it.` }
  return { entry, bytes: canonical.value }
}
