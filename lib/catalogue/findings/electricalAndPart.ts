import type { WrittenFinding } from './types'

/** Volts, wires, motor figures, and which parts are fitted. */
export const electricalAndPartFindings = {
  'control-voltage-at-switch': {
    name: 'Control voltage at the switch',
    hint: 'To ground on each side, while the inducer runs. Note the reading at that moment.',
    values: ['in and out', 'in, none out', 'none in'],
  },
  'drop-across-closed-contact': {
    name: 'Drop across the closed contact, under load',
    values: ['under 0.1 V', '0.1 to 0.5 V', 'above 0.5 V'],
  },
  'switch-closed-at-rest': {
    name: 'Contact closed at rest',
    hint: 'Inducer stopped, hose off the switch, wires off. For a switch that is open at rest.',
    danger: { code: 'switch-closed-at-rest' },
  },
  'switch-closes-below-rating': {
    name: 'Contact closed at a reading too low to close it',
    danger: { code: 'switch-closes-below-rating' },
  },
  'switch-stays-closed-above-opening-point': {
    name: 'Switch that opens on rise stays closed above its opening point',
    danger: { code: 'switch-stays-closed-above-opening-point' },
  },
  'inducer-volts-under-load': {
    name: 'Volts at the inducer, under load',
    values: ['as rated', 'low'],
    proves: { look: 'inducerSoundAndVolts', whenValue: { 'as rated': 'clear', low: 'fault found' } },
  },
  'inducer-capacitor': {
    name: 'Inducer capacitor',
    hint: 'Discharge it first. Record the measured value.',
    values: ['as marked', 'weak'],
    proves: { look: 'inducerSoundAndVolts', whenValue: { weak: 'fault found' } },
  },
  'inducer-speed-and-amps': {
    name: 'Inducer speed and amps',
    values: ['as rated', 'slow, or amps high'],
    proves: { look: 'inducerSoundAndVolts', whenValue: { 'slow, or amps high': 'fault found' } },
  },
  'inducer-wheel': {
    name: 'Inducer wheel',
    values: ['sound and tight on the shaft', 'loose, cracked or corroded', 'packed with debris'],
    proves: {
      look: 'inducerSoundAndVolts',
      whenValue: { 'loose, cracked or corroded': 'fault found', 'packed with debris': 'fault found' },
    },
  },
  'inducer-not-the-named-part': { name: 'Inducer is not the part named for this furnace' },
  'switch-wiring': {
    name: 'Wires and terminals of the switch',
    values: ['sound', 'terminal burnt or corroded', 'loose or chafed'],
    proves: {
      look: 'wiring',
      whenValue: {
        sound: 'clear',
        'terminal burnt or corroded': 'fault found',
        'loose or chafed': 'fault found',
      },
    },
  },
  'switch-wires-shorted': {
    name: 'Wires of the switch touch each other',
    proves: { look: 'wiring', whenValue: { seen: 'fault found' } },
  },
  'control-voltage-low': {
    name: 'Control voltage low under load',
    proves: { look: 'wiring', whenValue: { seen: 'fault found' } },
  },
  'closed-switch-not-seen-by-control': {
    name: 'Voltage on the control’s own pin, and the control does not see it',
  },
  'another-device-open': {
    name: 'Another device of the string is open',
    hint: 'Limit, roll-out, float switch, gas pressure, door.',
  },
  'jumper-or-bypass': {
    name: 'Jumper, tape, prop, or a hose moved to defeat the switch',
    hint: 'Photograph it. Trace both wires to the contact before ruling it out.',
    danger: { code: 'jumper-or-bypass' },
  },
  'fitted-part-number': {
    name: 'Part number on the fitted switch',
    hint: 'Read off the switch and compared with what the maker names for this model and serial.',
    values: ['is the factory number', 'is another number', 'cannot be read'],
  },
  'label-differs-from-manual': { name: 'Label on the switch differs from the manual' },
  'switches-transposed': { name: 'Two switches or their hoses transposed' },
  'general-purpose-switch-fitted': {
    name: 'Adjustable or general-purpose switch fitted',
    danger: { code: 'general-purpose-switch-fitted' },
  },
  'wrong-elevation-switch-fitted': {
    name: 'Switch for another elevation fitted',
    danger: { code: 'wrong-elevation-switch-fitted' },
  },
  'elevation-kit': {
    name: 'Elevation kit',
    hint: 'Elevation of the house against the maker’s own table. The height is not the same for every maker.',
    values: ['not called for here', 'called for and fitted', 'called for and missing'],
    usual: { 'called for and missing': 'almost never' },
  },
  'furnace-kind': {
    name: 'Kind of furnace',
    is: 'fact',
    values: ['condensing', 'not condensing'],
  },
  'combustion-air-from': {
    name: 'Where the combustion air comes from',
    is: 'fact',
    values: ['the room', 'outdoors, by its own pipe'],
  },
} as const satisfies Record<string, WrittenFinding>
