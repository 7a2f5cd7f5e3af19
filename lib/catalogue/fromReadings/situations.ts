import type { WorkState } from '../workState'

/**
 * What was done to the furnace, or around it, while a reading was taken. Readings 'as found' are what all others are
 * held against. The door is not here: every reading says whether it was on.
 */
export const readingSituationIds = [
  'as found',
  'vent opened',
  'intake off',
  'after draining',
  'window open',
  'air blower just started',
  'in gusts',
  'calm',
  'first port to the room',
  'second port to the room',
] as const

export type ReadingSituation = (typeof readingSituationIds)[number]

type ReadingSituationEntry = {
  words: string
  /** The state that the furnace has to be in. 'left as found': nothing is changed for it. */
  state: WorkState
  /** What has to be put back before the gas is on again. */
  putBack?: string
}

export const readingSituations: Readonly<Record<ReadingSituation, ReadingSituationEntry>> = {
  'as found': { words: 'As found, nothing changed', state: 'left as found' },
  'vent opened': {
    words: 'Vent opened at the furnace for a moment',
    state: 'gas off, inducer only',
    putBack: 'Close the vent again, every joint tight.',
  },
  'intake off': {
    words: 'Intake pipe off at the cabinet for a moment',
    state: 'gas off, inducer only',
    putBack: 'Refit the intake pipe.',
  },
  'after draining': {
    words: 'After draining trap, collector box and hose',
    state: 'gas off, inducer only',
    putBack: 'Prime the trap and refit every hose and plug.',
  },
  'window open': {
    words: 'Window open, other appliances as before',
    state: 'gas off, inducer only',
    putBack: 'Shut the window.',
  },
  'air blower just started': { words: 'As the air blower starts, door on', state: 'running' },
  'in gusts': { words: 'In gusts', state: 'running' },
  calm: { words: 'Calm outdoors', state: 'running' },
  'first port to the room': {
    words: 'Two ports: the first one to the room',
    state: 'gas off, inducer only',
    putBack: 'Gauge back across both ports.',
  },
  'second port to the room': {
    words: 'Two ports: the second one to the room',
    state: 'gas off, inducer only',
    putBack: 'Gauge back across both ports.',
  },
}
