import { held } from './fakeDevice'

/**
 * A small team file: one maker, one range with two switches, their parts, two furnaces, a gauge, and a make point in
 * dispute. All names and numbers are invented.
 */
const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`

export const ids = {
  maker: id('1'),
  range: id('2'),
  low: id('3'),
  high: id('4'),
  oldPart: id('5'),
  newPart: id('6'),
  highPart: id('7'),
  generic: id('8'),
  unknownPart: id('9'),
  furnace: id('a'),
  bareFurnace: id('b'),
  gauge: id('c'),
  label: id('d'),
  counter: id('e'),
  support: id('f'),
} as const

const circuit = {
  rangeId: ids.range,
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  sense: 'suction',
}
const factory = { class: 'factory', fieldAdjustable: false, makerId: ids.maker }
/** What every report on the low-fire switch of this file has in common. */
export const report = {
  positionId: ids.low,
  action: 'closes',
  limit: 'nominal',
  sense: 'suction',
  unit: 'inH2O',
  decimals: 2,
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage: 'low fire',
  revisionRange: {},
  serialRange: {},
  elevationBand: {},
}
/** 0.58 and 0.42 in. w.c., with 249.08891 Pa to the inch (NIST SP 811, App. B.8). */
export const pascals = { make: 0.58 * 249.08891, other: 0.42 * 249.08891 }

/** The answer to a rating request, given by telephone and read back. */
export const spokenAnswer = (requestId: string): Record<string, unknown> => ({
  ...report,
  asWritten: 'closes at minus point five eight',
  pascals: pascals.make,
  tap: 'not stated',
  source: 'distributor',
  readBack: true,
  proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-91' },
  requestId,
})

/** Everything but the reports. */
export const equipmentRecords = held([
  [ids.maker, 'maker', { name: 'Orrinmoor' }],
  [
    ids.range,
    'equipment range',
    {
      makerId: ids.maker,
      name: 'Larkfell 2',
      modelPatterns: ['LF2-0??-*'],
      fuel: 'natural gas',
      heat: 'condensing',
    },
  ],
  [ids.low, 'position', { ...circuit, name: 'Low fire', stage: 'low fire' }],
  [ids.high, 'position', { ...circuit, name: 'High fire', stage: 'high fire', sisterId: ids.low }],
  [
    ids.oldPart,
    'part',
    { ...factory, partNumber: 'OM-7731', positionIds: [ids.low], listedIn: 'Parts list LF2, page 9' },
  ],
  [
    ids.newPart,
    'part',
    { ...factory, partNumber: 'OM-8802', positionIds: [ids.low], listedIn: 'Kit sheet 44' },
  ],
  [
    ids.highPart,
    'part',
    { ...factory, partNumber: 'OM-9140', positionIds: [ids.high], listedIn: 'Parts list LF2, page 9' },
  ],
  [
    ids.generic,
    'part',
    { partNumber: 'GP-ADJ-1', class: 'general-purpose', fieldAdjustable: true, positionIds: [] },
  ],
  [
    ids.unknownPart,
    'part',
    { partNumber: 'XR-55', class: 'not known', fieldAdjustable: false, positionIds: [] },
  ],
  [
    ids.furnace,
    'furnace',
    {
      siteLabel: 'Mill Row 12',
      branch: 'North',
      rangeId: ids.range,
      model: 'LF2-080-B',
      serial: 'S2204-118',
      elevationMetres: 1463.04,
      fuel: 'natural gas',
    },
  ],
  [ids.bareFurnace, 'furnace', { siteLabel: 'Tarn Gate 3', model: 'LF2-060-A', fuel: 'not stated' }],
  [
    ids.gauge,
    'gauge',
    {
      name: 'G-07',
      unit: 'inH2O',
      percentOfReading: 1,
      counts: 2,
      combine: 'plus',
      spanPascals: 20 * 249.08891,
      resolutionPascals: 0.001 * 249.08891,
      calibrationDue: '2025-06-30',
    },
  ],
])

/** The same with two proven sources for one make point that name different numbers. */
export const disputedRecords = [
  ...equipmentRecords,
  ...held([
    [
      ids.label,
      'report',
      {
        ...report,
        asWritten: '-.58 WC CLOSE',
        pascals: pascals.make,
        source: 'data plate',
        proof: { kind: 'document', name: 'Data plate', page: '1' },
        saidOn: '2026-01-05',
      },
      '2026-01-05T09:00:00.000Z',
    ],
    [
      ids.counter,
      'report',
      {
        ...report,
        asWritten: 'closes at zero point four two',
        pascals: pascals.other,
        source: 'distributor',
        readBack: true,
        proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-91' },
        saidOn: '2026-01-06',
      },
      '2026-01-06T09:00:00.000Z',
    ],
  ]).map((record, index) => ({ ...record, seq: equipmentRecords.length + index + 1 })),
]

/** The same once factory technical support was asked, and named the first of the two. */
export const settleableRecords = [
  ...disputedRecords,
  ...held([
    [
      ids.support,
      'report',
      {
        ...report,
        asWritten: 'closes at zero point five eight',
        pascals: pascals.make,
        source: 'factory support',
        readBack: true,
        proof: { kind: 'call reference', organisation: 'Orrinmoor technical line', reference: 'T-5512' },
        saidOn: '2026-01-12',
      },
      '2026-01-12T09:00:00.000Z',
    ],
  ]).map((record) => ({ ...record, seq: disputedRecords.length + 1 })),
]
