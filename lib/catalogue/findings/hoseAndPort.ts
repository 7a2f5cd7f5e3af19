import type { WrittenFinding } from './types'

/** The hose that carries the pressure to the switch, and the port it starts from. */
export const hoseAndPortFindings = {
  'hose-condition': {
    name: 'Hose',
    hint: 'Along its whole length and at both barbs.',
    values: ['on, whole, tight and clear', 'off', 'cracked, or loose at a barb', 'pinched'],
    proves: {
      look: 'hose',
      whenValue: {
        'on, whole, tight and clear': 'clear',
        off: 'fault found',
        'cracked, or loose at a barb': 'fault found',
        pinched: 'fault found',
      },
    },
  },
  'water-in-hose': {
    name: 'Water in the hose',
    proves: { look: 'hose', whenValue: { seen: 'fault found', 'ruled out': 'clear' } },
  },
  'hose-routing': {
    name: 'Where the hoses go',
    hint: 'Against the maker’s diagram.',
    values: ['as the diagram shows', 'on the wrong port'],
    proves: {
      look: 'hose',
      whenValue: { 'as the diagram shows': 'clear', 'on the wrong port': 'fault found' },
    },
  },
  'hose-low-loop': {
    name: 'Low loop in the hose',
    proves: { look: 'hose', whenValue: { seen: 'fault found' } },
  },
  'hose-restrictor': {
    name: 'Restrictor in the hose',
    values: ['as the diagram shows', 'missing', 'blocked'],
    proves: { look: 'hose', whenValue: { missing: 'fault found', blocked: 'fault found' } },
  },
  'reading-moves-when-hose-is-touched': {
    name: 'Reading moves when the hose is touched',
    proves: { look: 'hose', whenValue: { seen: 'fault found' } },
  },
  port: {
    name: 'Port, seen with the hose off the switch',
    hint: 'Record what was in it: rust, scale, web, sealant, water.',
    values: ['clear to its full bore', 'narrowed', 'plugged'],
    proves: {
      look: 'port',
      whenValue: { 'clear to its full bore': 'clear', narrowed: 'fault found', plugged: 'fault found' },
    },
  },
} as const satisfies Record<string, WrittenFinding>
