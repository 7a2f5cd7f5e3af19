import type { Chances, Finding } from '@/lib/core/diagnosis'
import type { Checked, DangerCode, LookName } from '@/lib/core/guard'
import type { LikelihoodWord } from '../likelihoods/words'

/** The groups of findings in the order in which they are offered. The names are for the screen as they stand. */
export const findingGroups = [
  'sequence',
  'sound',
  'time and weather',
  'vent, intake and outdoors',
  'condensate',
  'hose and port',
  'readings',
  'electrical and part identity',
  'combustion and cabinet',
] as const
export type FindingGroup = (typeof findingGroups)[number]

/** Values of a finding that is there or is not. */
export const seenOrRuledOut = ['seen', 'ruled out'] as const

/**
 * What a finding says about one of the looks that come before a switch may be blamed: the look is clear when every
 * finding that can say so does, and has found a fault as soon as one of them says that. See looksFromFindings.
 */
type ProvedLook = {
  look: LookName
  whenValue: Readonly<Partial<Record<string, Exclude<Checked, 'not checked'>>>>
}

/** A finding of the catalogue: what is observed, never what it means. */
export type FindingEntry = Finding & {
  group: FindingGroup
  /** What is observed, in a few words. */
  name: string
  /** How to tell, where that is not plain. */
  hint?: string
  /** 'by a person' is tapped; 'from readings' is worked out of the case's readings (findingsFromReadings). */
  asked: 'by a person' | 'from readings'
  usual: Chances
  /** At this value the finding is one of guard's dangers, until it is recorded at another. */
  danger?: { code: DangerCode; value: string }
  proves?: ProvedLook
  source: string
}

/**
 * A finding as it is written down. Without values it is there or ruled out. What is usual in a furnace whose trouble
 * has nothing to do with it follows from what the finding is:
 * - 'trouble' (the default): seldom seen, a danger almost never; of many values the first is the good one, each of
 *   the others is seldom seen;
 * - 'good order': usually seen;
 * - 'fact': all values equally likely.
 */
export type WrittenFinding = {
  name: string
  hint?: string
  values?: readonly [string, string, ...string[]]
  is?: 'trouble' | 'good order' | 'fact'
  /** Where a value is usual in another way. */
  usual?: Readonly<Partial<Record<string, LikelihoodWord>>>
  asked?: 'from readings'
  contextOnly?: true
  danger?: { code: DangerCode; value?: string }
  proves?: ProvedLook
  source?: string
}
