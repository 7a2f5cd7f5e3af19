import type { Database } from 'better-sqlite3'
import { asStored } from './moment'

/** What can be done to a person; each happening is written down for ever. */
export type PersonEventKind =
  | 'first manager set up'
  | 'invited'
  | 'joined'
  | 'added'
  | 'taken over'
  | 'role changed'
  | 'deactivated'
  | 'reactivated'
  | 'reset link made'
  | 'password set by link'
  | 'password changed'
  | 'signed out everywhere'
  | 'device ended'
  | 'device emptied'
  | 'picture lost'
  | 'records admitted'
  | 'records refused'
  | 'token made'
  | 'token ended'

/**
 * `personId` is missing while an invitation has no person yet. `byId` is on whose authority it was done: a manager's,
 * for what a link of theirs did too, or the person's own; missing when it came from the server's terminal, or from a device by itself.
 */
export type PersonEvent = {
  kind: PersonEventKind
  personId?: string
  byId?: string
  detail?: Record<string, string>
}

/** Writes an event. Called inside the transaction that makes the change, so neither is there without the other. */
export function writeEvent(database: Database, event: PersonEvent, now: Date): void {
  database
    .prepare('INSERT INTO "PersonEvent" ("at", "kind", "personId", "byId", "detail") VALUES (?, ?, ?, ?, ?)')
    .run(
      asStored(now),
      event.kind,
      event.personId ?? null,
      event.byId ?? null,
      JSON.stringify(event.detail ?? {}),
    )
}

export type WrittenEvent = {
  seq: number
  at: string
  kind: PersonEventKind
  personId: string | null
  byId: string | null
  detail: Record<string, string>
}

/** The newest events first, at most `count` of them, before the event `before` when it is given. */
export function readEvents(
  database: Database,
  count: number,
  before = Number.MAX_SAFE_INTEGER,
): WrittenEvent[] {
  return database
    .prepare<[number, number], WrittenEvent & { detail: string }>(
      'SELECT * FROM "PersonEvent" WHERE "seq" < ? ORDER BY "seq" DESC LIMIT ?',
    )
    .all(before, count)
    .map((row) => ({ ...row, detail: JSON.parse(row.detail) as Record<string, string> }))
}
