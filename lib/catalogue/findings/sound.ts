import type { WrittenFinding } from './types'

/** What can be heard, the furnace running. */
export const soundFindings = {
  'inducer-sound': {
    name: 'Sound of the inducer',
    values: ['normal', 'slow or labouring', 'bearing squeal or growl', 'scrape or rattle at the wheel'],
    proves: {
      look: 'inducerSoundAndVolts',
      whenValue: {
        normal: 'clear',
        'slow or labouring': 'fault found',
        'bearing squeal or growl': 'fault found',
        'scrape or rattle at the wheel': 'fault found',
      },
    },
  },
  'water-slosh-in-inducer': { name: 'Water sloshing in the inducer' },
  'gurgle-in-a-pipe': { name: 'Gurgle in the vent or intake pipe' },
  'gurgle-or-sucking-at-drain': { name: 'Gurgle or sucking at the drain' },
  'whistle-at-a-joint': { name: 'Whistle at a joint', hint: 'Inducer gasket, collector box, caps.' },
  'rumble-or-late-light-off': { name: 'Rumble, or a late light-off' },
} as const satisfies Record<string, WrittenFinding>
