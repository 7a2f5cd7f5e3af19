import { drainFallSource, furnaceTiltSource } from '../provenance'
import type { WrittenFinding } from './types'

/** Where the water of a condensing furnace should go, and where it is found. */
export const condensateFindings = {
  trap: {
    name: 'Trap',
    values: ['holds water, clear', 'sludge in it', 'dry', 'cracked or missing', 'none: does not condense'],
    usual: { 'none: does not condense': 'seldom' },
    proves: {
      look: 'drainAndTrap',
      whenValue: {
        'holds water, clear': 'clear',
        'sludge in it': 'fault found',
        dry: 'fault found',
        'cracked or missing': 'fault found',
        'none: does not condense': 'clear',
      },
    },
  },
  'drain-on-water-test': {
    name: 'Drain when water is poured in',
    hint: 'A measured quart, poured slowly: it should run as fast as poured, with nothing left standing.',
    values: ['runs free', 'slow or stop-start', 'does not run', 'frozen', 'none: does not condense'],
    proves: {
      look: 'drainAndTrap',
      whenValue: {
        'runs free': 'clear',
        'slow or stop-start': 'fault found',
        'does not run': 'fault found',
        frozen: 'fault found',
        'none: does not condense': 'clear',
      },
    },
  },
  'drain-route': {
    name: 'Where the drain ends',
    is: 'fact',
    values: ['by gravity at an open drain', 'in a pump', 'in a line shared with the coil'],
  },
  'condensate-pump': {
    name: 'Condensate pump',
    values: ['runs and empties', 'full or dead'],
    proves: { look: 'drainAndTrap', whenValue: { 'full or dead': 'fault found' } },
  },
  'shared-drain-backs-up': {
    name: 'Shared drain backing up',
    proves: { look: 'drainAndTrap', whenValue: { seen: 'fault found' } },
  },
  'drain-fall-too-small': {
    name: 'Drain falls less than 1/8 in. in 12 in.',
    source: drainFallSource,
    proves: { look: 'drainAndTrap', whenValue: { seen: 'fault found' } },
  },
  'second-trap-or-no-air-break': {
    name: 'Second trap, or no air break',
    proves: { look: 'drainAndTrap', whenValue: { seen: 'fault found' } },
  },
  'water-in-inducer-housing': { name: 'Water in the inducer housing' },
  'water-in-collector-box': { name: 'Water in the collector box' },
  'furnace-out-of-level': {
    name: 'Furnace out of level',
    hint: 'Against what its manual asks: some want a slight tilt.',
    source: furnaceTiltSource,
  },
  'drain-set-for-other-position': {
    name: 'Trap, hoses or caps set for another position',
    hint: 'Against the manual’s figure for upflow, downflow or horizontal.',
  },
  'collector-cap-missing': { name: 'Cap missing at the collector box' },
  'stain-below-collector': { name: 'Stain below the collector box' },
  'no-drip-on-a-long-run': { name: 'No drip at the drain after 15 minutes of high fire' },
  'water-on-controls': {
    name: 'Water on the controls or in the burners',
    danger: { code: 'water-on-controls' },
  },
} as const satisfies Record<string, WrittenFinding>
