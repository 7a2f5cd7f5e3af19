import type { Stage, SwitchKind, Tap } from '@/lib/core/vocabulary'

export type PositionTemplate = { name: string; stage: Stage; kind: SwitchKind; tap: Tap; about: string }

/**
 * The positions that a proving circuit usually has, offered when somebody adds a furnace range. Any other name can
 * be typed. Common practice, no published source.
 */
export const positionTemplates: readonly PositionTemplate[] = [
  {
    name: 'Single stage',
    stage: 'single stage',
    kind: 'one-port',
    tap: 'inducer inlet',
    about: 'The only air switch of a single-stage furnace.',
  },
  {
    name: 'Low fire',
    stage: 'low fire',
    kind: 'one-port',
    tap: 'collector box',
    about: 'Proves the start and low fire.',
  },
  {
    name: 'Middle fire',
    stage: 'middle fire',
    kind: 'one-port',
    tap: 'collector box',
    about: 'Some modulating furnaces.',
  },
  {
    name: 'High fire',
    stage: 'high fire',
    kind: 'one-port',
    tap: 'inducer inlet',
    about: 'Proves high fire; usually a larger number than low fire.',
  },
  {
    name: 'Blocked drain',
    stage: 'not stated',
    kind: 'one-port',
    tap: 'collector box',
    about: 'Opens when water rises in the collector box.',
  },
  {
    name: 'Vent back-pressure',
    stage: 'not stated',
    kind: 'opens on rise',
    tap: 'vent side',
    about: 'On the outlet side of the inducer; closed at rest.',
  },
  {
    name: 'Low gas pressure',
    stage: 'not stated',
    kind: 'gas pressure',
    tap: 'not stated',
    about: 'Met on propane conversions. Not an air switch.',
  },
]
