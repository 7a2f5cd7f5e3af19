import '../withoutEval'
import { z } from 'zod'
import { type Ending, endings } from '@/lib/core/callbacks/cases'
import { defineKind, type Lookup, type Refusal, roles } from '../envelope'
import { day, line, note, recordId } from '../fields'
import { neverFittedPart, neverFittedRefusal } from '../neverFitted'
import { isSame, whyNotOfCase } from '../ofCase'
import { putBackItems } from '../putBackItems'
import { whyNoSuchCause } from '../trade'
import { withholdable } from '../withholdable'

/** The words are the figures' own: core/callbacks counts by them. */
export const endingWays = endings
export type EndingWay = Ending

/**
 * How a visit ended. It is always taken in, also without what its way of ending asks for: then it stands as
 * unfinished, and the screens list what is missing. Refusing it would lose what was done.
 */
export const endingBody = z.strictObject({
  caseId: recordId,
  visitId: recordId,
  how: z.enum(endingWays, 'Choose how the visit ended.'),
  mainCause: line('The main cause', 60).optional(),
  contributingCause: line('The contributing cause', 60).optional(),
  /** What the test that confirms the main cause showed. */
  confirmingTest: z.enum(['confirmed', 'not confirmed', 'not done']).optional(),
  repairIds: z.array(recordId).max(50).optional(),
  /** Minutes of work on this visit. */
  minutes: z.int().min(0).max(2880, 'More than two days is a slip.').optional(),
  thermostatCycles: z.int().min(0).max(100).optional(),
  putBack: z.array(z.enum(putBackItems)).max(putBackItems.length).optional(),
  /** Of those, what this furnace does not have or nobody touched. */
  nothingToPutBack: z.array(z.enum(putBackItems)).max(putBackItems.length).optional(),
  partNumber: line('The part number', 40).optional(),
  supersessionChecked: z.boolean().optional(),
  orderedWhere: line('Where it is ordered', 120).optional(),
  followUpOn: day.optional(),
  /** Why the repair was declined, in the words of whoever declined. */
  declinedBecause: line('The reason', 300).optional(),
  noticeId: recordId.optional(),
  note: note.optional(),
})

export type EndingBody = z.infer<typeof endingBody>

/**
 * Why the repairs and the notice that an ending names are not its own. What is said in the same breath with it need
 * not be on the device yet; in the log it is there before the ending is judged.
 */
function whyNotItsOwn(body: EndingBody, lookup: Lookup): Refusal | undefined {
  const isForeign = (id: string): boolean => {
    const named = lookup(id)
    return named !== undefined && (named.kind !== 'repair' || named.body.caseId !== body.caseId)
  }
  if (body.repairIds?.some(isForeign))
    return {
      rule: 'an ending names its own repairs',
      sentence:
        'It names a repair that is none of this case. Record the repair in the case, and end the visit there.',
    }
  const notice = body.noticeId === undefined ? undefined : lookup(body.noticeId)
  const furnaceId = String(lookup(body.caseId)?.body.furnaceId)
  return notice === undefined ||
    (notice.kind === 'shut-down notice' && isSame(notice.body.furnaceId, furnaceId, lookup))
    ? undefined
    : {
        rule: 'an ending names its own notice',
        sentence: 'It names a shut-down notice that is none of this furnace. Write the notice for this one.',
      }
}

/** Why the part cannot be waited for: what it is called may never be fitted. */
function whyNotWaitedFor({ partNumber }: EndingBody): Refusal | undefined {
  const what = neverFittedPart(partNumber)
  return what === undefined ? undefined : neverFittedRefusal(what, 'The part that is waited for')
}

export const ending = defineKind<EndingBody>({
  kind: 'ending',
  version: 1,
  versions: { 1: endingBody },
  mayAdd: roles,
  maySee: roles,
  refersTo: (body) =>
    [body.caseId, body.visitId, body.noticeId, ...(body.repairIds ?? [])].filter((id) => id !== undefined),
  refusedBy: (body, lookup) =>
    whyNotOfCase(body, lookup) ??
    whyNotItsOwn(body, lookup) ??
    whyNotWaitedFor(body) ??
    [body.mainCause, body.contributingCause]
      .flatMap((cause) => (cause === undefined ? [] : [whyNoSuchCause(cause)]))
      .find((refusal) => refusal !== undefined),
  mayWithhold: withholdable.ending,
})
