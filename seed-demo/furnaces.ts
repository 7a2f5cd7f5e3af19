import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { Branch } from './names'
import type { PersonKey } from './people'

export type Site = Omit<FurnaceBody, 'rangeId' | 'replaces' | 'fuel' | 'branch' | 'model'> & {
  branch: Branch
  range: string
  by: PersonKey
  on: string
  replaces?: string
  /** As the plate prints it, where that is not the family's usual. */
  model?: string
}

const at = (branch: Branch, by: PersonKey, sites: Omit<Site, 'branch' | 'by'>[]): Site[] =>
  sites.map((site) => ({ ...site, branch, by }))

/** The furnaces on file, in three branches at about 420, 1,480 and 2,350 m. Sites and serials are invented. */
export const sites: readonly Site[] = [
  ...at('Quarlfoot', 'ott', [
    {
      siteLabel: 'Ferry Steps 4',
      range: 'Larkfell 2 080',
      on: '2024-12-04',
      revision: 'B',
      serial: 'R2311-0457',
      elevationMetres: 418,
      ventLengthMetres: 9.5,
      ventMaterial: 'plastic, 3 in.',
      note: 'Behind the boat store. Bring the long torch.',
    },
    {
      siteLabel: 'Old Ropeworks, unit 3',
      range: 'Marl 080',
      on: '2024-12-09',
      serial: '7K-31180',
      elevationMetres: 423,
    },
    {
      siteLabel: 'Tallow Row 17',
      range: 'Plover 070',
      on: '2025-01-08',
      serial: '30-55-0912',
      elevationMetres: 431,
      note: 'Key with the neighbour at 15.',
    },
    {
      siteLabel: 'Saltpan Lane 9',
      range: 'Thistle 1 060',
      on: '2025-01-20',
      serial: 'HH40221W',
      elevationMetres: 412,
    },
    {
      siteLabel: 'Quarlfoot reading room',
      range: 'Brae 075',
      on: '2025-02-03',
      serial: '40-02-1177',
      elevationMetres: 420,
      ventLengthMetres: 14,
      ventMaterial: 'plastic, 3 in.',
    },
    {
      siteLabel: 'Heron Wharf 2, upstairs',
      range: 'Fennel 080',
      on: '2025-02-17',
      serial: '9P-00418',
      elevationMetres: 415,
    },
    { siteLabel: 'Ferry Steps 11', range: 'Cobbet 075', on: '2025-03-05', serial: 'R1904-2203' },
    {
      siteLabel: 'Bakehouse, Kiln Street',
      range: 'Dunnock 060',
      on: '2025-10-14',
      serial: '40-17-0031',
      elevationMetres: 426,
      ventLengthMetres: 3,
      ventMaterial: 'steel, side wall',
    },
  ]),
  ...at('Dunmarrow', 'sunniva', [
    {
      siteLabel: 'Tollgate 6',
      range: 'Larkfell 2 080',
      on: '2024-12-11',
      revision: 'D',
      serial: 'R2502-1140',
      elevationMetres: 1478,
    },
    {
      siteLabel: 'Winch Road 21',
      range: 'Osier 080',
      on: '2024-12-18',
      revision: '3',
      serial: '80K-77102',
      elevationMetres: 1490,
    },
    {
      siteLabel: 'Coopers Yard 5',
      range: 'Wendle 080',
      on: '2025-01-13',
      serial: '22.4417.8',
      elevationMetres: 1465,
    },
    {
      siteLabel: 'Dunmarrow school, east wing',
      range: 'Brae 100',
      on: '2025-01-27',
      serial: '40-02-2650',
      elevationMetres: 1481,
      ventLengthMetres: 18,
      ventMaterial: 'plastic, 3 in.',
      note: 'Caretaker wants a call first. No work during lessons.',
    },
    {
      siteLabel: 'Threshing Floor 2',
      range: 'Tansy 070',
      on: '2025-02-10',
      serial: 'T70-30098',
      elevationMetres: 1502,
    },
    {
      siteLabel: 'Bellfounder Street 30',
      range: 'Sallow 070',
      on: '2025-02-24',
      serial: '11.9023.1',
      elevationMetres: 1476,
    },
    {
      siteLabel: 'Bellfounder Street 32',
      range: 'Thistle 2 080',
      on: '2025-02-24',
      serial: 'HK51877P',
      elevationMetres: 1476,
      note: 'Propane tank on the north side.',
    },
    {
      siteLabel: 'Rowan Ladder 8',
      range: 'Rill 075',
      on: '2025-11-03',
      serial: 'R75-11420',
      elevationMetres: 1488,
    },
    {
      siteLabel: 'Weighhouse, ground floor',
      range: 'Gable 070',
      on: '2025-11-12',
      serial: 'HC30774W',
      elevationMetres: 1471,
    },
  ]),
  ...at('Upper Vennet', 'lale', [
    {
      siteLabel: 'Snowgate 3',
      range: 'Larkfell 2 100',
      on: '2024-12-16',
      revision: 'E',
      serial: 'R2508-0093',
      elevationMetres: 2347,
    },
    {
      siteLabel: 'Lift house, upper room',
      range: 'Sallow V 090',
      on: '2025-01-15',
      serial: '30.1102.6',
      elevationMetres: 2391,
      note: 'Only by sledge when the road is shut.',
    },
    {
      siteLabel: 'Vennet post office',
      range: 'Wendle 080',
      on: '2025-01-22',
      serial: '22.5120.3',
      elevationMetres: 2352,
    },
    {
      siteLabel: 'Larch Hut Lane 14',
      range: 'Larkfell 1 060',
      on: '2025-02-05',
      serial: 'R1812-7731',
      elevationMetres: 2338,
    },
    {
      siteLabel: 'Goatherd Lane 1',
      range: 'Osier 080',
      on: '2025-02-19',
      revision: '5',
      serial: '80K-90517',
      elevationMetres: 2365,
    },
    {
      siteLabel: 'Upper Vennet clinic',
      range: 'Sallow 090',
      on: '2025-03-12',
      serial: '11.8765.9',
      elevationMetres: 2349,
      note: 'Patients in the house: ring the ward before shutting anything down.',
    },
    {
      siteLabel: 'Pass Inn, kitchen side',
      range: 'Marl Two 105',
      on: '2025-11-19',
      serial: '8D-20075',
      elevationMetres: 2360,
    },
    {
      siteLabel: 'Snowgate 9',
      range: 'Larkfell 2 080',
      on: '2026-01-07',
      serial: 'R2209-3318',
      note: 'Plate half under the shelf: revision not readable yet.',
    },
    {
      siteLabel: 'Larch Hut Lane 14, new furnace',
      range: 'Larkfell 1 060',
      on: '2026-10-06',
      serial: 'R2606-0412',
      elevationMetres: 2338,
      replaces: 'Larch Hut Lane 14',
    },
  ]),
]
