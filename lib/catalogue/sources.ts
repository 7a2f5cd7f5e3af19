import type { ReliabilityKey } from '@/lib/core/rating'
import type { SourceKind } from '@/lib/core/vocabulary'
import { commonPractice } from './provenance'

export type SourceEntry = {
  words: string
  /** What must be so before this source may be chosen. */
  hint: string
  /** A lead is listed beside better reports and never added to them. */
  lead: boolean
  /** The rows of the table of start reliabilities that apply to it. */
  trust: readonly ReliabilityKey[]
  provenance: string
}

/** What a report of a rating can rest on. The reliabilities themselves are in lib/core/rating. */
export const sources: Readonly<Record<SourceKind, SourceEntry>> = {
  'factory switch label': {
    words: 'Rating label on the factory switch',
    hint: 'The part number on the switch is recorded as a factory part for this furnace.',
    lead: false,
    trust: ['factory switch label, with photo', 'factory switch label, without photo'],
    provenance: commonPractice,
  },
  'unknown switch label': {
    words: 'Rating label on a switch of unknown origin',
    hint: 'Nobody has shown that this part belongs in this furnace.',
    lead: true,
    trust: ['unknown switch label'],
    provenance: commonPractice,
  },
  'data plate': {
    words: 'Data plate on the unit',
    hint: 'The furnace’s own rating plate or the wiring diagram on its door.',
    lead: false,
    trust: ['data plate'],
    provenance: commonPractice,
  },
  'current literature': {
    words: 'Maker’s literature, current',
    hint: 'Manual, bulletin or kit sheet that the maker still gives for this model and revision.',
    lead: false,
    trust: ['current literature'],
    provenance: commonPractice,
  },
  'older literature': {
    words: 'Maker’s literature, older',
    hint: 'Right in its time; a later change may not be in it.',
    lead: false,
    trust: ['older literature'],
    provenance: commonPractice,
  },
  'factory support': {
    words: 'Factory technical support',
    hint: 'The maker’s own technical line, for this model and serial.',
    lead: false,
    trust: ['factory support, read back', 'factory support, not read back'],
    provenance: commonPractice,
  },
  distributor: {
    words: 'Distributor',
    hint: 'The counter reads it from the maker’s system: one relay away.',
    lead: false,
    trust: ['distributor, read back', 'distributor, not read back'],
    provenance: commonPractice,
  },
  'parts listing': {
    words: 'Parts listing',
    hint: 'A seller’s page or a cross-reference list. Often one number without its action.',
    lead: true,
    trust: ['parts listing'],
    provenance: commonPractice,
  },
  'bench check': {
    words: 'Bench check of a sound switch',
    hint: 'Hand pump, slow pull, three times. It supports a rating and never makes one.',
    lead: true,
    trust: ['bench check'],
    provenance: commonPractice,
  },
  remembered: {
    words: 'Hand-written or remembered',
    hint: 'Marker on the cabinet, memory, “same as the other one”.',
    lead: true,
    trust: ['remembered'],
    provenance: commonPractice,
  },
  imported: {
    words: 'Taken over from an old list, without proof',
    hint: 'From the team’s old records. A lead until somebody confirms it.',
    lead: true,
    trust: ['imported'],
    provenance: commonPractice,
  },
}

/** Which sources of a rating can be rung. */
export const callSources = ['factory support', 'distributor'] as const
