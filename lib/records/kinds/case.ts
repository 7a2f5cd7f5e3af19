import '../withoutEval'
import { z } from 'zod'
import { circuits } from '@/lib/core/callbacks/cases'
import { defineKind, roles } from '../envelope'
import { line, note, recordId } from '../fields'
import { withholdable } from '../withholdable'

/** The history of one complaint on one furnace, over one or more visits. */
export const caseBody = z.strictObject({
  furnaceId: recordId,
  /** What was complained of, in the words of whoever took the call. */
  complaint: line('The complaint', 200),
  circuit: z.enum(circuits, 'Say whether it is about the proving circuit or something else.'),
  /** The serial number on the plate that day, where it is not the one on file. */
  serialSeen: line('The serial number', 60).optional(),
  note: note.optional(),
})

export type CaseBody = z.infer<typeof caseBody>

export const caseKind = defineKind<CaseBody>({
  kind: 'case',
  version: 1,
  versions: { 1: caseBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) => [body.furnaceId],
  refusedBy: (body, lookup) =>
    lookup(body.furnaceId)?.kind === 'furnace'
      ? undefined
      : {
          rule: 'a case is on a furnace',
          sentence: 'A case is the history of one furnace. Choose the furnace, or add it first.',
        },
  mayWithhold: withholdable.case,
})
