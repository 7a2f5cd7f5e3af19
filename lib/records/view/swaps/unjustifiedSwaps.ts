import type { CallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import {
  type Flag,
  type SwitchSwap,
  unjustifiedSwitchSwaps,
} from '@/lib/core/callbacks/unjustifiedSwitchSwaps'
import { requirements } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { casesOfTeam } from '../callbacks/caseFacts'
import { type SwapFacts, switchSwapsIn } from './switchSwaps'

/** Cases in which a switch was replaced and something was missing, with the replacements of each. */
export type FlaggedCase = Flag & { swaps: readonly SwapFacts[] }

export type SwapsShown = {
  /** Every replacement of a switch that is on record. */
  all: readonly SwapFacts[]
  /** Of cases, those that may be argued about first. */
  flagged: readonly FlaggedCase[]
  /** Replacements recorded on no case: nothing that was read or looked at is on record with them. */
  outsideCases: readonly SwapFacts[]
}

/**
 * The replacements of a switch for which something was missing, by case, and what happened afterwards.
 * @param now ISO 8601; what happened later is left out
 */
export function unjustifiedSwapsIn(file: TeamFile, window: CallbackWindow, now: string): SwapsShown {
  const all = switchSwapsIn(file).filter(({ repair }) => repair.at <= now)
  const cases = casesOfTeam(file)
  const onFile = new Set(cases.map(({ id }) => id))
  const byCase = new Map<string, SwapFacts[]>()
  const outsideCases: SwapFacts[] = []
  for (const swap of all) {
    if (swap.caseId === undefined) outsideCases.push(swap)
    // A case that was withdrawn since is in no figure, and neither is what was done on it.
    else if (onFile.has(swap.caseId)) byCase.set(swap.caseId, [...(byCase.get(swap.caseId) ?? []), swap])
  }
  const flags = unjustifiedSwitchSwaps({
    swaps: [...byCase].map(([caseId, swaps]) => together(caseId, swaps)),
    cases,
    window,
    now: Date.parse(now),
  })
  return {
    all: all.filter(({ caseId }) => caseId === undefined || onFile.has(caseId)),
    flagged: flags.map((flag) => ({ ...flag, swaps: byCase.get(flag.caseId)! })),
    outsideCases,
  }
}

/** The gravest first: a reading that speaks against a replacement is not outweighed by a better one of another switch. */
const gravest: readonly SwitchSwap['reading'][] = [
  'too low to close it',
  'too close to call',
  'none',
  'enough to close it',
]

/** Several replacements of one case as one: what was missing for any of them. */
function together(caseId: string, swaps: readonly SwapFacts[]): SwitchSwap {
  const missing = new Set(swaps.flatMap((swap) => swap.missing))
  return {
    caseId,
    missing: requirements.filter((each) => missing.has(each)),
    reading: gravest.find((reading) => swaps.some((swap) => swap.reading === reading)) ?? 'none',
  }
}
