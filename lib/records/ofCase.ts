import type { Lookup, Refusal } from './envelope'

/** What a record of a case names: its case, its visit, and, where it has one, its furnace. */
type OfCase = { caseId?: string; visitId?: string; furnaceId?: string }

/**
 * Why a record cannot belong to the case, visit and furnace that it names: the three must belong together.
 * The records that it names are there when this is asked.
 */
export function whyNotOfCase({ caseId, visitId, furnaceId }: OfCase, lookup: Lookup): Refusal | undefined {
  const belongs = (sentence: string): Refusal => ({ rule: 'it belongs to its case', sentence })
  const ofCase = caseId === undefined ? undefined : lookup(caseId)
  if (caseId !== undefined && ofCase?.kind !== 'case')
    return belongs('The case that it names is no case. Open it from the case.')
  if (furnaceId !== undefined && lookup(furnaceId)?.kind !== 'furnace')
    return belongs('The furnace that it names is no furnace. Open it from the furnace or the case.')
  if (furnaceId !== undefined && ofCase !== undefined && !isSame(ofCase.body.furnaceId, furnaceId, lookup))
    return belongs('The case is on another furnace. Open it from the right case.')
  if (visitId === undefined) return undefined
  const visit = lookup(visitId)
  if (visit?.kind !== 'visit' || visit.body.caseId !== caseId)
    return belongs('The visit belongs to another case. Open it from the right case.')
  return undefined
}

/** Whether two ids name one thing: the same, or a duplicate and the record that it was joined to. */
export const isSame = (one: unknown, other: string, { keptId }: Lookup): boolean =>
  one === other || (typeof one === 'string' && keptId(one) === keptId(other))

/** Two clocks that differ by less are taken as one: neither was put right. */
const clockSlackMs = 60_000

/**
 * Why nothing can be added to a visit any more: it had ended before this was said. What was said before the ending
 * and arrives after it is taken in.
 */
export function whyNotAfterEnding(visitId: string, lookup: Lookup, saidAt: string): Refusal | undefined {
  const endedAt = lookup.endedAt(visitId)
  return endedAt !== undefined && Date.parse(endedAt) + clockSlackMs < Date.parse(saidAt)
    ? {
        rule: 'the visit has ended',
        sentence: 'This visit had ended when it was said. Begin a new visit on the case and record it there.',
      }
    : undefined
}
