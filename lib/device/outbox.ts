import type { Answer } from '@/lib/records/answer'
import type { RecordEnvelope } from '@/lib/records/envelope'
import type { SaidAt } from './mending'

/** A record on its way: waiting to be sent, or refused and kept until its person has dealt with it. */
export type OutboxItem = {
  record: RecordEnvelope
  /** 1, 2, 3 … on this device: the order of sending. */
  order: number
  refusal?: { rule: string; sentence: string }
  /** Where it was said, so that it can be mended if it is refused. */
  saidAt?: SaidAt
}

/** What a batch's answers do to the outbox. */
export type Sent = {
  /** Now in the log, with their numbers: out of the outbox. */
  stored: { record: RecordEnvelope; seq: number }[]
  /** Refused: kept, with the reason. */
  refused: OutboxItem[]
}

/** The server's refusal of a record under somebody else's session: it is kept for its own person, not refused. */
const ownRecordsOnly = 'own records only'

/**
 * Sorts what was sent by what the server answered. A record that waits for another, or that the server said
 * nothing about, stays as it is and is sent again.
 */
export function settleOutbox(items: readonly OutboxItem[], answers: readonly Answer[]): Sent {
  const answerOf = new Map(answers.map((answer) => [answer.id, answer]))
  const sent: Sent = { stored: [], refused: [] }
  for (const item of items) {
    const answer = answerOf.get(item.record.id)
    if (answer?.outcome === 'stored' || answer?.outcome === 'already stored') {
      sent.stored.push({ record: item.record, seq: answer.seq })
    } else if (answer?.outcome === 'refused' && answer.rule !== ownRecordsOnly) {
      sent.refused.push({ ...item, refusal: { rule: answer.rule, sentence: answer.sentence } })
    }
  }
  return sent
}

/** The next records to send, in order; refused ones wait for their person. */
export function nextBatch(items: readonly OutboxItem[], most: BatchLimits): OutboxItem[] {
  const batch: OutboxItem[] = []
  let bytes = 0
  const inOrder = items.filter((item) => item.refusal === undefined).sort((a, b) => a.order - b.order)
  for (const item of inOrder) {
    bytes += byteLength(item.record)
    // A single record is sent however long it is: the server has the last word on it.
    if (batch.length === most.records || (batch.length > 0 && bytes > most.bytes)) break
    batch.push(item)
  }
  return batch
}

/** How much goes in one request: the server refuses a body that is too long as a whole. */
export type BatchLimits = { records: number; bytes: number }

const byteLength = (record: RecordEnvelope): number => new TextEncoder().encode(JSON.stringify(record)).length
