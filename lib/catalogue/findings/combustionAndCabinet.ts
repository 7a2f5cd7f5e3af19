import { flueCoSource, gasInputSource } from '../provenance'
import type { WrittenFinding } from './types'

/** Flame, combustion products, cabinet and room. Most of the dangers are here. */
export const combustionAndCabinetFindings = {
  // What empties a house says nothing of why a switch is open: it is answered, and weighs for no cause.
  'smell-of-gas': { name: 'Smell of gas', danger: { code: 'smell-of-gas' }, contextOnly: true },
  'co-alarm-sounding': {
    name: 'CO alarm sounding',
    danger: { code: 'co-alarm-sounding' },
    contextOnly: true,
  },
  'room-co-above-limit': {
    name: 'CO in the room above your employer’s limit',
    danger: { code: 'room-co-above-limit' },
  },
  'anyone-unwell': {
    name: 'Anyone unwell',
    hint: 'Headache, dizziness, sickness.',
    danger: { code: 'anyone-unwell' },
    contextOnly: true,
  },
  spillage: { name: 'Combustion products spill into the room', danger: { code: 'spillage' } },
  'flue-co-high': {
    name: 'CO in the flue too high',
    hint: 'Above the limit of the unit’s manual or your employer.',
    danger: { code: 'flue-co-high' },
  },
  'flue-co-climbing': { name: 'CO in the flue climbing', danger: { code: 'flue-co-climbing' } },
  'flue-co-normal-and-steady': {
    name: 'CO in the flue normal and steady',
    hint: 'After at least 15 minutes of running, against the unit’s manual.',
    is: 'good order',
    source: flueCoSource,
  },
  'flame-roll-out': {
    name: 'Flame rolled out, or a roll-out switch tripped',
    danger: { code: 'flame-roll-out' },
  },
  scorching: { name: 'Scorching', danger: { code: 'scorching' } },
  'cracked-heat-exchanger': {
    name: 'Heat exchanger cracked or holed',
    danger: { code: 'cracked-heat-exchanger' },
  },
  'flame-moves-at-blower-start': { name: 'Flame moves as the air blower starts' },
  'soot-or-rust-flakes': { name: 'Soot or rust flakes' },
  'gap-in-door-or-box-seal': { name: 'Gap at door, burner-box seal or grommet' },
  'air-drawn-in-at-a-joint': {
    name: 'Air drawn in at a joint before the inducer',
    hint: 'Smoke is pulled in, or the reading rises when the joint is taped.',
  },
  'pressure-across-exchanger': {
    name: 'Pressure across the exchanger',
    hint: 'Against the manual’s figure, measured by the maker’s method.',
    values: ['as the manual says', 'not as the manual says'],
  },
  'room-tight-or-louvre-shut': { name: 'Room tight, or a louvre shut' },
  'gas-input': {
    name: 'Gas input, clocked',
    hint: 'Against the rating plate, within the manual’s range.',
    values: ['within range', 'out of range'],
    source: gasInputSource,
  },
  'flue-temperature': { name: 'Flue temperature', values: ['within range', 'out of range'] },
} as const satisfies Record<string, WrittenFinding>
