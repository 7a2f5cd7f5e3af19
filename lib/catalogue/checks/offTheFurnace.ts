import type { WrittenCheck } from './types'

/** The switch by itself, last of all. */
export const offTheFurnaceChecks = {
  'hand-pump-the-switch': {
    name: 'Hand pump on the switch, off the furnace',
    what: 'Slow pull three times, noting where it closes, then hold for ten seconds.',
    minutes: 12,
    tool: 'hand pump with a gauge',
    by: 'taking apart',
    state: 'power off',
    putBack: 'Hose and wires as they were.',
    caution: 'Prove the pump’s own line tight first. One that is in tolerance is sound: look elsewhere.',
    reveals: ['make-on-hand-pump', 'leaks-down-on-hand-pump'],
  },
} as const satisfies Record<string, WrittenCheck>
