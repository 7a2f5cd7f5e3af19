import type { Comparison, ContactState } from '@/lib/core/reading'
import type { Level, SourceKind, SwitchKind } from '@/lib/core/vocabulary'

/** As the maker writes it. */
export type PartNumber = string

/**
 * 'factory': the maker names it for this model and serial; one that serves several models is factory all the same.
 * 'general-purpose': adjustable in the field, or not named by the maker for this model and serial.
 */
export type PartClass = 'factory' | 'general-purpose' | 'not known'

/** Who names a part for this model and serial, and where that can be looked up again. */
export type Listing = { by: SourceKind; where: string; positionKeys: readonly string[] }

export type Part = {
  partClass: PartClass
  partNumber?: PartNumber
  /** Its setting can be changed in the field. */
  adjustable?: boolean
  listing?: Listing
}

/** One link of a chain of part numbers, as the maker states it. */
export type Supersession = {
  from: PartNumber
  to: PartNumber
  setting: 'as before' | 'changed' | 'not stated'
}

export type Checked = 'clear' | 'fault found' | 'not checked'

/** What has to be looked at before a switch may be blamed, in the order of the work. */
export const lookNames = [
  'termination',
  'intake',
  'ventSlopeAndWater',
  'drainAndTrap',
  'hose',
  'port',
  'inducerSoundAndVolts',
  'wiring',
] as const
export type LookName = (typeof lookNames)[number]

/** What the switch is blamed for. A wrong part is blamed as that, never as faulty. */
export type Complaint =
  | 'will not close'
  | 'opens early'
  | 'will not open'
  | 'drops voltage when closed'
  | 'wrong part fitted'

/** A slow pull with a hand pump on the switch off the furnace, three times. Pascals, magnitudes. */
export type OffFurnaceCheck = {
  /** Where it closed (for 'opens early': where it opened) on each pull. */
  pulls: readonly (number | 'did not close')[]
  gaugeHalfWidthPascals: number
  heldForTenSeconds: 'held' | 'leaked down' | 'not checked'
  pumpLineProvenTight: boolean
}

/** Everything on record that bears on replacing the switch of one position. What is left out is not on record. */
export type CaseState = {
  complaint: Complaint
  kind: SwitchKind
  looks: Readonly<Record<LookName, Checked>>
  part: {
    fitted?: PartNumber
    /** The factory part for this model, serial and position. */
    factory?: { partNumber: PartNumber; listedBy: SourceKind; listedWhere: string }
    supersessions: readonly Supersession[]
  }
  /** The standing of the rating that the reading was held against. */
  rating?: {
    level: Level
    action: 'closes' | 'opens' | 'not stated'
    /** The sources that agree with it. */
    sources: readonly SourceKind[]
    stageAndElevation: 'right' | 'wrong' | 'not checked'
  }
  gauge?: { zeroed: boolean; uncertaintyKnown: boolean; calibration: 'current' | 'past' | 'not known' }
  reading?: { comparison: Comparison; byTeeAtTheSwitch: boolean }
  offFurnace?: OffFurnaceCheck
  /** For a switch that will not open. */
  atRest?: { inducerStopped: boolean; hoseOff: boolean; wiresOff: boolean; contact: ContactState }
  /** For a contact that drops voltage: volts across it while closed, once and every repeat. */
  drop?: { volts: readonly number[]; underLoad: boolean; terminals: Checked; contact: ContactState }
}

export type GuardSettings = {
  /** Sources whose naming of a part counts as the maker's own. */
  listers: readonly SourceKind[]
  /** A reading this near to its limit needs the switch checked off the furnace. */
  nearLimitPascals: number
  assumedTolerancePascals: number
  /** Pulls with the hand pump. */
  pulls: number
  /** A closed contact under load may drop no more. */
  dropVolts: number
  /** Measurements of the drop: once, and repeated twice. */
  dropMeasurements: number
}
