import type { Cause } from '@/lib/core/diagnosis'
import type { FindingId, ValueOf } from '../findings'
import type { LikelihoodWord } from '../likelihoods/words'
import type { WorkState } from '../workState'

/** The groups of causes, in the order in which they are listed. The names are for the screen as they stand. */
export const causeGroups = [
  'vent path',
  'combustion-air path',
  'condensate drainage',
  'inducer',
  'hose and port',
  'heat exchanger',
  'electrical and control',
  'installation',
  'elevation',
  'the switch itself',
] as const
export type CauseGroup = (typeof causeGroups)[number]

/** How often a cause is met within its group. */
export type HowOften = 'common' | 'occasional' | 'rare'

/** The test that tells whether it is this cause. */
type ConfirmingTest = {
  what: string
  minutes: number
  state: WorkState
  putBack?: string
  /** The check of the catalogue that it is part of, by id. */
  checkId: string
}

type Fix = { what: string; minutes: readonly [from: number, to: number] }

/** A cause of the catalogue. Its prior is its share of all cases; see baseRates. */
export type CauseEntry = Cause & {
  group: CauseGroup
  name: string
  /** How it keeps the switch from closing, in one sentence. */
  mechanism: string
  seen: HowOften
  confirm: ConfirmingTest
  fix: Fix
  /** Whether, and when, it returns. */
  comesBack: string
  hazards: readonly string[]
  source: string
}

/** What a cause says of a finding: a word for 'seen', or words for some of many values. */
type SaidOf<Id extends FindingId> = [ValueOf<Id>] extends ['seen' | 'ruled out']
  ? LikelihoodWord
  : { readonly [Value in ValueOf<Id> & string]?: LikelihoodWord }

/** What a cause says of the findings. Whatever it does not name it says nothing of. */
export type Says = { readonly [Id in FindingId]?: SaidOf<Id> }

/** A cause as it is written down; its group, share and chances follow. */
export type WrittenCause = Pick<
  CauseEntry,
  'name' | 'mechanism' | 'seen' | 'danger' | 'confirm' | 'fix' | 'comesBack' | 'hazards'
> & { says: Says; source?: string }
