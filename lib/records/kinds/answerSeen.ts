import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { recordId } from '../fields'
import { whyNotOfRequests } from '../ofRequest'

/** The answer to a rating request was shown to its author, on their own screen. Nothing else counts as reached. */
export const answerSeenBody = z.strictObject({
  requestId: recordId,
  reportIds: z.array(recordId).min(1, 'Say which reports were shown.').max(50),
})

export type AnswerSeenBody = z.infer<typeof answerSeenBody>

export const answerSeen = defineKind<AnswerSeenBody>({
  kind: 'answer seen',
  version: 1,
  versions: { 1: answerSeenBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.requestId, ...body.reportIds],
  refusedBy: (body, lookup) =>
    body.reportIds.every((id) => lookup(id)?.kind === 'report')
      ? whyNotOfRequests([body.requestId], lookup)
      : {
          rule: 'an answer is a report',
          sentence: 'What it names as seen is no report. Open the answer from its setpoint.',
        },
  mayWithhold: [],
})
