import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** What version 1 can say of why it matters now. */
export const needs1 = [
  'house cold',
  'infants',
  'elderly or ill people',
  'no other heat',
  'furnace left off',
] as const

/** Why it matters now: who is there, whether the furnace may run, and the weather. */
export const needs = [...needs1, 'freezing outside'] as const

const bodyWith = <Need extends string>(words: readonly [Need, ...Need[]]) =>
  z
    .strictObject({
      positionId: recordId.optional(),
      furnaceId: recordId.optional(),
      /** Model, serial and position in words, where no position is on file. */
      model: line('The model number', 60).optional(),
      serial: line('The serial number', 60).optional(),
      positionName: line('The position', 60).optional(),
      /** What is printed on the switch; the word “nothing” where nothing is. */
      printed: line('What is printed', 200),
      measured: line('What was measured', 200).optional(),
      needs: z.array(z.enum(words)).max(words.length),
      note: note.optional(),
    })
    .refine(
      (body) => body.positionId !== undefined || body.model !== undefined || body.furnaceId !== undefined,
      {
        path: ['model'],
        message: 'Say which furnace: its position, its furnace record, or the model number as printed.',
      },
    )

const ratingRequestBody1 = bodyWith(needs1)

/** A question from the field waiting for an answer: which rating does this switch in this furnace have? */
export const ratingRequestBody = bodyWith(needs)

export type RatingRequestBody = z.infer<typeof ratingRequestBody>

export const ratingRequest = defineKind<RatingRequestBody>({
  kind: 'rating request',
  version: 2,
  versions: { 1: ratingRequestBody1, 2: ratingRequestBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.positionId, body.furnaceId].filter((id) => id !== undefined),
  mayWithhold: withholdable['rating request'],
})
