import type { CodeRange } from '@/lib/core/vocabulary'
import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'
import type { MakerKey } from './makers'
import type { Place } from './positions'

/** One switch position of a family: its make point on the smallest size, and how much each size up adds. */
export type FamilyPosition = {
  place: Place
  /** Hundredths of an inch of water, lowest elevation, first revision. */
  make: number
  step: number
}

export type Family = {
  maker: MakerKey
  name: string
  /** Input in thousands of Btu/h, as it stands in the model number. */
  sizes: readonly string[]
  /** Model patterns of one size: an asterisk for any characters, a question mark for one. */
  patterns: (size: string) => string[]
  /** A model number as a data plate prints it. */
  printed: (size: string) => string
  fuel: EquipmentRangeBody['fuel']
  heat: EquipmentRangeBody['heat']
  positions: readonly FamilyPosition[]
  /** Where a running change altered the switch: revision ranges, oldest first, and what each adds to the make. */
  revisions?: readonly (CodeRange & { adds: number })[]
  note?: string
}

const single = (make: number, step: number): FamilyPosition[] => [{ place: 'Single stage', make, step }]

const twoStage = (low: number, high: number, step: number): FamilyPosition[] => [
  { place: 'Low fire', make: low, step },
  { place: 'High fire', make: high, step: 2 * step },
]

