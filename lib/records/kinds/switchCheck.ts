import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { magnitude, note, recordId } from '../fields'
import { whyNotAfterEnding, whyNotOfCase } from '../ofCase'
import { whyNoPosition } from '../ofPosition'
import { withholdable } from '../withholdable'

const ofCase = {
  furnaceId: recordId,
  caseId: recordId,
  visitId: recordId,
  positionId: recordId,
  note: note.optional(),
}
const contact = z.enum(['open', 'closed', 'not read'])

/** What was tried on a switch itself, once everything before it in the air path was looked at. */
export const switchCheckBody = z.discriminatedUnion('what', [
  z.strictObject({
    ...ofCase,
    what: z.literal('off the furnace'),
    /** Slow pulls with a hand pump: where it closed each time (for one that opens early: where it opened). */
    pulls: z
      .array(z.union([magnitude, z.literal('did not close')]))
      .min(1, 'Type what each pull showed.')
      .max(20),
    gaugeId: recordId,
    heldForTenSeconds: z.enum(['held', 'leaked down', 'not checked']),
    pumpLineProvenTight: z.boolean(),
  }),
  z.strictObject({
    ...ofCase,
    what: z.literal('at rest'),
    inducerStopped: z.boolean(),
    hoseOff: z.boolean(),
    wiresOff: z.boolean(),
    contact,
  }),
  z.strictObject({
    ...ofCase,
    what: z.literal('voltage across the closed contact'),
    volts: z
      .array(z.number().min(0).max(300, 'More than 300 V is a slip.'))
      .min(1, 'Type the voltage.')
      .max(20),
    underLoad: z.boolean(),
    terminals: z.enum(['clear', 'fault found', 'not checked']),
    contact,
  }),
])

export type SwitchCheckBody = z.infer<typeof switchCheckBody>

export const switchCheck = defineKind<SwitchCheckBody>({
  kind: 'switch check',
  version: 1,
  versions: { 1: switchCheckBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [
    body.furnaceId,
    body.caseId,
    body.visitId,
    body.positionId,
    ...(body.what === 'off the furnace' ? [body.gaugeId] : []),
  ],
  refusedBy: (body, lookup, saying) =>
    whyNotOfCase(body, lookup) ??
    whyNotAfterEnding(body.visitId, lookup, saying.saidAt) ??
    whyNoPosition(body.positionId, lookup),
  mayWithhold: withholdable['switch check'],
})
