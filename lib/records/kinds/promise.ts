import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { recordId } from '../fields'
import { whyNotOfRequests } from '../ofRequest'

/** How long a promise to ring holds, in minutes, unless it is renewed. Common practice, no published source. */
export const promiseMinutes = 30

/**
 * “I’ll ring”: others see that somebody is on it. It lapses by itself, so that a forgotten one holds nobody up;
 * withdrawing it puts the request back at once.
 */
export const promiseBody = z.strictObject({
  requestId: recordId,
  minutes: z
    .int('A promise holds for a whole number of minutes.')
    .min(5, 'A promise holds for at least 5 minutes.')
    .max(240, 'A promise holds for at most 240 minutes. Renew it instead.'),
})

export type PromiseBody = z.infer<typeof promiseBody>

export const promise = defineKind<PromiseBody>({
  kind: 'promise',
  version: 1,
  versions: { 1: promiseBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.requestId],
  refusedBy: (body, lookup) => whyNotOfRequests([body.requestId], lookup),
  mayWithhold: [],
})