/** Twenty invented families, 60 ranges and 90 switch positions in all. */
export const families = [
  {
    maker: 'orrinmoor',
    name: 'Larkfell 1',
    sizes: ['040', '060', '080', '100'],
    patterns: (size) => [`LF1-${size}-*`],
    printed: (size) => `LF1-${size}-A1`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: single(102, 7),
  },
  {
    maker: 'orrinmoor',
    name: 'Larkfell 2',
    sizes: ['060', '080', '100', '120'],
    patterns: (size) => [`LF2-${size}-*`, `LF2X-${size}-*`],
    printed: (size) => `LF2-${size}-N2`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: twoStage(63, 127, 4),
    revisions: [
      { from: 'A', to: 'C', adds: 0 },
      { from: 'D', adds: 6 },
    ],
    note: 'Revision letter is the last box on the plate. From D on the inducer wheel is another one.',
  },
  {
    maker: 'orrinmoor',
    name: 'Cobbet',
    sizes: ['050', '075', '100', '125'],
    patterns: (size) => [`COB-${size}*`],
    printed: (size) => `COB-${size}U`,
    fuel: 'either',
    heat: 'non-condensing',
    positions: single(43, 4),
  },
  {
    maker: 'tessenby',
    name: 'Wendle',
    sizes: ['060', '080', '100'],
    patterns: (size) => [`WEN.${size}.*`],
    printed: (size) => `WEN.${size}.22`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: twoStage(38, 66, 3),
  },
  {
    maker: 'tessenby',
    name: 'Sallow',
    sizes: ['045', '070', '090', '110'],
    patterns: (size) => [`SAL.${size}.*`],
    printed: (size) => `SAL.${size}.11`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: single(88, 9),
  },
  {
    maker: 'tessenby',
    name: 'Sallow V',
    sizes: ['070', '090'],
    patterns: (size) => [`SAV.${size}.*`],
    printed: (size) => `SAV.${size}.30`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: [
      { place: 'Low fire', make: 41, step: 5 },
      { place: 'Middle fire', make: 72, step: 6 },
      { place: 'High fire', make: 128, step: 9 },
    ],
    note: 'Three switches on one bracket, read left to right: middle, low, high.',
  },
  {
    maker: 'quistane',
    name: 'Marl',
    sizes: ['055', '080', '105'],
    patterns: (size) => [`QM${size}*`],
    printed: (size) => `QM${size}1`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: single(37, 5),
  },
  {
    maker: 'quistane',
    name: 'Marl Two',
    sizes: ['080', '105'],
    patterns: (size) => [`QM2-${size}*`],
    printed: (size) => `QM2-${size}B`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: twoStage(34, 58, 4),
  },
  {
    maker: 'quistane',
    name: 'Fennel',
    sizes: ['060', '080', '100'],
    patterns: (size) => [`QFN-${size}-T?`],
    printed: (size) => `QFN-${size}-T2`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: [{ place: 'Proving', make: 69, step: 8 }],
  },
  {
    maker: 'quistane',
    name: 'Fennel Sense',
    sizes: ['080', '100'],
    patterns: (size) => [`QFS-${size}-*`],
    printed: (size) => `QFS-${size}-T1`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: [{ place: 'Pressure sensor', make: 42, step: 4 }],
    note: 'No switch to look for: a sensor on the board side of the cabinet.',
  },
  {
    maker: 'stavemere',
    name: 'Brae',
    sizes: ['050', '075', '100'],
    patterns: (size) => [`${size}BRE-*`, `${size}BRD-*`],
    printed: (size) => `${size}BRE-14`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: [
      { place: 'Low fire', make: 53, step: 4 },
      { place: 'High fire', make: 104, step: 8 },
      { place: 'Blocked drain', make: 31, step: 2 },
    ],
  },
  {
    maker: 'stavemere',
    name: 'Dunnock',
    sizes: ['060', '090'],
    patterns: (size) => [`DNK${size}/*`],
    printed: (size) => `DNK${size}/S`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: [
      { place: 'Single stage', make: 46, step: 6 },
      { place: 'Vent back-pressure', make: 61, step: 6 },
    ],
    note: 'Side-wall vented. The second switch sits on the outlet and is closed at rest.',
  },
  {
    maker: 'stavemere',
    name: 'Plover',
    sizes: ['045', '070', '095', '120'],
    patterns: (size) => [`PLV ${size} *`],
    printed: (size) => `PLV ${size} 3`,
    fuel: 'either',
    heat: 'non-condensing',
    positions: single(41, 3),
  },
  {
    maker: 'wexhollow',
    name: 'Thistle 1',
    sizes: ['040', '060', '080', '100'],
    patterns: (size) => [`TH1${size}*`],
    printed: (size) => `TH1${size}N`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: single(92, 6),
  },
  {
    maker: 'wexhollow',
    name: 'Thistle 2',
    sizes: ['060', '080'],
    patterns: (size) => [`TH2${size}P*`],
    printed: (size) => `TH2${size}P4`,
    fuel: 'propane',
    heat: 'condensing',
    positions: [
      { place: 'Low fire', make: 57, step: 5 },
      { place: 'High fire', make: 131, step: 8 },
      { place: 'Low gas pressure', make: 740, step: 0 },
    ],
    note: 'Propane only. The gas switch looks like the low-fire one and sits in the same string.',
  },
  {
    maker: 'wexhollow',
    name: 'Gable',
    sizes: ['070', '100'],
    patterns: (size) => [`GAB${size}*`],
    printed: (size) => `GAB${size}N`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: single(52, 6),
  },
  {
    maker: 'ombrick',
    name: 'Osier',
    sizes: ['060', '080', '100'],
    patterns: (size) => [`${size}-OSR-*`],
    printed: (size) => `${size}-OSR-K`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: [
      { place: 'Low fire, across both ports', make: 48, step: 4 },
      { place: 'High fire, across both ports', make: 113, step: 8 },
    ],
    revisions: [
      { from: '1', to: '3', adds: 0 },
      { from: '4', adds: -6 },
    ],
  },
  {
    maker: 'ombrick',
    name: 'Tansy',
    sizes: ['050', '070', '090'],
    patterns: (size) => [`TAN${size}.?`],
    printed: (size) => `TAN${size}.2`,
    fuel: 'natural gas',
    heat: 'condensing',
    positions: single(138, 9),
  },
  {
    maker: 'ombrick',
    name: 'Rill',
    sizes: ['050', '075', '100', '125'],
    patterns: (size) => [`RIL/${size}/*`],
    printed: (size) => `RIL/${size}/6`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: single(39, 4),
  },
  {
    maker: 'ombrick',
    name: 'Rill Two',
    sizes: ['075', '100'],
    patterns: (size) => [`RLT/${size}/*`],
    printed: (size) => `RLT/${size}/2`,
    fuel: 'natural gas',
    heat: 'non-condensing',
    positions: twoStage(36, 62, 4),
  },
] as const satisfies readonly Family[]
