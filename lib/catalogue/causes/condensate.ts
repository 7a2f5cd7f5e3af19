import { drainFallSource, furnaceTiltSource } from '../provenance'
import type { Says, WrittenCause } from './types'

/** Water is made only where the furnace condenses. */
const condensingOnly = { 'furnace-kind': { 'not condensing': 'almost never' } } as const satisfies Says

/** Where the water of a condensing furnace stays. */
export const condensateCauses = {
  'trap-plugged': {
    name: 'Trap plugged',
    mechanism:
      'Sludge, flakes or neutraliser fines hold the water back until it stands in the collector box and covers the port.',
    seen: 'common',
    says: {
      ...condensingOnly,
      trap: { 'sludge in it': 'almost always' },
      'water-in-inducer-housing': 'as often as not',
      'water-in-collector-box': 'usually',
      'drops-out': { 'after 5 to 20 minutes': 'usually' },
      'reading-when-hot': { 'sags through break': 'usually' },
      'recovers-after-draining': 'almost always',
      'water-in-hose': 'as often as not',
      'water-slosh-in-inducer': 'as often as not',
      'no-drip-on-a-long-run': 'usually',
      'drain-on-water-test': { 'runs free': 'almost never' },
    },
    confirm: {
      what: 'Power off, eyes covered: pour a measured quart and catch what comes out. Drained, the reading recovers.',
      minutes: 10,
      state: 'power off',
      putBack: 'Prime the trap again, every hose and plug on.',
      checkId: 'pour-water',
    },
    fix: { what: 'Take it out, flush it, refit it and prime it with water.', minutes: [20, 40] },
    comesBack: 'Yearly, without service.',
    hazards: ['The water is acidic: eye protection.', 'See that none reached controls or burners.'],
  },
  'drain-line-blocked': {
    name: 'Drain line blocked, frozen, flat or air-locked',
    mechanism:
      'The water cannot leave, or a second trap locks air in, so it rises into the collector box and covers the port.',
    seen: 'common',
    says: {
      ...condensingOnly,
      'drain-on-water-test': {
        'slow or stop-start': 'as often as not',
        'does not run': 'as often as not',
        frozen: 'as often as not',
        'runs free': 'almost never',
      },
      'second-trap-or-no-air-break': 'as often as not',
      'drain-fall-too-small': 'as often as not',
      'long-runs-in-bitter-cold': 'as often as not',
      'gurgle-or-sucking-at-drain': 'as often as not',
      'drops-out': { 'after 5 to 20 minutes': 'usually' },
      'reading-when-hot': { 'sags through break': 'usually' },
      'recovers-after-draining': 'usually',
    },
    confirm: {
      what: 'Power off: open the line at the outlet of the trap. If the water runs there, the line is at fault.',
      minutes: 10,
      state: 'power off',
      putBack: 'Line back on the trap, and the trap primed.',
      checkId: 'pour-water',
    },
    fix: {
      what: 'Clear it, with a fall of at least 1/8 in. in 12 in. and an air break, all of it in heated space.',
      minutes: [20, 90],
    },
    comesBack: 'Ends that freeze outdoors do.',
    hazards: ['No open flame to thaw it.', 'The water is acidic: eye protection.'],
    source: drainFallSource,
  },
  'pump-or-shared-drain': {
    name: 'Condensate pump failed, or shared drain backing up',
    mechanism: 'Water stands in the pump, or the coil’s drain pushes back into the furnace’s own line.',
    seen: 'common',
    says: {
      ...condensingOnly,
      'condensate-pump': { 'full or dead': 'usually' },
      'shared-drain-backs-up': 'usually',
      'code-names-another-device': 'as often as not',
      'drain-route': { 'by gravity at an open drain': 'almost never' },
      'reading-when-hot': { 'sags through break': 'as often as not' },
    },
    confirm: {
      what: 'Lift the float and watch the discharge. On a shared line, watch which way the water goes.',
      minutes: 10,
      state: 'power off',
      putBack: 'Pump plugged in again, its float free, its lid on.',
      checkId: 'lift-the-pump-float',
    },
    fix: {
      what: 'Clean or replace the pump; part the lines of coil and furnace.',
      minutes: [20, 60],
    },
    comesBack: 'Sometimes.',
    hazards: ['Water near mains voltage: power off at the pump as well.'],
  },
  'trap-dry': {
    name: 'Trap dry, unprimed, cracked or missing',
    mechanism: 'Room air is pulled in through the drain, before the inducer, instead of through the burners.',
    seen: 'occasional',
    says: {
      ...condensingOnly,
      trap: { dry: 'usually', 'cracked or missing': 'as often as not', 'sludge in it': 'almost never' },
      'gurgle-or-sucking-at-drain': 'usually',
      'first-start-of-season': 'usually',
      'when-trouble-began': { 'after other work': 'as often as not' },
      'reading-at-start': { 'too low from the start': 'almost always' },
      'reading-when-hot': { 'sags, settles above break': 'as often as not' },
    },
    confirm: {
      what: 'Power off: pour a cup of water into the trap. Gas off and only the inducer running, the reading has risen at once.',
      minutes: 5,
      state: 'power off',
      putBack: 'Every hose and plug on.',
      checkId: 'pour-water',
    },
    fix: { what: 'Prime it, or replace it.', minutes: [10, 30] },
    comesBack: 'Each season, where the furnace stands idle for long.',
    hazards: ['On the pressure side a dry trap lets combustion products out.'],
  },
  'drain-set-for-other-position': {
    name: 'Drain not set up for this position',
    mechanism:
      'Wrong drain port, cap, hose or level, or a plugged passage of the collector box, keeps water in the box.',
    seen: 'occasional',
    says: {
      ...condensingOnly,
      'furnace-out-of-level': 'as often as not',
      'drain-set-for-other-position': 'usually',
      'water-in-collector-box': 'usually',
      'collector-cap-missing': 'as often as not',
      'when-trouble-began': { 'at installation': 'usually', 'after years without trouble': 'almost never' },
      'reading-when-hot': { 'sags through break': 'usually' },
    },
    confirm: {
      what: 'Power off: put a level on the furnace and hold hoses, caps and ports against the manual’s figure for this position.',
      minutes: 15,
      state: 'power off',
      checkId: 'compare-set-up-with-manual',
    },
    fix: { what: 'Hoses, caps and level as the figure shows; clear the passage.', minutes: [30, 120] },
    comesBack: 'No.',
    hazards: ['New gaskets wherever one was opened.'],
    source: furnaceTiltSource,
  },
} as const satisfies Record<string, WrittenCause>
