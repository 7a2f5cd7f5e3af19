import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** Nothing is edited or deleted: a correction withdraws the old record, with a reason. Both stay readable. */
export const withdrawalBody = z.strictObject({
  record: recordId,
  reason: line('The reason', 500),
  replacedBy: recordId.optional(),
})

export type WithdrawalBody = z.infer<typeof withdrawalBody>

export const withdrawal = defineKind<WithdrawalBody>({
  kind: 'withdrawal',
  version: 1,
  versions: { 1: withdrawalBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.record, ...(body.replacedBy === undefined ? [] : [body.replacedBy])],
  refusedBy: (body, lookup) =>
    lookup(body.record)?.kind === 'withholding'
      ? {
          rule: 'a withholding stands',
          sentence:
            'What was withheld is gone from the log and cannot come back by a withdrawal. Record it anew if it may be kept.',
        }
      : undefined,
  mayWithhold: withholdable.withdrawal,
})
