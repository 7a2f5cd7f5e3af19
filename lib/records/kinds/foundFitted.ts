import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

/**
 * A switch that is in a furnace although it should not be: general-purpose, adjustable, of another stage or
 * elevation, or bypassed. Always accepted, also when we fitted it ourselves: refusing the truth teaches lying.
 */
export const foundFittedBody = z.strictObject({
  furnaceId: recordId.optional(),
  model: line('The model number', 60).optional(),
  positionId: recordId.optional(),
  partId: recordId.optional(),
  /** What is printed on it, letter for letter; the word “nothing” where nothing is. */
  printed: line('What is printed', 200),
  what: z.enum([
    'adjustable or general-purpose switch',
    'switch for another stage',
    'switch for another elevation',
    'jumper or bypass',
    'not known',
  ]),
  fittedWhen: line('When it was fitted', 80),
  fittedBy: line('Who fitted it', 120),
  foundOn: day,
  note: note.optional(),
})

export type FoundFittedBody = z.infer<typeof foundFittedBody>

export const foundFitted = defineKind<FoundFittedBody>({
  kind: 'found fitted',
  version: 1,
  versions: { 1: foundFittedBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.positionId, body.partId].filter((id) => id !== undefined),
  happenedOn: ['foundOn'],
  mayWithhold: withholdable['found fitted'],
})
