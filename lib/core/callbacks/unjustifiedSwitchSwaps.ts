import type { Requirement } from '../guard'
import type { CallbackWindow } from './callbackWindow'
import { type CallbackCase, casesByFurnace } from './cases'
import { jobOutcomes } from './jobOutcomes'
import type { Repeat } from './repeatsOf'

/** A switch that was replaced on a case, with what the guard said then. */
export type SwitchSwap = {
  caseId: string
  /** What was not on record; empty when the replacement was justified. */
  missing: readonly Requirement[]
  /** What the reading before the swap said of a switch that closes: below its make point it did its duty. */
  reading: 'too low to close it' | 'enough to close it' | 'too close to call' | 'none'
}

/** For coaching: what to look at together. It names no person. */
export type Flag = {
  caseId: string
  furnaceId: string
  missing: Requirement[]
  reading: SwitchSwap['reading']
  /** The reading was too low to close any sound switch, so the new one did not cure it. */
  almostCertainlyWrong: boolean
  afterwards:
    | ({ became: 'came back' } & Pick<Repeat, 'laterId' | 'jobEndedAt' | 'backAt' | 'days' | 'laterCause'>)
    | { became: 'quiet' }
    | { became: 'not known yet'; windowEndsAt: number }
    /** The job is not completed, or not about the circuit that the window counts. */
    | { became: 'not counted' }
}

/**
 * The replacements of a switch for which something was missing that has to be on record first, and what happened
 * afterwards. A quiet period does not justify them: a new switch can hide a weak draft until the house is cold again.
 *
 * @param swaps in any order, one for each case
 * @param now milliseconds since 1970, UTC
 * @returns almost certainly wrong ones first, then those that came back, then newest first
 * @throws RangeError when a swap is of no case, a case has two, or repeatsOf would throw
 */
export function unjustifiedSwitchSwaps({
  swaps,
  cases,
  window,
  now,
}: {
  swaps: readonly SwitchSwap[]
  cases: readonly CallbackCase[]
  window: CallbackWindow
  now: number
}): Flag[] {
  const casesById = new Map([...casesByFurnace(cases).values()].flat().map((one) => [one.id, one]))
  if (swaps.some(({ caseId }) => !casesById.has(caseId)))
    throw new RangeError('Every replacement of a switch must be of a case that is given')
  if (new Set(swaps.map(({ caseId }) => caseId)).size < swaps.length)
    throw new RangeError('Replacements of a switch must be given once for each case')
  const outcomes = new Map(jobOutcomes(cases, window, now).map((outcome) => [outcome.caseId, outcome]))
  const flags = swaps
    .filter(({ missing }) => missing.length > 0)
    .map(({ caseId, missing, reading }): Flag => {
      const almostCertainlyWrong = reading === 'too low to close it'
      const afterwards = whatBecame(outcomes.get(caseId))
      const { furnaceId } = casesById.get(caseId)!
      return { caseId, furnaceId, missing: [...missing], reading, almostCertainlyWrong, afterwards }
    })
  const openedAt = (flag: Flag) => casesById.get(flag.caseId)!.openedAt
  const cameBack = (flag: Flag) => Number(flag.afterwards.became === 'came back')
  return flags.toSorted(
    (a, b) =>
      Number(b.almostCertainlyWrong) - Number(a.almostCertainlyWrong) ||
      cameBack(b) - cameBack(a) ||
      openedAt(b) - openedAt(a) ||
      (a.caseId < b.caseId ? -1 : 1),
  )
}

function whatBecame(outcome: ReturnType<typeof jobOutcomes>[number] | undefined): Flag['afterwards'] {
  if (outcome === undefined) return { became: 'not counted' }
  const { became, repeat, windowEndsAt } = outcome
  if (repeat !== undefined) {
    const { laterId, jobEndedAt, backAt, days, laterCause } = repeat
    return { became: 'came back', laterId, jobEndedAt, backAt, days, laterCause }
  }
  return became === 'quiet' ? { became } : { became: 'not known yet', windowEndsAt }
}
