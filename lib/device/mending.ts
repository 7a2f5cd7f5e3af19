import type { OutboxItem } from './outbox'

/** Where a record was said, and what was typed there then: enough to open its form again as it was. */
export type SaidAt = { address: string; drafts: [key: string, value: unknown][] }

type Said = { kind: string; body: Record<string, unknown>; id?: string }

/**
 * Has a record that was said anew take the id of the refused one in whose place it comes: the server holds nothing under
 * that id, and what waits for the refused record then waits for the new one. The first of the same kind takes it; where
 * others of the same step name that one, they name it by its new id.
 */
export function inPlaceOf<New extends Said>(refused: OutboxItem, records: readonly New[]): New[] {
  const { id, kind } = refused.record
  const place = records.findIndex((record) => record.kind === kind)
  if (place < 0) return [...records]
  const own = records[place]!.id
  return records.map((record, at) => ({
    ...record,
    ...(at === place ? { id } : {}),
    body: (own === undefined ? record.body : renamed(record.body, own, id)) as Record<string, unknown>,
  }))
}

function renamed(value: unknown, from: string, to: string): unknown {
  if (value === from) return to
  if (Array.isArray(value)) return value.map((each) => renamed(each, from, to))
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, renamed(each, from, to)]))
}
