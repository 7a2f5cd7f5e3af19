import { ratingsOnFile } from '@/lib/records/view/ratingsOnFile'
import type { WalkedRow } from '../log/tables'
import {
  type DocumentHead,
  documentFormat,
  documentUnits,
  documentVersion,
  schemaFileName,
} from './logDocument'
import type { Snapshot } from './snapshot'

/**
 * The whole log as one JSON document, piece by piece: head, entries, and last the ratings with their standings. One
 * entry a line, so that an import can read it line by line, however long it is.
 *
 * @param now the moment of the export, by which the ratings are judged
 */
export function* exportLog(snapshot: Snapshot, now: Date): Generator<string> {
  const head: DocumentHead = {
    $schema: schemaFileName,
    format: documentFormat,
    version: documentVersion,
    exportedAt: now.toISOString(),
    head: snapshot.head,
    units: documentUnits(),
    people: authorsAmong(snapshot),
  }
  yield `${JSON.stringify(head).slice(0, -1)},\n"entries":[\n`
  let first = true
  for (const rows of snapshot.pages()) {
    yield `${first ? '' : ',\n'}${rows.map(entryLine).join(',\n')}`
    first = false
  }
  yield '\n],\n"ratings":[\n'
  const ratings = ratingsOnFile(snapshot.file(), now.toISOString())
  yield ratings.map((rating) => JSON.stringify(rating)).join(',\n')
  yield '\n]}\n'
}

/** Everybody whom the log names as an author: the others leave no trace in it. */
function authorsAmong(snapshot: Snapshot): DocumentHead['people'] {
  const authors = new Set<string>()
  for (const rows of snapshot.pages()) for (const { author } of rows) authors.add(author)
  return snapshot.people
    .filter(({ id }) => authors.has(id))
    .map(({ id, name, role, active }) => ({ id, name, role, active }))
}

/** An entry as one line. What was said is put in as it is kept: the very bytes that the hash covers. */
function entryLine(row: WalkedRow): string {
  const { seq, receivedAt, clockShiftMs, contentHash, previousHash, hash, salt, withheldBySeq, bytes } = row
  const entry = { seq, receivedAt, clockShiftMs, contentHash, previousHash, hash, salt, withheldBySeq }
  return `${JSON.stringify(entry).slice(0, -1)},"record":${bytes ?? 'null'}}`
}
