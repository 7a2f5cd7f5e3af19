import type { Branch } from '../names'

/** Streets of the invented valley. Like everything in it they resemble nothing real as far as we know (from memory). */
export const streets: Readonly<Record<Branch, readonly string[]>> = {
  Quarlfoot: [
    'Netmender Row',
    'Eel Court',
    'Lime Quay',
    'Chandler Steps',
    'Wharf End',
    'Mill Leat',
    'Brinehouse Yard',
    'Reedcutter Lane',
  ],
  Dunmarrow: [
    'Anvil Rise',
    'Hopkiln Street',
    'Weaver Bank',
    'Slate Ladder',
    'Market Drift',
    'Orchard Dike',
    'Saddler Close',
  ],
  'Upper Vennet': [
    'Cairn Row',
    'Sledge Lane',
    'Hayloft Way',
    'Marmot Steps',
    'Wolfstone Path',
    'Larder Rock',
  ],
}
