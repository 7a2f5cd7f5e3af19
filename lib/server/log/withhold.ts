import { z } from 'zod'
import type { RecordEnvelope, RecordKind, Refusal } from '@/lib/records/envelope'
import { redact } from '@/lib/records/redact'
import { canonicalBytes } from './canonical'
import type { LogTables } from './tables'

/** The kind that the database's own guard knows by name. Nothing else may take anything out of the log. */
const withholdingKind = 'withholding'

const withholdingBody = z.object({ record: z.string(), fields: z.array(z.string()) })

const bodyOf = (bytes: string) => withholdingBody.parse((JSON.parse(bytes) as RecordEnvelope).body)

/** The fields that are gone from a record, by every withholding that names it, in the order of their going. */
export function fieldsWithheldOf(id: string, tables: LogTables): string[] {
  const fields = tables.withholdingsOf(id).flatMap((withholding) => bodyOf(withholding.bytes).fields)
  return [...new Set(fields)]
}

/**
 * What is taken out of the log never comes back, so the log itself, and not only the kind's rule, asks whether the
 * fields are ones that may go. Records of every other kind pass.
 */
export function refusedWithholding(
  record: RecordEnvelope,
  kinds: Readonly<Record<string, RecordKind>>,
  tables: LogTables,
): Refusal | undefined {
  if (record.kind !== withholdingKind) return undefined
  const { record: id, fields } = withholdingBody.parse(record.body)
  const kind = tables.find(id)?.kind ?? ''
  const allowed = kinds[kind]?.mayWithhold ?? []
  const kept = fields.filter((field) => !allowed.includes(field))
  if (kept.length === 0) return undefined
  return {
    rule: 'only personal data can be withheld',
    sentence: `These fields of the record cannot be withheld: ${kept.join(', ')}. Withdraw the record if it is wrong.`,
  }
}

/**
 * Takes the fields that a withholding just stored names out of the record that it names.
 *
 * @returns whether the record was a withholding
 */
export function applyWithholding(record: RecordEnvelope, seq: number, tables: LogTables): boolean {
  if (record.kind !== withholdingKind) return false
  const { record: id, fields } = withholdingBody.parse(record.body)
  const target = tables.find(id)
  if (target === undefined) throw new RangeError(`applyWithholding: there is no record ${id}`)
  const left = canonicalBytes(redact(JSON.parse(target.bytes) as RecordEnvelope, fields))
  if (!left.ok) throw new RangeError(`applyWithholding: record ${id} is not canonical`)
  tables.blank(target.seq, left.value, seq)
  return true
}
