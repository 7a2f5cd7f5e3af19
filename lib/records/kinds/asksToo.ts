import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotOfRequests } from '../ofRequest'
import { withholdable } from '../withholdable'
import { needs, needs1 } from './ratingRequest'

const bodyWith = <Need extends string>(words: readonly [Need, ...Need[]]) =>
  z.strictObject({
    requestId: recordId,
    /** The furnace that this person stands at, where it is another one. */
    furnaceId: recordId.optional(),
    /** Every character as the data plate there prints it. */
    model: line('The model number', 60).optional(),
    serial: line('The serial number', 60).optional(),
    /** What is printed on the switch there; the word “nothing” where nothing is. */
    printed: line('What is printed', 200).optional(),
    measured: line('What was measured', 200).optional(),
    needs: z.array(z.enum(words)).max(words.length),
    note: note.optional(),
  })

const asksTooBody1 = bodyWith(needs1)

/** Somebody else waits for the same rating: one question, one call, and everybody who asked is told. */
export const asksTooBody = bodyWith(needs)

export type AsksTooBody = z.infer<typeof asksTooBody>

export const asksToo = defineKind<AsksTooBody>({
  kind: 'asks too',
  version: 2,
  versions: { 1: asksTooBody1, 2: asksTooBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.requestId, body.furnaceId].filter((id) => id !== undefined),
  refusedBy: (body, lookup) => whyNotOfRequests([body.requestId], lookup),
  mayWithhold: withholdable['asks too'],
})
