import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** Lifts a shut-down notice: says why the furnace may run again, and by whom that was judged. */
export const liftingBody = z.strictObject({
  noticeId: recordId,
  on: day,
  because: line('What was put right', 500),
  licence: line('The licence', 60).optional(),
})

export type LiftingBody = z.infer<typeof liftingBody>

export const lifting = defineKind<LiftingBody>({
  kind: 'lifting',
  version: 1,
  versions: { 1: liftingBody },
  mayAdd: ['manager', 'technician'],
  maySee: roles,
  refersTo: (body) => [body.noticeId],
  refusedBy: (body, lookup) =>
    lookup(body.noticeId)?.kind === 'shut-down notice'
      ? undefined
      : {
          rule: 'a lifting lifts a notice',
          sentence: 'It names no shut-down notice. Open the furnace and lift its notice there.',
        },
  happenedOn: ['on'],
  mayWithhold: withholdable.lifting,
})
