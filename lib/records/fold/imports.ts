import type { ImportedLinesBody } from '../kinds/importedLines'
import { textsIn } from '../textsIn'
import type { HeldRecord, Withdrawn } from './entry'

/** Where a record came from: the import, and the row of its file. */
export type ImportedFrom = { importId: string; row: number }

/** What an import may bring in, and so what goes with it: things by their names, and reports. */
const things: readonly string[] = ['maker', 'equipment range', 'position']

/** Records about the log itself: they build on nothing. */
const aboutRecords: readonly string[] = ['withdrawal', 'withholding', 'imported lines']

/**
 * Which records came in by which import. Only what the import's own author said belongs to it: nobody takes somebody
 * else's record into an import, to withdraw it with the import later.
 *
 * @param records in the order of the log
 */
export function importedRecords(records: readonly HeldRecord[]): Map<string, ImportedFrom> {
  // Gathered first: what waits on a device has no number yet, so an import may stand behind its rows.
  const authors = new Map(
    records.filter(({ kind }) => kind === 'import').map(({ id, author }) => [id, author]),
  )
  const claimed = new Map<string, ImportedFrom & { author: string }>()
  for (const { kind, author, body } of records) {
    if (kind !== 'imported lines') continue
    const { importId, lines } = body as ImportedLinesBody
    if (authors.get(importId) !== author) continue
    for (const { row, record } of lines)
      if (!claimed.has(record)) claimed.set(record, { importId, row, author })
  }
  const imported = new Map<string, ImportedFrom>()
  if (claimed.size === 0) return imported
  for (const { id, kind, author } of records) {
    const claim = claimed.get(id)
    if (claim?.author === author && (kind === 'report' || things.includes(kind)))
      imported.set(id, { importId: claim.importId, row: claim.row })
  }
  return imported
}

/**
 * Adds to the withdrawn records those that go with a withdrawn import. A maker, range or position of it stays while a
 * record from elsewhere that counts names it: what others built on it is not lost.
 *
 * @param records in the order of the log
 * @param withdrawn is changed
 */
export function withdrawWithImports(
  records: readonly HeldRecord[],
  imported: ReadonlyMap<string, ImportedFrom>,
  withdrawn: Map<string, Withdrawn>,
): void {
  const going = new Map<string, HeldRecord>()
  for (const record of records) {
    const from = imported.get(record.id)
    if (from !== undefined && withdrawn.has(from.importId) && !withdrawn.has(record.id))
      going.set(record.id, record)
  }
  if (going.size === 0) return
  for (const record of records) {
    if (!going.has(record.id) && !withdrawn.has(record.id) && !aboutRecords.includes(record.kind))
      keepWhatIsNamed(record, going)
  }
  for (const id of going.keys()) {
    const { importId } = imported.get(id)!
    withdrawn.set(id, { ...withdrawn.get(importId)!, withImport: importId })
  }
}

/** Takes out of what goes every thing that a record names, and what that names in its turn. */
function keepWhatIsNamed(record: HeldRecord, going: Map<string, HeldRecord>): void {
  for (const id of textsIn(record.body)) {
    const named = going.get(id)
    if (named === undefined || !things.includes(named.kind)) continue
    going.delete(id)
    keepWhatIsNamed(named, going)
  }
}
