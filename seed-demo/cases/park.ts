import type { Branch } from '../names'

export type Installed = { range: string; howMany: number; revision?: readonly string[] }

/** What is installed in each branch, beside the furnaces that were on file before: range by range, how many. */
export const park: Readonly<Record<Branch, readonly Installed[]>> = {
  Quarlfoot: [
    { range: 'Larkfell 2 080', howMany: 7, revision: ['A', 'B', 'C'] },
    { range: 'Tansy 070', howMany: 6 },
    { range: 'Fennel 080', howMany: 5 },
    { range: 'Tansy 050', howMany: 4 },
    { range: 'Marl 080', howMany: 4 },
    { range: 'Plover 070', howMany: 4 },
    { range: 'Sallow 070', howMany: 4 },
    { range: 'Wendle 080', howMany: 4 },
    { range: 'Rill 050', howMany: 3 },
    { range: 'Gable 070', howMany: 3 },
    { range: 'Rill 125', howMany: 2 },
    { range: 'Dunnock 060', howMany: 2 },
    { range: 'Thistle 1 060', howMany: 2 },
  ],
  Dunmarrow: [
    { range: 'Larkfell 2 080', howMany: 7, revision: ['D', 'E'] },
    { range: 'Brae 100', howMany: 6 },
    { range: 'Osier 080', howMany: 5, revision: ['2', '3'] },
    { range: 'Tansy 070', howMany: 5 },
    { range: 'Tansy 090', howMany: 4 },
    { range: 'Wendle 080', howMany: 3 },
    { range: 'Fennel 080', howMany: 3 },
    { range: 'Sallow 070', howMany: 3 },
    { range: 'Gable 070', howMany: 2 },
    { range: 'Dunnock 090', howMany: 2 },
    { range: 'Plover 045', howMany: 2 },
  ],
  'Upper Vennet': [
    { range: 'Brae 100', howMany: 6 },
    { range: 'Osier 080', howMany: 5, revision: ['3'] },
    { range: 'Tansy 070', howMany: 5 },
    { range: 'Sallow 090', howMany: 4 },
    { range: 'Tansy 090', howMany: 3 },
    { range: 'Larkfell 1 060', howMany: 3 },
    { range: 'Dunnock 090', howMany: 2 },
    { range: 'Gable 070', howMany: 2 },
    { range: 'Wendle 080', howMany: 2 },
    { range: 'Larkfell 2 100', howMany: 1, revision: ['E'] },
  ],
}

/**
 * Weak spots of single families, by how many times as often a cause stops them. The helper is told the model range of
 * a case and has to learn these from the cases.
 */
export const weakSpots: Readonly<Record<string, readonly { cause: string; times: number; from?: string }[]>> =
  {
    // One batch of wheels came loose from its hub; delivered from the summer of 2024 on.
    'Larkfell 2': [{ cause: 'inducer-wheel', times: 6, from: '2024-09-01' }],
    Brae: [
      { cause: 'trap-plugged', times: 2.2 },
      { cause: 'drain-line-blocked', times: 1.5 },
    ],
    Tansy: [{ cause: 'hose-off-or-leaking', times: 2.4 }],
    Fennel: [{ cause: 'port-plugged', times: 2.6 }],
    Osier: [{ cause: 'connection-bad', times: 2.2 }],
    Sallow: [{ cause: 'water-in-vent-sag', times: 1.8 }],
  }
