import { suctionSideSource } from '../provenance'
import type { WrittenCause } from './types'

/** The way in: from the open air, or the room, to the burners. */
export const combustionAirCauses = {
  'intake-blocked': {
    name: 'Intake blocked or screened over',
    mechanism:
      'Leaves, frost, lint or insect mesh at the intake starve the burners and raise the suction at one port.',
    seen: 'common',
    says: {
      intake: { 'screen or end matted': 'usually', 'frosted over': 'as often as not' },
      'higher-than-expected': 'usually',
      'recovers-with-intake-off': 'almost always',
      'ports-to-the-room': { 'both farther from zero': 'almost always', 'both nearer zero': 'almost never' },
      'in-thaw-or-rain': 'as often as not',
      'after-snowfall-or-drift': 'as often as not',
      'same-month-last-year': 'as often as not',
      'rumble-or-late-light-off': 'as often as not',
      'flue-co-high': 'as often as not',
      'flue-co-normal-and-steady': 'seldom',
    },
    confirm: {
      what: 'Gas off and only the inducer running, take the intake pipe off at the cabinet and watch the reading.',
      minutes: 5,
      state: 'gas off, inducer only',
      putBack: 'Refit the intake pipe before the gas is on.',
      checkId: 'take-the-intake-off',
    },
    fix: { what: 'Clean it. Take out a screen that the maker does not name.', minutes: [15, 15] },
    comesBack: 'Yes, with the season.',
    hazards: [
      'Starved burners make CO: test before leaving.',
      'The switch may stay closed: a high reading is no good margin.',
    ],
    source: suctionSideSource,
  },
  'intake-pipe-fault': {
    name: 'Intake pipe holding water, swapped, crushed or too small',
    mechanism:
      'A slug of water or a small bore holds the air back, or exhaust comes in where air should, the pipes being swapped.',
    seen: 'occasional',
    says: {
      'intake-and-vent-swapped': 'as often as not',
      'intake-pipe-run': {
        'low point that can hold water': 'as often as not',
        crushed: 'as often as not',
        'over length or under size': 'as often as not',
      },
      'recovers-with-intake-off': 'usually',
      'gurgle-in-a-pipe': 'as often as not',
      'combustion-air-from': { 'the room': 'almost never' },
      'higher-than-expected': 'as often as not',
      'flutter-near-the-limit': 'as often as not',
      'plume-drawn-into-intake': 'as often as not',
    },
    confirm: {
      what: 'Trace the pipe from end to end with a level. Gas off and only the inducer running, smoke at the ends shows which way each one flows.',
      minutes: 10,
      state: 'gas off, inducer only',
      checkId: 'trace-the-intake',
    },
    fix: { what: 'Run it anew; a drain leg where the manual calls for one.', minutes: [30, 120] },
    comesBack: 'Not once it is put right.',
    hazards: ['Swapped pipes may also have swapped the clearances outdoors: check both ends.'],
  },
  'exhaust-into-intake': {
    name: 'Exhaust drawn back into the intake',
    mechanism: 'Moist air with little oxygen comes back in, frosts the screen and makes the flame unsteady.',
    seen: 'occasional',
    says: {
      'plume-drawn-into-intake': 'almost always',
      intake: { 'frosted over': 'usually' },
      'termination-not-per-manual': 'usually',
      'long-runs-in-bitter-cold': 'as often as not',
      'soot-or-rust-flakes': 'as often as not',
      'pipe-ends-on-separate-walls': 'almost never',
      'reading-when-hot': { 'sags through break': 'as often as not' },
      'flutter-near-the-limit': 'as often as not',
    },
    confirm: {
      what: 'Watch the plume in still air, and the temperature and oxygen at the intake during a run.',
      minutes: 15,
      state: 'running',
      checkId: 'look-at-intake',
    },
    fix: { what: 'Part the two ends, or turn them, as the manual asks.', minutes: [45, 120] },
    comesBack: 'Yes, until the ends are parted.',
    hazards: ['Test for CO.'],
  },
  'starved-room': {
    name: 'Room starved of air, or pulled below outdoor pressure',
    mechanism:
      'A tight room or a shut louvre, with dryer, fans or fireplace running, takes the air that the furnace needs.',
    seen: 'occasional',
    says: {
      'room-tight-or-louvre-shut': 'usually',
      'with-other-appliances-on': 'almost always',
      'reading-with-door-off': { higher: 'as often as not' },
      'combustion-air-from': { 'outdoors, by its own pipe': 'almost never' },
      'recovers-with-window-open': 'almost always',
      'reading-at-start': { 'too low from the start': 'as often as not' },
    },
    confirm: {
      what: 'Everything on and doors shut, gas off and only the inducer running: read with the window shut and with it open, and the room against outdoors.',
      minutes: 20,
      state: 'gas off, inducer only',
      putBack: 'Windows, doors and appliances as they were.',
      checkId: 'open-a-window',
    },
    fix: {
      what: 'Openings as the adopted code asks, make-up air, or a furnace that takes its air from outdoors.',
      minutes: [60, 240],
    },
    comesBack: 'Yes: it depends on what people do.',
    hazards: ['A water heater with natural draft in the same room may spill: check it.'],
  },
} as const satisfies Record<string, WrittenCause>
