import { looksThatFoundFault, missingToBlame } from './blamed'
import type { Requirement } from './requirement'
import { usualGuardSettings } from './settings'
import { missingForVoltageDrop, missingForWillNotOpen, missingForWrongPart } from './shortLists'
import { currentPart } from './supersession'
import type { CaseState, GuardSettings, PartNumber, Supersession } from './types'

export type Replacement = {
  advised: boolean
  /** What is not on record yet, in the order in which it is to be done. Empty exactly when advised. */
  missing: Requirement[]
  /** Those of the missing that were looked at and found a fault: to be repaired first. */
  faultsFound: Requirement[]
  /** The exact factory part number to order; only when advised. */
  orderPart?: PartNumber
  /** From the factory part's number to the one to order. */
  through?: PartNumber[]
  /** Whether the part to order works at the same setting; if not, its own rating has to be recorded. */
  setting?: Supersession['setting']
}

function missingFor(state: CaseState, settings: GuardSettings): Requirement[] {
  switch (state.complaint) {
    case 'will not close':
      return missingToBlame(state, 'closes', settings)
    case 'opens early':
      return missingToBlame(state, 'opens', settings)
    case 'will not open':
      return missingForWillNotOpen(state, settings)
    case 'drops voltage when closed':
      return missingForVoltageDrop(state, settings)
    case 'wrong part fitted':
      return missingForWrongPart(state, settings)
  }
}

/**
 * Whether replacing the switch is advised, and what still has to be on record. It bars advice, not the truth: a
 * replacement that was made is recorded all the same. The switch is the last suspect, so nothing unchecked is let by.
 * @example everything looked at, reading 1.10 in. w.c. against closes at 0.94, contact open, but no rating above
 *   Unverified: not advised, missing 'rating-trusted'
 */
export function switchReplacement(
  state: CaseState,
  settings: GuardSettings = usualGuardSettings,
): Replacement {
  const lacking = new Set(missingFor(state, settings))
  const { factory, supersessions } = state.part
  const current = factory && currentPart(factory.partNumber, supersessions)
  if (current !== undefined && !current.ok) lacking.add('supersession-settled')
  const missing = [...lacking]
  const faultsFound = looksThatFoundFault(state.looks).filter((requirement) => lacking.has(requirement))
  if (missing.length > 0 || current === undefined || !current.ok)
    return { advised: false, missing, faultsFound }
  const { orderPart, through, setting } = current.value
  return { advised: true, missing, faultsFound, orderPart, through, setting }
}
