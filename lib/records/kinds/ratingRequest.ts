import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

export const needs = [
  'house cold',
  'infants',
  'elderly or ill people',
  'no other heat',
  'furnace left off',
] as const

/** A question from the field waiting for an answer: which rating does this switch in this furnace have? */
export const ratingRequestBody = z
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
    needs: z.array(z.enum(needs)).max(needs.length),
    note: note.optional(),
  })
  .refine(
    (body) => body.positionId !== undefined || body.model !== undefined || body.furnaceId !== undefined,
    {
      path: ['model'],
      message: 'Say which furnace: its position, its furnace record, or the model number as printed.',
    },
  )

export type RatingRequestBody = z.infer<typeof ratingRequestBody>

export const ratingRequest = defineKind<RatingRequestBody>({
  kind: 'rating request',
  version: 1,
  versions: { 1: ratingRequestBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.positionId, body.furnaceId].filter((id) => id !== undefined),
  mayWithhold: withholdable['rating request'],
})
