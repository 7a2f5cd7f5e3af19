import type { Flag, SwitchSwap } from '@/lib/core/callbacks/unjustifiedSwitchSwaps'
import type { Complaint } from '@/lib/core/guard'
import { causeName } from '../../cases/work/causeName'
import { backWords } from '../backWords'
import { untilWords } from '../lastDay'

/** What the reading before a replacement said. */
export const readingWords: Readonly<Record<SwitchSwap['reading'], string>> = {
  'too low to close it': 'Too low to close it',
  'enough to close it': 'Enough to close it',
  'too close to call': 'Too close to call',
  none: 'No reading that could be held against its make point',
}

/** By which list of what must be on record it was held. */
export const complaintWords: Readonly<Record<Complaint, string>> = {
  'will not close': 'a switch that will not close',
  'opens early': 'a switch that opens early',
  'will not open': 'a switch that will not open',
  'drops voltage when closed': 'a contact that drops voltage',
  'wrong part fitted': 'a wrong part',
}

/** What happened after a job, as a sentence. A quiet furnace justifies nothing. */
export function afterwardsWords(afterwards: Flag['afterwards']): string {
  switch (afterwards.became) {
    case 'came back':
      return `Came back (${backWords(afterwards)}). The cause named then: ${
        afterwards.laterCause === 'not named' ? 'none' : causeName(afterwards.laterCause)
      }.`
    case 'quiet':
      return 'It has not come back within the days counted. A new switch can hide a weak draft until the house is cold again.'
    case 'not known yet':
      return `Not known yet: it ${untilWords(afterwards.windowEndsAt)}.`
    case 'not counted':
      return 'Not counted: the job is not finished, or not about the proving circuit.'
  }
}
