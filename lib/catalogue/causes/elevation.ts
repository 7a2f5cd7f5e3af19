import type { WrittenCause } from './types'

/** What belongs to the height above sea level. */
export const elevationCauses = {
  'elevation-kit-missing': {
    name: 'Elevation kit called for, and not there',
    mechanism: 'Thin air gives less suction than the switch for low ground asks for.',
    seen: 'rare',
    says: {
      'elevation-kit': { 'called for and missing': 'almost always', 'not called for here': 'almost never' },
      'neighbours-alike': 'usually',
      'reading-at-start': { 'too low from the start': 'almost always' },
    },
    confirm: {
      what: 'Elevation of the house against the maker’s own table for this model and size.',
      minutes: 10,
      state: 'left as found',
      checkId: 'compare-elevation',
    },
    fix: {
      what: 'The factory kit, complete: switch, orifices, label.',
      minutes: [30, 75],
    },
    comesBack: 'No.',
    hazards: ['Never a lower setting without the derate that goes with it.'],
  },
  'elevation-kit-not-called-for': {
    name: 'Switch for high ground where none is called for, or a derate half done',
    mechanism: 'Its setting is too low for the place, so it proves too little air.',
    seen: 'rare',
    danger: true,
    says: {
      'wrong-elevation-switch-fitted': 'almost always',
      'label-differs-from-manual': 'usually',
      'gas-input': { 'out of range': 'as often as not' },
      'elevation-kit': { 'called for and fitted': 'almost never' },
      'switch-closes-below-rating': 'seldom',
    },
    confirm: {
      what: 'Part number of the switch against the elevation of the house, in the maker’s own table.',
      minutes: 10,
      state: 'power off',
      checkId: 'compare-elevation',
    },
    fix: { what: 'Back to the factory part for this elevation.', minutes: [20, 40] },
    comesBack: 'No.',
    hazards: ['Protection is reduced: unsafe until it is put right.'],
  },
} as const satisfies Record<string, WrittenCause>
