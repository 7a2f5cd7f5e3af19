import type { Answer } from '@/lib/records/answer'
import { dayToCome, dayToComeSentence } from '@/lib/records/dayToCome'
import {
  type RecordEnvelope,
  type RecordKind,
  type Refusal,
  type Role,
  recordEnvelope,
} from '@/lib/records/envelope'
import { saidAtCorrected } from '@/lib/records/fold/entry'
import { redact } from '@/lib/records/redact'
import { canonicalBytes } from './canonical'
import { lookupIn } from './lookupIn'
import type { LogRow, LogTables } from './tables'
import { whatDoesNotFit } from './whatDoesNotFit'
import { fieldsWithheldOf, refusedWithholding } from './withhold'

/** Who sends: the person of the session. */
export type Sender = { id: string; role: Role }

export type Kinds = Readonly<Record<string, RecordKind>>

export type Judge = {
  tables: LogTables
  kinds: Kinds
  sender: Sender
  /** The sender's own clock when it sent, in milliseconds since 1970. */
  sentAtMs: number
  receivedAt: Date
}

/** Either the answer is known already, or the record may be stored, as these bytes. */
export type Judgement = { answer: Answer } | { record: RecordEnvelope; bytes: string }

/** How far the moment of saying may lie after the moment of sending, by the same clock, in milliseconds. */
const aheadMs = 5 * 60_000

/**
 * Judges one record against what is in the log now, the records before it in the same batch included. What is in
 * the log already is answered before anything else: it stays right to send it again, whatever changed since.
 */
export function judge(sent: unknown, { tables, kinds, sender, sentAtMs, receivedAt }: Judge): Judgement {
  const parsed = recordEnvelope.safeParse(sent)
  if (!parsed.success) return refused(idOf(sent), 'record shape', whatDoesNotFit(parsed.error))
  // As it was sent: the schema only looks at it.
  const record = sent as RecordEnvelope
  const { id, kind: kindName, version, author, saidAt } = record
  if (author !== sender.id) {
    return refused(
      id,
      'own records only',
      'This was said by somebody else. It is sent when that person signs in on this device.',
    )
  }
  const canonical = canonicalBytes(record)
  if (!canonical.ok) return refused(id, 'record shape', canonical.problem.message)
  const bytes = canonical.value

  const stored = tables.find(id)
  if (stored !== undefined) {
    return says(stored, record, bytes, tables)
      ? { answer: { id, outcome: 'already stored', seq: stored.seq } }
      : refused(
          id,
          'one id, one record',
          'The log holds another record under this id, and what is in the log is never changed. Record it anew.',
        )
  }
  if (Date.parse(saidAt) > sentAtMs + aheadMs) {
    return refused(
      id,
      'clock ahead',
      'It says that it was said after it was sent. Put the device’s clock right and record it anew.',
    )
  }
  const kind = Object.hasOwn(kinds, kindName) ? kinds[kindName] : undefined
  if (kind === undefined) {
    return refused(
      id,
      'known kind',
      `The server knows no kind of record called “${kindName}”. Update the server.`,
    )
  }
  const schema = Object.hasOwn(kind.versions, version) ? kind.versions[version] : undefined
  if (schema === undefined) {
    return refused(
      id,
      'known version',
      `The server knows no version ${version} of the kind “${kindName}”. Update the server.`,
    )
  }
  if (!kind.mayAdd.includes(sender.role)) {
    return refused(
      id,
      'role',
      `A ${sender.role} may not add a record of the kind “${kindName}”. Ask a ${kind.mayAdd.join(' or a ')} to do it.`,
    )
  }
  const body = schema.safeParse(record.body)
  if (!body.success) return refused(id, 'body shape', whatDoesNotFit(body.error))
  const said = body.data as Record<string, unknown>

  const named = kind.refersTo(said)
  if (named.includes(id)) return refused(id, 'no reference to itself', 'A record cannot refer to itself.')
  const missing = [...new Set(named)].filter((other) => !tables.has(other))
  if (missing.length > 0) return { answer: { id, outcome: 'waiting for', ids: missing } }

  const clockShiftMs = receivedAt.getTime() - sentAtMs
  const saying = { ...sender, saidAt: saidAtCorrected({ ...record, clockShiftMs }) }
  if (dayToCome(kind, said, saying.saidAt) !== undefined)
    return refused(id, 'no day to come', dayToComeSentence)
  const refusal =
    kind.refusedBy?.(said, lookupIn(tables), saying) ?? refusedWithholding(record, kinds, tables)
  return refusal === undefined ? { record, bytes } : refused(id, refusal.rule, refusal.sentence)
}

export const refused = (id: string, rule: Refusal['rule'], sentence: Refusal['sentence']) => ({
  answer: { id, outcome: 'refused' as const, rule, sentence },
})

/** Whether the stored record is the one sent, as far as what was withheld since still shows it. */
function says(stored: LogRow, record: RecordEnvelope, bytes: string, tables: LogTables): boolean {
  if (stored.withheldBySeq === null) return stored.bytes === bytes
  const shown = canonicalBytes(redact(record, fieldsWithheldOf(record.id, tables)))
  return shown.ok && shown.value === stored.bytes
}

/** An answer must carry an id even when the record is past reading; empty when there is none. */
export function idOf(sent: unknown): string {
  const id = typeof sent === 'object' && sent !== null && 'id' in sent ? sent.id : undefined
  return typeof id === 'string' ? id : ''
}
