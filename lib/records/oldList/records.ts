import type { ImportBody } from '../kinds/import'
import { mostImportedLines } from '../kinds/importedLines'
import type { Plan } from './plan'

/** A record as it is added. */
export type PlannedRecord = { id: string; kind: string; body: Record<string, unknown> }

/**
 * The records of a confirmed plan, in the order in which they are said: the import, and before each handful of its
 * records the one that says which rows they come from.
 *
 * @returns none when no row is taken over
 */
export function recordsOf(
  { verdicts, things }: Plan,
  about: Omit<ImportBody, 'rows' | 'taken'>,
  newId: () => string,
): PlannedRecord[] {
  const taken = verdicts.filter((verdict) => verdict.outcome === 'taken over')
  if (taken.length === 0) return []
  const importId = newId()
  const body = { ...about, rows: verdicts.length, taken: taken.length }
  const members = [
    ...things,
    ...taken.flatMap(({ row, reports }) =>
      reports.map(({ id, body }) => ({ row, id, kind: 'report', body: body as Record<string, unknown> })),
    ),
  ]
  const records: PlannedRecord[] = [{ id: importId, kind: 'import', body }]
  for (let at = 0; at < members.length; at += mostImportedLines) {
    const some = members.slice(at, at + mostImportedLines)
    const lines = some.map(({ row, id }) => ({ row, record: id }))
    records.push({ id: newId(), kind: 'imported lines', body: { importId, lines } })
    records.push(...some.map(({ id, kind, body }) => ({ id, kind, body })))
  }
  return records
}
