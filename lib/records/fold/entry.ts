import type { RecordEnvelope, StoredRecord } from '../envelope'

/** A record as a device holds it: with the log's number, or, while it waits to be sent, without. */
export type HeldRecord = RecordEnvelope &
  Partial<Pick<StoredRecord, 'seq' | 'receivedAt' | 'clockShiftMs' | 'withheld'>>

/** Why and by whom a record no longer counts. It stays readable. */
export type Withdrawn = {
  id: string
  by: string
  at: string
  reason: string
  replacedBy?: string
  /** The import that was withdrawn, and this record with it. */
  withImport?: string
}

/** One record, folded: what was said, who said it and when, and whether it still counts. */
export type Entry<Body> = {
  id: string
  body: Body
  by: string
  /** The moment it was said, put right where the device's clock was wrong. ISO 8601, UTC. */
  at: string
  /** Still on this device only. */
  waiting: boolean
  withdrawn?: Withdrawn
  withheld?: StoredRecord['withheld']
  /** The record that this one is a duplicate of. */
  sameAs?: string
}

/** As toISOString writes it, in years of four digits. */
const inUtc = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/

/** A clock that is off by less than this is taken as right: a slow network looks the same. */
const clockSlackMs = 60_000

/**
 * The moment a record was said, in UTC. A phone with a wrong clock is put right by the difference that the server
 * measured when the record arrived.
 */
export function saidAtCorrected(record: Pick<HeldRecord, 'saidAt' | 'clockShiftMs'>): string {
  const shift = record.clockShiftMs ?? 0
  // Nearly every record says it as it is to be shown; a phone folds tens of thousands at each start.
  if (Math.abs(shift) <= clockSlackMs && inUtc.test(record.saidAt)) return record.saidAt
  const saidAtMs = Date.parse(record.saidAt)
  return new Date(Math.abs(shift) > clockSlackMs ? saidAtMs + shift : saidAtMs).toISOString()
}

export function entryOf(record: HeldRecord): Entry<Record<string, unknown>> {
  return {
    id: record.id,
    body: record.body,
    by: record.author,
    at: saidAtCorrected(record),
    waiting: record.seq === undefined,
    ...(record.withheld === undefined ? {} : { withheld: record.withheld }),
  }
}
