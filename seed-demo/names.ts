/**
 * The invented place and the organisations around the demo company. All of it is made up, and resembles nothing
 * real as far as we know (checked from memory).
 */
export const company = 'Quarl Valley Heating'

/** Three branches up one valley: the elevation changes what a switch must be set to. */
export const branches = {
  Quarlfoot: { elevationMetres: 420 },
  Dunmarrow: { elevationMetres: 1480 },
  'Upper Vennet': { elevationMetres: 2350 },
} as const

export type Branch = keyof typeof branches

/** Where the dispatchers ring first: counters that read numbers from a maker's system. */
export const distributors = {
  quarl: 'Quarlfoot Furnace Supply, counter',
  ridge: 'Ridgeback Heating Parts, Dunmarrow counter',
  vennet: 'Vennet Road Wholesale, counter',
} as const

export type DistributorKey = keyof typeof distributors

/** First names as they are given on the telephone. */
export const counterVoices = ['Wils', 'Jorun', 'Teodor', 'Mabry', 'Senna', 'Okke'] as const

export const partsListings = ['Partsfinch listing', 'Switchyard cross-reference list'] as const
