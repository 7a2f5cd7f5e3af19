import './withoutEval'
import { z } from 'zod'
import { type Role, roles } from './roles'

export { type Role, roles }

export const uuidv7 = z.uuidv7('A record id is a UUID, version 7, made where the record was said.')

/** Every record, whatever its kind: what was said, by whom, when, and on which device. */
export const recordEnvelope = z.strictObject({
  id: uuidv7,
  kind: z.string().min(1).max(40),
  version: z.int().min(1).max(1000),
  body: z.record(z.string(), z.unknown()),
  /** The moment it was said, by the clock of the device, ISO 8601 with its offset. */
  saidAt: z.iso.datetime({ offset: true }),
  /** The person's id. */
  author: z.string().min(1).max(64),
  /** An id of the device, made once in its browser. */
  device: z.string().min(1).max(64),
})

export type RecordEnvelope = z.infer<typeof recordEnvelope>

/** A record with the number that the log gave it and the time the server took it in. */
export type StoredRecord = RecordEnvelope & {
  seq: number
  receivedAt: string
  /** receivedAt minus the sender's clock when it sent, in milliseconds: what puts a wrong clock right. */
  clockShiftMs: number
  /** Present once a manager has withheld fields: the id of the withholding record, and which fields are gone. */
  withheld?: { by: string; fields: string[] }
}

/** A refusal names its rule, says why, and says what to do instead. */
export type Refusal = { rule: string; sentence: string }

/** What a kind's own rule may ask of the log. */
export type Lookup = {
  /** A stored record by its id; undefined when it is not there (yet). */
  (id: string): { kind: string; body: Record<string, unknown> } | undefined
  /** When the first ending of a visit that still stands was said, ISO 8601; undefined while the visit goes on. */
  endedAt(visitId: string): string | undefined
  /** The record that a duplicate was joined to; any other id as it is. */
  keptId(id: string): string
}

/** Who says a record, and when (ISO 8601, put right by the server where the device's clock was wrong). */
export type Saying = { id: string; role: Role; saidAt: string }

/**
 * A kind of record: one file each in lib/records/kinds. `versions` keeps the schema of every version ever
 * released, because a record once accepted is readable for ever.
 */
export type RecordKind<Body = Record<string, unknown>> = {
  kind: string
  /** The version that this program writes. */
  version: number
  versions: { readonly [version: number]: z.ZodType }
  mayAdd: readonly Role[]
  maySee: readonly Role[]
  /** Ids of the records that must be in the log before this one can be read. */
  refersTo(body: Body): string[]
  /** A rule that needs other records to be judged. The records that refersTo names are there when it is called. */
  refusedBy?(body: Body, lookup: Lookup, saying: Saying): Refusal | undefined
  /** Body fields that hold the day on which something was done, found or said: none that is still to come. */
  happenedOn?: readonly string[]
  /** Body fields that a manager may withhold, because they can carry personal data. */
  mayWithhold: readonly string[]
}

/** Fills a kind's place in the table with its own body type forgotten, so that kinds of any body can be listed. */
export function defineKind<Body>(kind: RecordKind<Body>): RecordKind {
  return kind as unknown as RecordKind
}
