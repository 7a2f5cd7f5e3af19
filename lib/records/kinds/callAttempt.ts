import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotOfRequests } from '../ofRequest'
import { withholdable } from '../withholdable'

/** What became of a call. A refusal and an “I don’t know” are kept, so that nobody repeats the call. */
export const callOutcomes = [
  'answered',
  'no answer',
  'ring back',
  'doesn’t know',
  'refuses to say',
  'offered a general-purpose part',
] as const

/** One call for one or more rating requests: whom, what was asked, and what became of it. */
export const callAttemptBody = z
  .strictObject({
    organisationId: recordId,
    requestIds: z
      .array(recordId)
      .min(1, 'Say for which requests the call was made.')
      .max(50, 'One call holds at most 50 requests.'),
    /** The number that was dialled, where it is not the organisation’s own. */
    number: line('The number', 60).optional(),
    outcome: z.enum(callOutcomes, 'Say what became of the call.'),
    /** When to ring again. */
    ringBackAt: z.iso.datetime({ offset: true, error: 'Say when to ring back: date and time.' }).optional(),
    /** Who spoke: a first name, a department. */
    person: line('Who spoke', 120).optional(),
    reference: line('The reference', 80).optional(),
    /** The general-purpose part that was offered. It is never a repair and its number never a rating. */
    offered: line('What was offered', 120).optional(),
    note: note.optional(),
  })
  .refine((body) => body.outcome !== 'ring back' || body.ringBackAt !== undefined, {
    path: ['ringBackAt'],
    message: 'Say when to ring back: date and time.',
  })

export type CallAttemptBody = z.infer<typeof callAttemptBody>

export const callAttempt = defineKind<CallAttemptBody>({
  kind: 'call attempt',
  version: 1,
  versions: { 1: callAttemptBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.organisationId, ...body.requestIds],
  refusedBy: (body, lookup) =>
    lookup(body.organisationId)?.kind === 'organisation'
      ? whyNotOfRequests(body.requestIds, lookup)
      : {
          rule: 'a call reaches an organisation',
          sentence: 'What it names as rung is no organisation. Choose it from the list, or add it.',
        },
  mayWithhold: withholdable['call attempt'],
})
