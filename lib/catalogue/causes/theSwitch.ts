import type { WrittenCause } from './types'

/** The last suspect. */
export const switchCauses = {
  'wrong-switch-fitted': {
    name: 'Wrong switch fitted',
    mechanism:
      'Setting, tolerance, action or ports differ from what the furnace was proven with: generic, other stage, other size.',
    seen: 'occasional',
    says: {
      'fitted-part-number': { 'is another number': 'almost always', 'is the factory number': 'almost never' },
      'label-differs-from-manual': 'usually',
      'general-purpose-switch-fitted': 'as often as not',
      'switches-transposed': 'as often as not',
      'when-trouble-began': { 'after other work': 'usually' },
      'again-within-30-days': 'as often as not',
      'open-beyond-make': 'as often as not',
      'switch-closes-below-rating': 'seldom',
    },
    confirm: {
      what: 'Part number off the switch against what the maker names for this model and serial.',
      minutes: 10,
      state: 'power off',
      checkId: 'read-part-numbers',
    },
    fix: { what: 'The exact factory part, through everything that replaced it.', minutes: [20, 30] },
    comesBack: 'No.',
    hazards: ['It may have proven too little air.', 'Ask why somebody changed it.'],
  },
  'switch-drifted-or-leaking': {
    name: 'Set point drifted, or diaphragm leaking or stiff',
    mechanism:
      'Spring, diaphragm or water damage moves the point where it closes, or bleeds the pressure off.',
    seen: 'occasional',
    says: {
      'open-beyond-make': 'almost always',
      'make-on-hand-pump': { 'out of tolerance': 'almost always', 'in tolerance': 'almost never' },
      'leaks-down-on-hand-pump': 'as often as not',
      'reading-at-start': { 'beyond make and steady': 'almost always' },
    },
    confirm: {
      what: 'Everything on the list of what must be on record before a switch is called faulty, the hand pump off the furnace last.',
      minutes: 15,
      state: 'power off',
      putBack: 'Hose and wires as they were.',
      checkId: 'hand-pump-the-switch',
    },
    fix: { what: 'The exact factory part.', minutes: [20, 30] },
    comesBack: 'Yes, where water or rust still reaches it.',
    hazards: ['Same readings again afterwards: a thin margin means the cause is still there.'],
  },
  'contacts-resistive': {
    name: 'Contacts with high resistance',
    mechanism: 'Pitted or wet contacts close, and the voltage is lost across them.',
    seen: 'occasional',
    says: {
      'drop-across-closed-contact': { 'above 0.5 V': 'almost always', 'under 0.1 V': 'almost never' },
      'switch-chatter': 'as often as not',
      'reading-at-start': { 'beyond make and steady': 'almost always' },
    },
    confirm: {
      what: 'Terminals clean and tight: volts across the closed contact under load, measured once and repeated twice.',
      minutes: 5,
      state: 'running',
      checkId: 'meter-the-switch',
    },
    fix: { what: 'The exact factory part.', minutes: [20, 30] },
    comesBack: 'No.',
    hazards: ['Power off before a terminal is pulled.'],
  },
  'switch-stuck-closed': {
    name: 'Contacts stuck or welded closed',
    mechanism: 'A short has welded the contacts, or the diaphragm is held over.',
    seen: 'rare',
    danger: true,
    says: {
      'switch-after-inducer-start': { 'read as closed before the inducer starts': 'almost always' },
      'switch-closed-at-rest': 'almost always',
      'no-return-to-zero': 'almost never',
      port: { plugged: 'almost never' },
      'switch-wires-shorted': 'almost never',
    },
    confirm: {
      what: 'Power off, inducer stopped, hose off and wires off: ohms across the contact.',
      minutes: 5,
      state: 'power off',
      putBack: 'Nothing, until the factory part is in: leave off.',
      checkId: 'test-contact-at-rest',
    },
    fix: { what: 'The exact factory part; find the short or the water first.', minutes: [20, 30] },
    comesBack: 'Yes, if what overloaded it stays.',
    hazards: ['Nothing proves air: shut down and tag.'],
  },
  'switch-bypassed': {
    name: 'Switch bypassed',
    mechanism: 'Somebody took away the proof of air to get heat: a wire, tape, a prop, a moved hose.',
    seen: 'rare',
    danger: true,
    says: {
      'jumper-or-bypass': 'almost always',
      'switch-after-inducer-start': { 'read as closed before the inducer starts': 'usually' },
      'switch-closes-below-rating': 'as often as not',
      'open-beyond-make': 'almost never',
    },
    confirm: {
      what: 'Power off: trace both wires to the contact, and look at switch and hose.',
      minutes: 2,
      state: 'power off',
      checkId: 'trace-the-switch-wires',
    },
    fix: {
      what: 'Photograph it and take it out, then find the fault that it hid.',
      minutes: [10, 120],
    },
    comesBack: 'It may be done again: tell the owner in writing.',
    hazards: [
      'Nothing proves air: shut down and tag.',
      'Whole check of vent and CO; report it as local rules ask.',
    ],
  },
} as const satisfies Record<string, WrittenCause>
