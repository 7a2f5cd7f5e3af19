import '../withoutEval'
import { z } from 'zod'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { isSame, whyNotOfCase } from '../ofCase'
import { whyNoPosition } from '../ofPosition'
import { withholdable } from '../withholdable'

/** What was done to a furnace, and the part that was fitted, if one was. Only a factory part can be fitted. */
const repairBody1 = z.strictObject({
  furnaceId: recordId,
  positionId: recordId.optional(),
  done: line('What was done', 500),
  fittedPart: recordId.optional(),
  on: day,
  note: note.optional(),
})

/** Version 2 belongs to a visit, and says whether a switch was replaced. */
export const repairBody = repairBody1
  .extend({
    caseId: recordId.optional(),
    visitId: recordId.optional(),
    switchReplaced: z.boolean(),
    /** Parts other than a switch, and material. */
    parts: line('The parts', 300).optional(),
    /** What was found fitted and is put right by it: a jumper that was taken out, say. */
    putsRight: recordId.optional(),
    minutes: z.int().min(0).max(2880, 'More than two days is a slip.').optional(),
  })
  .refine((body) => !body.switchReplaced || body.fittedPart !== undefined, {
    path: ['fittedPart'],
    message:
      'Name the factory part that was fitted. If it is an adjustable or general-purpose switch, record it as found fitted.',
  })
  .refine((body) => (body.caseId === undefined) === (body.visitId === undefined), {
    path: ['visitId'],
    message: 'A repair of a case belongs to one of its visits. Name both, or neither.',
  })

export type RepairBody = z.infer<typeof repairBody>

/** A repair of any version: what the later ones added may be missing. */
export type AnyRepairBody = z.infer<typeof repairBody1> & Partial<RepairBody>

/** Why it cannot put right what it names: that was not found fitted in this furnace. */
function whyNotFoundThere({ furnaceId, putsRight }: AnyRepairBody, lookup: Lookup): Refusal | undefined {
  if (putsRight === undefined) return undefined
  const found = lookup(putsRight)
  return found?.kind === 'found fitted' && isSame(found.body.furnaceId, furnaceId, lookup)
    ? undefined
    : {
        rule: 'it puts right what was found there',
        sentence: 'What it puts right was not found in this furnace. Record it as found fitted here first.',
      }
}

export const repair = defineKind<AnyRepairBody>({
  kind: 'repair',
  version: 2,
  versions: { 1: repairBody1, 2: repairBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) =>
    [body.furnaceId, body.positionId, body.fittedPart, body.caseId, body.visitId, body.putsRight].filter(
      (id) => id !== undefined,
    ),
  // Also after the visit has ended: a repair is always recordable, and many are written down in the van.
  refusedBy: (body, lookup) =>
    whyNotOfCase(body, lookup) ??
    whyNoPosition(body.positionId, lookup) ??
    whyNotFoundThere(body, lookup) ??
    (body.fittedPart !== undefined && lookup(body.fittedPart)?.body.class !== 'factory'
      ? {
          rule: 'no general-purpose switch',
          sentence:
            'Only a part that the maker names for this furnace can be recorded as a repair. Order the factory part. ' +
            'It is already in? Record it as found fitted, when and by whom.',
        }
      : undefined),
  mayWithhold: withholdable.repair,
})
