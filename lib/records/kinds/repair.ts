import '../withoutEval'
import { z } from 'zod'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { neverFittedIn, neverFittedRefusal } from '../neverFitted'
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

/** What version 2 added: it belongs to a visit, and says whether a switch was replaced. */
const fields2 = repairBody1.extend({
  caseId: recordId.optional(),
  visitId: recordId.optional(),
  switchReplaced: z.boolean(),
  /** Parts other than a switch, and material. */
  parts: line('The parts', 300).optional(),
  /** What was found fitted and is put right by it: a jumper that was taken out, say. */
  putsRight: recordId.optional(),
  minutes: z.int().min(0).max(2880, 'More than two days is a slip.').optional(),
})

/** What version 3 added: an auditor asks where a part came from. */
const fields3 = fields2.extend({
  /** Where the switch that was fitted came from: the van, a counter, an order with its number. */
  partFrom: line('Where the part came from', 120).optional(),
})

type Fields2 = z.infer<typeof fields2>

const namesItsPart = ({ switchReplaced, fittedPart }: Fields2) => !switchReplaced || fittedPart !== undefined
const noPart = {
  path: ['fittedPart'],
  message:
    'Name the factory part that was fitted. If it is an adjustable or general-purpose switch, record it as found fitted.',
}
const namesItsVisit = ({ caseId, visitId }: Fields2) => (caseId === undefined) === (visitId === undefined)
const noVisit = {
  path: ['visitId'],
  message: 'A repair of a case belongs to one of its visits. Name both, or neither.',
}

const repairBody2 = fields2.refine(namesItsPart, noPart).refine(namesItsVisit, noVisit)
export const repairBody = fields3.refine(namesItsPart, noPart).refine(namesItsVisit, noVisit)

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

/** Why its words cannot be a repair: they say that a jumper or an adjustable switch was put in. */
function whyNotFitted(body: AnyRepairBody): Refusal | undefined {
  const said = neverFittedIn(body)
  return said === undefined
    ? undefined
    : neverFittedRefusal(
        said.what,
        said.field === 'done' ? 'What was done' : 'What stands under parts and material',
      )
}

export const repair = defineKind<AnyRepairBody>({
  kind: 'repair',
  version: 3,
  versions: { 1: repairBody1, 2: repairBody2, 3: repairBody },
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
      : undefined) ??
    whyNotFitted(body),
  happenedOn: ['on'],
  mayWithhold: withholdable.repair,
})
