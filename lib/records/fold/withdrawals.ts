import type { WithdrawalBody } from '../kinds/withdrawal'
import { type HeldRecord, saidAtCorrected, type Withdrawn } from './entry'

/**
 * Which records no longer count. A withdrawal can be withdrawn itself, which brings the first record back; since
 * a record only ever names older ones, reading from the newest backwards settles that in one pass.
 *
 * @param records in the order of the log
 */
export function withdrawnRecords(records: readonly HeldRecord[]): Map<string, Withdrawn> {
  const withdrawn = new Map<string, Withdrawn>()
  for (let at = records.length - 1; at >= 0; at--) {
    const record = records[at]!
    if (record.kind !== 'withdrawal' || withdrawn.has(record.id)) continue
    const body = record.body as WithdrawalBody
    withdrawn.set(body.record, {
      id: record.id,
      by: record.author,
      at: saidAtCorrected(record),
      reason: body.reason,
      ...(body.replacedBy === undefined ? {} : { replacedBy: body.replacedBy }),
    })
  }
  return withdrawn
}
