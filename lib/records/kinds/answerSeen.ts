import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, recordId } from '../fields'
import { whyNotOfRequests } from '../ofRequest'

/** How somebody got to know the answer. A machine never claims to have rung a phone. */
export const seenHows = ['shown on the screen', 'read out over the telephone'] as const

/**
 * The answer to a rating request reached somebody who waits for it: it was shown on that person's own screen, or
 * somebody rang and read it out. Nothing else counts as reached.
 */
export const answerSeenBody = z.strictObject({
  requestId: recordId,
  reportIds: z.array(recordId).min(1, 'Say which reports it was.').max(50),
  /** Whom it reached: a person's id. */
  personId: line('The person', 64),
  how: z.enum(seenHows),
})

export type AnswerSeenBody = z.infer<typeof answerSeenBody>

export const answerSeen = defineKind<AnswerSeenBody>({
  kind: 'answer seen',
  version: 1,
  versions: { 1: answerSeenBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.requestId, ...body.reportIds],
  refusedBy: (body, lookup, saying) => {
    if (body.how === 'shown on the screen' && body.personId !== saying.id)
      return {
        rule: 'nobody sees for another',
        sentence:
          'Only the person on whose screen an answer stands can say that it was shown. Ring, and read it out.',
      }
    return body.reportIds.every((id) => lookup(id)?.kind === 'report')
      ? whyNotOfRequests([body.requestId], lookup)
      : {
          rule: 'an answer is a report',
          sentence: 'What it names as the answer is no report. Open the answer from its setpoint.',
        }
  },
  mayWithhold: [],
})
