import type { Check } from '@/lib/core/diagnosis'
import type { FindingId } from '../findings'
import type { WorkState } from '../workState'

/** The steps of the work in their order: dangers first, looks before meters, the switch last. */
export const workSteps = [
  'at the door',
  'quick looks',
  'measuring',
  'splitting the air path',
  'off the furnace',
] as const
export type WorkStep = (typeof workSteps)[number]

type Tool =
  | 'none'
  | 'CO meter'
  | 'level'
  | 'torch'
  | 'water and a measure'
  | 'probe'
  | 'manometer with a tee'
  | 'voltmeter'
  | 'voltmeter and manometer'
  | 'capacitor meter'
  | 'ammeter and tachometer'
  | 'smoke'
  | 'camera or rod'
  | 'combustion analyser'
  | 'manometer and a watch'
  | 'hand tools'
  | 'hand pump with a gauge'

/** Something that can be done to learn the values of findings. */
export type CheckEntry = Check & {
  name: string
  /** What to do, in a sentence or two. */
  what: string
  minutes: number
  tool: Tool
  state: WorkState
  step: WorkStep
  putBack?: string
  caution?: string
  source: string
}

/** A check as it is written down. `danger` is for those that come before anything is metered. */
export type WrittenCheck = Omit<CheckEntry, 'id' | 'reveals' | 'step' | 'source'> & {
  reveals: readonly [FindingId, ...FindingId[]]
  source?: string
}
