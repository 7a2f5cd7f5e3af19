import '../withoutEval'
import { z } from 'zod'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { whyNotOfCase } from '../ofCase'
import { whyNoPosition } from '../ofPosition'
import { withholdable } from '../withholdable'

/** The part number of the switch that sits in a furnace, read off the switch letter for letter. */
export const fittedPartBody = z.strictObject({
  furnaceId: recordId,
  positionId: recordId,
  caseId: recordId.optional(),
  printed: line('The part number', 80),
  note: note.optional(),
})

export type FittedPartBody = z.infer<typeof fittedPartBody>

export const fittedPart = defineKind<FittedPartBody>({
  kind: 'fitted part',
  version: 1,
  versions: { 1: fittedPartBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId, body.positionId, body.caseId].filter((id) => id !== undefined),
  refusedBy: (body, lookup) => whyNotOfCase(body, lookup) ?? whyNoPosition(body.positionId, lookup),
  mayWithhold: withholdable['fitted part'],
})
