import '../withoutEval'
import { z } from 'zod'
import { betweens, senses, stages, switchKinds, taps } from '@/lib/core/vocabulary'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'

/** Where in the proving circuit of a range a switch sits. A rating belongs to one position and to no other. */
export const positionBody = z.strictObject({
  rangeId: recordId,
  name: line('The name of the position', 60),
  stage: z.enum(stages),
  kind: z.enum(switchKinds),
  between: z.enum(betweens),
  tap: z.enum(taps),
  sense: z.enum(senses),
  /** The other switch of a pair, whose number is the one most often taken for this one's. */
  sisterId: recordId.optional(),
  note: note.optional(),
})

export type PositionBody = z.infer<typeof positionBody>

export const position = defineKind<PositionBody>({
  kind: 'position',
  version: 1,
  versions: { 1: positionBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.rangeId, ...(body.sisterId === undefined ? [] : [body.sisterId])],
  mayWithhold: [],
})
