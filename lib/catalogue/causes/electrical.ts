import type { WrittenCause } from './types'

/** The reading is good, the contact is closed, and still there is no heat. */
export const electricalCauses = {
  'connection-bad': {
    name: 'Connection loose, burnt or corroded, wire chafed, or control voltage low',
    mechanism: 'The contact closes, and the signal is lost or flickers on its way.',
    seen: 'common',
    says: {
      'switch-wiring': {
        'terminal burnt or corroded': 'as often as not',
        'loose or chafed': 'as often as not',
        sound: 'almost never',
      },
      'drop-across-closed-contact': { 'above 0.5 V': 'as often as not' },
      'control-voltage-at-switch': { 'none in': 'as often as not' },
      'drops-out': { 'within 2 minutes': 'as often as not' },
      'switch-chatter': 'as often as not',
      'control-voltage-low': 'as often as not',
      'reading-at-start': { 'beyond make and steady': 'almost always' },
    },
    confirm: {
      what: 'Volts on each side of the switch under load, while the harness is moved at its plugs, fingers off bare metal.',
      minutes: 10,
      state: 'running',
      checkId: 'look-at-the-wiring',
    },
    fix: { what: 'New terminal, harness or transformer.', minutes: [15, 40] },
    comesBack: 'Yes, where water drips on it.',
    hazards: ['Power off before a terminal is pulled.'],
  },
  'control-fault': {
    name: 'Control does not read the switch',
    mechanism: 'The voltage is there on the control’s own pin, and the control ignores it.',
    seen: 'occasional',
    says: {
      'closed-switch-not-seen-by-control': 'almost always',
      'control-voltage-at-switch': { 'in, none out': 'almost never' },
      'reading-at-start': { 'beyond make and steady': 'almost always' },
    },
    confirm: {
      what: 'Volts on the control’s own pin against a good ground, the inducer running.',
      minutes: 15,
      state: 'running',
      checkId: 'meter-the-control',
    },
    fix: { what: 'The control that the maker names, set up for this model.', minutes: [40, 60] },
    comesBack: 'No.',
    hazards: ['Copy set-up plugs and switches before the old control comes out.'],
  },
  'string-open-elsewhere': {
    name: 'Another device of the string is open',
    mechanism:
      'A limit, roll-out, float, gas-pressure or door switch breaks the string, and the switch that is easy to reach gets the blame.',
    seen: 'common',
    says: {
      'code-names-another-device': 'usually',
      'control-voltage-at-switch': { 'none in': 'almost always' },
      'another-device-open': 'almost always',
      'reading-at-start': { 'beyond make and steady': 'almost always' },
    },
    confirm: {
      what: 'Walk the string with a voltmeter from one device to the next.',
      minutes: 10,
      state: 'running',
      checkId: 'walk-the-string',
    },
    fix: { what: 'Find why that device is open, and put that right.', minutes: [10, 120] },
    comesBack: 'It depends on what opened it.',
    hazards: ['A roll-out switch is never just reset: it tripped because flame came out.'],
  },
} as const satisfies Record<string, WrittenCause>
