import type { WrittenCause } from './types'

/** From the furnace to the switch: the port, and the hose. */
export const hoseAndPortCauses = {
  'port-plugged': {
    name: 'Port or nipple plugged',
    mechanism:
      'Rust, scale, a web or sealant keeps the pressure from the hose, lets it through slowly, or traps it.',
    seen: 'common',
    says: {
      port: { plugged: 'usually', narrowed: 'as often as not', 'clear to its full bore': 'almost never' },
      'reading-at-start': { 'near zero, inducer running': 'usually' },
      'no-return-to-zero': 'as often as not',
      'switch-after-inducer-start': {
        'closes later than that': 'as often as not',
        'never closes, waits and times out': 'as often as not',
      },
    },
    confirm: {
      what: 'Power off, hose off the switch: probe the port and clear it. With the hose back on, the reading jumps.',
      minutes: 5,
      state: 'power off',
      putBack: 'Hose back on its own barb.',
      checkId: 'look-into-the-port',
    },
    fix: { what: 'Clear it to its full bore without making it larger.', minutes: [5, 15] },
    comesBack: 'Yes, while the rust keeps coming.',
    hazards: ['Hose off the switch first: never blow into a connected switch.'],
  },
  'hose-off-or-leaking': {
    name: 'Hose off, cracked or loose',
    mechanism: 'The pressure leaks to the room before it reaches the switch.',
    seen: 'common',
    says: {
      'hose-condition': {
        off: 'as often as not',
        'cracked, or loose at a barb': 'usually',
        'on, whole, tight and clear': 'almost never',
      },
      'reading-at-start': {
        'near zero, inducer running': 'usually',
        'too low from the start': 'as often as not',
      },
      'reading-moves-when-hose-is-touched': 'usually',
    },
    confirm: {
      what: 'Look along it and flex it at both barbs. Power off, off the switch: the hose alone holds on a hand pump.',
      minutes: 3,
      state: 'power off',
      putBack: 'Hose back on its own barb.',
      checkId: 'look-along-the-hose',
    },
    fix: { what: 'New hose of the same bore and length, made for the heat.', minutes: [5, 10] },
    comesBack: 'No.',
    hazards: ['Power off before a hand goes in.'],
  },
  'water-in-hose-or-switch': {
    name: 'Water in the hose or the switch',
    mechanism:
      'A column of water offsets the pressure by up to its own height, and a drop in the bore damps it.',
    seen: 'common',
    says: {
      'water-in-hose': 'almost always',
      'hose-low-loop': 'usually',
      'no-return-to-zero': 'as often as not',
      'flutter-near-the-limit': 'usually',
      'reading-when-hot': { 'sags, settles above break': 'as often as not' },
    },
    confirm: {
      what: 'Power off, hose off the switch: drain it away from the switch, refit it, and read again.',
      minutes: 5,
      state: 'power off',
      putBack: 'Hose back on its own barb, falling to the port.',
      checkId: 'look-along-the-hose',
    },
    fix: {
      what: 'Drain it and run it with a fall to the port. Then find why there was water: trap, drain, pump, level.',
      minutes: [10, 10],
    },
    comesBack: 'Always, while the drain’s fault stays.',
    hazards: ['A switch that was wet is suspect: check it off the furnace.'],
  },
  'hose-misrouted': {
    name: 'Hose pinched, on the wrong port, or its restrictor missing or blocked',
    mechanism: 'The switch feels another point, a damped pressure, or one with nothing to calm it.',
    seen: 'occasional',
    says: {
      'hose-condition': { pinched: 'as often as not' },
      'hose-routing': { 'on the wrong port': 'usually' },
      'hose-restrictor': { missing: 'as often as not', blocked: 'as often as not' },
      'switches-transposed': 'as often as not',
      'when-trouble-began': { 'after other work': 'usually' },
      'reading-with-door-off': { higher: 'as often as not' },
      'reading-at-start': { 'too low from the start': 'as often as not' },
    },
    confirm: {
      what: 'Power off: trace both ends against the diagram. Then, gas off and only the inducer running, read with the door on and off.',
      minutes: 5,
      state: 'power off',
      putBack: 'Door on.',
      checkId: 'look-along-the-hose',
    },
    fix: { what: 'As the diagram shows, with the factory hose and its restrictor.', minutes: [10, 10] },
    comesBack: 'No.',
    hazards: ['A hose moved to a stronger port defeats the switch: record it as that.'],
  },
} as const satisfies Record<string, WrittenCause>
