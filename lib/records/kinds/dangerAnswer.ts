import '../withoutEval'
import { z } from 'zod'
import { type DangerCode, dangerFindingIds, everybodyOutIds } from '@/lib/core/guard'
import { defineKind, roles } from '../envelope'
import { note, recordId } from '../fields'
import { whyNotOfCase } from '../ofCase'
import { withholdable } from '../withholdable'

/** What is done about a danger before anything else is looked at. */
export const dangerSteps = [
  'everybody out',
  'called from outside',
  'gas off',
  'power off',
  'tagged',
  'occupant told',
  'whoever local rules name told',
  'all clear from the gas supplier or the emergency service',
] as const

export type DangerStep = (typeof dangerSteps)[number]

/** Steps without which nothing goes on: in a house that everybody had to leave, only an all-clear lets anybody back. */
const allClear: readonly DangerStep[] = ['all clear from the gas supplier or the emergency service']
const madeSafe: readonly DangerStep[] = ['gas off', 'tagged', 'occupant told']

/** Whether an answer says that somebody may go in again, in a house that everybody had to leave. */
export const givesAllClear = ({ done }: Pick<DangerAnswerBody, 'done'>): boolean =>
  allClear.every((step) => done.includes(step))

/** What is offered and what is asked for, by the gravest of the dangers. */
export function stepsFor(dangers: readonly DangerCode[]): {
  offered: readonly DangerStep[]
  asked: readonly DangerStep[]
} {
  return dangers.some((code) => (everybodyOutIds as readonly string[]).includes(code))
    ? { offered: ['everybody out', 'called from outside', ...allClear], asked: allClear }
    : {
        offered: ['gas off', 'power off', 'tagged', 'occupant told', 'whoever local rules name told'],
        asked: madeSafe,
      }
}

/**
 * What was done at once about the dangers that were found. Until then the causes stay hidden. It puts nothing
 * right: a danger is open until it is found to be gone, or the furnace is left off.
 */
export const dangerAnswerBody = z
  .strictObject({
    caseId: recordId,
    visitId: recordId,
    dangers: z
      .array(z.enum(dangerFindingIds, 'Choose the dangers from the list.'))
      .min(1, 'Name the dangers that this answers.')
      .max(30),
    done: z.array(z.enum(dangerSteps)).max(dangerSteps.length),
    note: note.optional(),
  })
  .superRefine(({ dangers, done }, context) => {
    const open = stepsFor(dangers).asked.filter((step) => !done.includes(step))
    if (open.length > 0)
      context.addIssue({
        code: 'custom',
        path: ['done'],
        message: `Not done yet: ${open.join(', ')}. Do that first; until then the causes stay hidden.`,
      })
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
