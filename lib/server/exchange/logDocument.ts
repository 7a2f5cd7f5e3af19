import { z } from 'zod'
import { ucumCode } from '@/lib/core/pressure'
import { recordEnvelope, roles } from '@/lib/records/envelope'
import { unitOfField } from '@/lib/records/fieldUnits'
import { numberFields } from '@/lib/records/numberFields'

/** The whole log in one JSON document: what is exported, and what an empty server takes in. */

const hash = z.string().regex(/^[0-9a-f]{64}$/, 'A hash is 64 hexadecimal digits in lower case.')
const moment = z.iso.datetime({ offset: true })
const seq = z.int().min(1)

export const documentFormat = 'Inchwater log'
/** The version that is exported. In version 1 the sources of another value stood without their reports and days. */
export const documentVersion = 2

/** The versions that are taken in. They differ in the ratings alone, which are worked out anew. */
export const versionsTakenIn = [1, documentVersion] as const

/** The name under which the schema of the document is kept beside it. */
export const schemaFileName = 'inchwater-log.schema.json'

/** Somebody whom the log names as an author. No password and no way to sign in goes out. */
export const documentPerson = z.strictObject({
  id: z.string().min(1).max(64),
  name: z.string().min(1).max(60),
  role: z.enum(roles),
  active: z.boolean(),
})

export type DocumentPerson = z.infer<typeof documentPerson>

/** What stands before the entries. `head` is the last of them: it tells a document that was cut short. */
export const documentHead = z.strictObject({
  $schema: z.literal(schemaFileName),
  format: z.literal(documentFormat),
  version: z.literal(versionsTakenIn),
  exportedAt: moment,
  head: z.strictObject({ seq: z.int().min(0), hash }),
  /** UCUM codes. */
  units: z.strictObject({
    /** Of the fields of records that are numbers, by their names, at whatever depth. */
    fields: z.record(z.string(), z.string()),
    /** The codes of the units in which people wrote: `unit` of a report, a reading or a baseline. */
    codes: z.record(z.string(), z.string()),
  }),
  people: z.array(documentPerson).max(100_000),
})

export type DocumentHead = z.infer<typeof documentHead>

/** One entry of the log, with all that its hashes cover. */
export const documentEntry = z.strictObject({
  seq,
  receivedAt: moment,
  clockShiftMs: z.int(),
  /** SHA-256 of salt and record as canonical JSON (RFC 8785). */
  contentHash: hash,
  previousHash: hash,
  /** SHA-256 of previousHash, contentHash and what the entry says about itself. */
  hash,
  /** Gone, like what was withheld, once `withheldBySeq` names the entry that took it. */
  salt: z.union([z.string().regex(/^[0-9a-f]{32}$/, 'A salt is 32 hexadecimal digits.'), z.null()]),
  withheldBySeq: z.union([seq, z.null()]),
  record: recordEnvelope,
})

export type DocumentEntry = z.infer<typeof documentEntry>

/** The unit of every number in the records, and of the units in which people wrote. */
export const documentUnits = (): DocumentHead['units'] => ({
  fields: Object.fromEntries(
    numberFields().flatMap((field) => {
      const unit = unitOfField(field)
      return unit === undefined ? [] : [[field, unit]]
    }),
  ),
  codes: { ...ucumCode },
})
