import type { WrittenFinding } from './types'

/** What the furnace does on a call for heat, and what its control reports. */
export const sequenceFindings = {
  'inducer-on-call': {
    name: 'Inducer on a call for heat',
    hint: 'The call is there at the control. Does the inducer turn?',
    values: ['starts', 'never starts', 'hums, does not turn'],
    usual: { 'never starts': 'almost never', 'hums, does not turn': 'almost never' },
  },
  'switch-after-inducer-start': {
    name: 'Pressure switch after the inducer starts',
    values: [
      'closes within 15 s',
      'closes later than that',
      'never closes, waits and times out',
      'read as closed before the inducer starts',
    ],
    usual: { 'read as closed before the inducer starts': 'almost never' },
    danger: { code: 'switch-closed-at-rest', value: 'read as closed before the inducer starts' },
  },
  'drops-out': {
    name: 'Burners lost because the switch opened',
    hint: 'Counted from light-off.',
    values: ['does not happen', 'within 2 minutes', 'after 5 to 20 minutes', 'at other times'],
  },
  'drops-when-air-blower-starts': { name: 'Switch opens within seconds of the air blower’s start' },
  'drops-on-stage-change': { name: 'Switch opens on a change of stage' },
  'low-fire-only': { name: 'Runs on low fire only', hint: 'The high stage never proves.' },
  'switch-chatter': { name: 'Switch opens and closes rapidly' },
  'locked-out-on-arrival': {
    name: 'Locked out on arrival',
    hint: 'Note and photograph the code before anything is reset.',
    contextOnly: true,
  },
  'self-cleared-lock-out': {
    name: 'Lock-out cleared by itself',
    hint: 'It came back alone after a wait.',
    contextOnly: true,
  },
  'running-on-arrival': { name: 'Running on arrival, no fault shown', contextOnly: true },
  'code-names-another-device': {
    name: 'Fault code names another device',
    hint: 'Limit, roll-out, float switch, gas pressure.',
  },
} as const satisfies Record<string, WrittenFinding>
