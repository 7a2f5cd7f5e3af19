import { inletPlateSource, ventFallSource } from '../provenance'
import type { WrittenFinding } from './types'

/** The air path outside the furnace: where the gas goes out and where the air comes in. */
export const ventIntakeOutdoorsFindings = {
  'vent-end': {
    name: 'Vent end outdoors',
    hint: 'Snow, nest, leaves, wrap left over from building, a ring of ice.',
    values: ['clear', 'blocked', 'ringed with ice'],
    proves: {
      look: 'termination',
      whenValue: { clear: 'clear', blocked: 'fault found', 'ringed with ice': 'fault found' },
    },
    danger: { code: 'vent-blocked-uncorrected', value: 'blocked' },
  },
  'screen-in-vent-end': {
    name: 'Screen fitted in the vent end',
    proves: { look: 'termination', whenValue: { seen: 'fault found' } },
  },
  'termination-not-per-manual': {
    name: 'Vent or intake end not as the manual asks',
    hint: 'Spacing, height above ground or snow, which way it faces, which terminal.',
    proves: { look: 'termination', whenValue: { seen: 'fault found' } },
  },
  'snow-line-near-pipes': { name: 'Snow, or its line, close to the pipe ends' },
  intake: {
    name: 'Intake',
    hint: 'End to end. Where the air comes from the room: its openings and the furnace’s own.',
    values: ['clear end to end', 'screen or end matted', 'frosted over'],
    proves: {
      look: 'intake',
      whenValue: {
        'clear end to end': 'clear',
        'screen or end matted': 'fault found',
        'frosted over': 'fault found',
      },
    },
  },
  'intake-pipe-run': {
    name: 'Run of the intake pipe',
    values: [
      'whole, even, within the table',
      'low point that can hold water',
      'crushed',
      'over length or under size',
    ],
    proves: {
      look: 'intake',
      whenValue: {
        'low point that can hold water': 'fault found',
        crushed: 'fault found',
        'over length or under size': 'fault found',
      },
    },
  },
  'plume-drawn-into-intake': { name: 'Plume drawn into the intake' },
  'intake-and-vent-swapped': {
    name: 'Intake and vent pipes swapped',
    proves: { look: 'intake', whenValue: { seen: 'fault found' } },
  },
  'pipe-ends-on-separate-walls': { name: 'Intake and vent end on separate walls', is: 'fact' },
  'vent-slope': {
    name: 'Slope of the vent',
    hint: 'Level on every span: falls back to the furnace 1/4 in. in a foot, no low point. Note the depth of a sag.',
    values: ['falls back to the furnace', 'sagging span', 'slopes the wrong way'],
    proves: {
      look: 'ventSlopeAndWater',
      whenValue: {
        'falls back to the furnace': 'clear',
        'sagging span': 'fault found',
        'slopes the wrong way': 'fault found',
      },
    },
    source: ventFallSource,
  },
  'vent-clear-end-to-end': {
    name: 'Vent clear end to end, no water in it',
    is: 'good order',
    proves: { look: 'ventSlopeAndWater', whenValue: { seen: 'clear', 'ruled out': 'fault found' } },
  },
  'frost-in-a-cold-run': {
    name: 'Frost or ice in a pipe through unheated space',
    proves: { look: 'ventSlopeAndWater', whenValue: { seen: 'fault found' } },
  },
  'vent-length-count': {
    name: 'Vent length and fittings, counted',
    hint: 'Against the maker’s table for this size, pipe and elevation. Record the count.',
    values: ['within the table', 'over the table'],
  },
  'vent-pipe-under-size': { name: 'Vent pipe smaller than the table asks' },
  'vent-joint-leaking': { name: 'Vent joint leaking' },
  'vent-separated': { name: 'Vent has come apart', danger: { code: 'vent-separated' } },
  'vent-blocked-uncorrected': {
    name: 'Vent blocked and not put right',
    danger: { code: 'vent-blocked-uncorrected' },
  },
  'restrictor-or-inlet-plate': {
    name: 'Restrictor, choke or inlet plate',
    hint: 'Against the maker’s table for the vent length and where the air comes from.',
    values: ['as the table says', 'missing', 'wrong one, or one too many'],
    source: inletPlateSource,
  },
} as const satisfies Record<string, WrittenFinding>
