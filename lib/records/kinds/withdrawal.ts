import '../withoutEval'
import { z } from 'zod'
import { defineKind, type Lookup, type Refusal, type Role, roles } from '../envelope'
import { line, recordId } from '../fields'
import { isSame } from '../ofCase'
import { withholdable } from '../withholdable'
import { importKind } from './import'
import { lifting } from './lifting'

/** Nothing is edited or deleted: a correction withdraws the old record, with a reason. Both stay readable. */
export const withdrawalBody = z.strictObject({
  record: recordId,
  reason: line('The reason', 500),
  replacedBy: recordId.optional(),
})

export type WithdrawalBody = z.infer<typeof withdrawalBody>

/**
 * Why a furnace that was left off is not let run again by taking that back: it would be a lifting by somebody who may
 * not lift. What takes its place has to leave it off as well, and to be newer: two that took each other's place would
 * both be gone. An id is made of the moment it was said (UUID, version 7), so ids tell which is newer.
 */
function whyStillLeftOff(
  { record, replacedBy }: WithdrawalBody,
  lookup: Lookup,
  role: Role,
): Refusal | undefined {
  const old = lookup(record)
  const isNotice = old?.kind === 'shut-down notice'
  if (old === undefined || !(isNotice || (old.kind === 'ending' && old.body.how === 'left off')))
    return undefined
  if (lifting.mayAdd.includes(role)) return undefined
  const next = replacedBy === undefined || replacedBy <= record ? undefined : lookup(replacedBy)
  const leavesItOff =
    next?.kind === old.kind &&
    (isNotice
      ? isSame(next.body.furnaceId, String(old.body.furnaceId), lookup)
      : next.body.how === 'left off' && next.body.visitId === old.body.visitId)
  return leavesItOff
    ? undefined
    : {
        rule: 'left off until it is lifted',
        sentence: `The furnace was left off, and a ${role} may not let it run again. Ask a technician or a manager to lift the notice. Is something in it wrong? Write it anew: the new one takes its place.`,
      }
}

/** An import goes as a whole, by whom an import may come from; its rows can be withdrawn one by one by anybody. */
function whyImportStays({ record }: WithdrawalBody, lookup: Lookup, role: Role): Refusal | undefined {
  const kind = lookup(record)?.kind
  if (kind === 'imported lines')
    return {
      rule: 'an import is undone as a whole',
      sentence:
        'This only says which rows an import has. Withdraw the import, or the records of those rows that are wrong.',
    }
  return kind !== 'import' || importKind.mayAdd.includes(role)
    ? undefined
    : {
        rule: 'an import is undone by a manager',
        sentence: `A ${role} may not withdraw a whole import. Ask a ${importKind.mayAdd.join(' or a ')}, or withdraw the records of it that are wrong.`,
      }
}

export const withdrawal = defineKind<WithdrawalBody>({
  kind: 'withdrawal',
  version: 1,
  versions: { 1: withdrawalBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.record, ...(body.replacedBy === undefined ? [] : [body.replacedBy])],
  refusedBy: (body, lookup, { role }) =>
    whyStillLeftOff(body, lookup, role) ??
    whyImportStays(body, lookup, role) ??
    (lookup(body.record)?.kind === 'withholding'
      ? {
          rule: 'a withholding stands',
          sentence:
            'What was withheld is gone from the log and cannot come back by a withdrawal. Record it anew if it may be kept.',
        }
      : undefined),
  mayWithhold: withholdable.withdrawal,
})
