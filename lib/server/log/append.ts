import { randomBytes } from 'node:crypto'
import type { Answer } from '@/lib/records/answer'
import type { RecordEnvelope } from '@/lib/records/envelope'
import { contentHashOf, entryHashOf, noPreviousHash } from './hash'
import { type Judge, judge, refused } from './judge'
import { RefusedByDatabase } from './tables'
import { applyWithholding } from './withhold'

/** 16 bytes, as many as make guessing hopeless. */
const saltBytes = 16

export type Appended = { answers: Answer[]; withheldSomething: boolean }

/** What is given to every record of a batch. */
export type BatchContext = Judge & {
  /** Whether to guard against the database's own refusal of a single record. */
  careful: boolean
}

/**
 * Judges and stores a batch, record by record, in the order sent. The write lock must be held: each entry takes
 * the next number and the hash of the one before it.
 *
 * @throws RefusedByDatabase unless careful, when the database refuses what the kind's own rule let pass
 */
export function appendBatch(records: readonly unknown[], context: BatchContext): Appended {
  const { receivedAt, careful } = context
  const { tables, sentAtMs } = context
  const receivedAtText = receivedAt.toISOString()
  const clockShiftMs = receivedAt.getTime() - sentAtMs
  const salts = randomBytes(saltBytes * records.length).toString('hex')
  let head = tables.head() ?? { seq: 0, hash: noPreviousHash }
  let withheldSomething = false

  const store = (
    { id, kind, version, author, device, saidAt }: RecordEnvelope,
    bytes: string,
    salt: string,
  ) => {
    const seq = head.seq + 1
    const header = {
      seq,
      id,
      kind,
      version,
      author,
      device,
      saidAt,
      receivedAt: receivedAtText,
      clockShiftMs,
    }
    const contentHash = contentHashOf(salt, bytes)
    const hash = entryHashOf(head.hash, contentHash, header)
    const insert = careful ? tables.insertOrUndo : tables.insert
    try {
      insert({ ...header, contentHash, previousHash: head.hash, hash }, { bytes, salt })
    } catch (cause) {
      if (!careful || !(cause instanceof RefusedByDatabase)) throw cause
      return refused(id, cause.refusal.rule, cause.refusal.sentence).answer
    }
    head = { seq, hash }
    return { id, outcome: 'stored' as const, seq }
  }

  const answers = records.map((sent, index): Answer => {
    const judgement = judge(sent, context)
    if ('answer' in judgement) return judgement.answer
    const { record, bytes } = judgement
    const salt = salts.slice(2 * saltBytes * index, 2 * saltBytes * (index + 1))
    const answer = store(record, bytes, salt)
    if (answer.outcome === 'stored' && applyWithholding(record, answer.seq, tables)) withheldSomething = true
    return answer
  })
  return { answers, withheldSomething }
}
