import { gasInputSource, inletPlateSource } from '../provenance'
import type { WrittenCause } from './types'

/** How the furnace was set up. */
export const installationCauses = {
  'restrictor-wrong': {
    name: 'Restrictor, choke or inlet plate missing or wrong',
    mechanism:
      'A fixed part of the resistance that the furnace was designed with is missing, or there twice.',
    seen: 'occasional',
    says: {
      'restrictor-or-inlet-plate': { missing: 'usually', 'wrong one, or one too many': 'as often as not' },
      'when-trouble-began': { 'at installation': 'as often as not', 'after other work': 'as often as not' },
      'higher-than-expected': 'as often as not',
      'reading-at-start': { 'too low from the start': 'as often as not' },
    },
    confirm: {
      what: 'Power off: hold what is fitted against the maker’s table for the vent length and the source of the air.',
      minutes: 10,
      state: 'power off',
      checkId: 'compare-set-up-with-manual',
    },
    fix: { what: 'Fit the one that the table names.', minutes: [15, 40] },
    comesBack: 'No.',
    hazards: ['Test for CO.'],
    source: inletPlateSource,
  },
  'cabinet-leak': {
    name: 'Leak at cabinet, burner box or door of a sealed furnace',
    mechanism: 'The space that the switch is referred to, or the air path, is no longer what was designed.',
    seen: 'occasional',
    says: {
      'reading-with-door-off': {
        higher: 'as often as not',
        lower: 'as often as not',
        'no change': 'almost never',
      },
      'gap-in-door-or-box-seal': 'usually',
      'ports-to-the-room': { 'as expected': 'seldom' },
      'combustion-air-from': { 'the room': 'seldom' },
    },
    confirm: {
      what: 'Gas off and only the inducer running: read with the door on and with it off, one after the other.',
      minutes: 5,
      state: 'gas off, inducer only',
      putBack: 'Door on before the gas is on.',
      checkId: 'read-with-door-off',
    },
    fix: { what: 'New gasket, screws or grommets.', minutes: [10, 40] },
    comesBack: 'No.',
    hazards: ['The air blower can draw combustion products: only a reading with the door on is judged.'],
  },
  'gas-input-off': {
    name: 'Gas input far off its rating',
    mechanism: 'Flue temperature and volume shift the draft, and a late light-off kicks the switch open.',
    seen: 'occasional',
    says: {
      'gas-input': { 'out of range': 'almost always' },
      'flue-temperature': { 'out of range': 'usually' },
      'rumble-or-late-light-off': 'usually',
      'drops-out': { 'within 2 minutes': 'as often as not' },
    },
    confirm: {
      what: 'Clock the meter, read the manifold pressure and the temperature rise.',
      minutes: 15,
      state: 'running',
      checkId: 'clock-the-gas',
    },
    fix: { what: 'Right orifice and pressure, by somebody licensed for gas.', minutes: [20, 60] },
    comesBack: 'No.',
    hazards: ['Licensed work.', 'Test for CO afterwards.'],
    source: gasInputSource,
  },
} as const satisfies Record<string, WrittenCause>
