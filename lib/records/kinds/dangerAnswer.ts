import { z } from 'zod'
import { dangerFindingIds } from '@/lib/core/guard'
import { defineKind, roles } from '../envelope'
import { note, recordId } from '../fields'
import { whyNotOfCase } from '../ofCase'
import { withholdable } from '../withholdable'

/** What is done about a danger before anything else is looked at. */
export const dangerSteps = [
  'gas off',
  'power off',
  'tagged',
  'occupant told',
  'whoever local rules name told',
  'all clear from the gas supplier or the emergency service',
] as const

/**
 * What was done at once about the dangers that were found. Until then the causes stay hidden. It puts nothing
 * right: a danger is open until it is found to be gone, or the furnace is left off.
 */
export const dangerAnswerBody = z.strictObject({
  caseId: recordId,
  visitId: recordId,
  dangers: z
    .array(z.enum(dangerFindingIds, 'Choose the dangers from the list.'))
    .min(1, 'Name the dangers that this answers.')
    .max(30),
  done: z.array(z.enum(dangerSteps)).min(1, 'Tick what was done.').max(dangerSteps.length),
  note: note.optional(),
})

export type DangerAnswerBody = z.infer<typeof dangerAnswerBody>

export const dangerAnswer = defineKind<DangerAnswerBody>({
  kind: 'danger answer',
  version: 1,
  versions: { 1: dangerAnswerBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.caseId, body.visitId],
  refusedBy: (body, lookup) => whyNotOfCase(body, lookup),
  mayWithhold: withholdable['danger answer'],
})
