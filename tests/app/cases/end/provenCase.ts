import type { HeldRecord } from '@/lib/records/fold/entry'
import { dispatcher, held, technician } from '../../setup/fakeDevice'
import { equipmentRecords, ids, report } from '../../setup/smallFile'

/**
 * One case from the call to a repair that is proven but not yet ended, on the furnace of the small file. All names
 * and numbers are invented; 249.08891 Pa to the inch of water (NIST SP 811, App. B.8).
 */
const id = (end: string) => `01920000-0000-7000-8000-${end.padStart(12, '0')}`
export const inches = (figure: number): number => figure * 249.08891

export const of = {
  case: id('c00'),
  visit: id('c01'),
  trap: id('c02'),
  water: id('c03'),
  mistapped: id('c04'),
  found: id('c05'),
  repair: id('c06'),
  lowAfter: id('c07'),
  highAfter: id('c08'),
  combustion: id('c09'),
  takenBack: id('c0a'),
  label: ids.label,
  ending: id('c10'),
  otherEnding: id('c11'),
  notice: id('c12'),
  lifting: id('c13'),
  more: id('c20'),
} as const

export type Row = [id: string, kind: string, body: Record<string, unknown>, saidAt?: string, by?: string]

/** A minute of the day of the visit, by the universal clock. */
export const at = (time: string): string => `2026-01-12T${time}:00.000Z`

export const ofVisit = { caseId: of.case, visitId: of.visit }
export const ofFurnace = { ...ofVisit, furnaceId: ids.furnace }

/** What stood of a rating on the day: the label on the factory switch alone. */
const against = [
  {
    action: 'closes',
    limit: 'nominal',
    pascals: inches(0.58),
    toleranceAbove: inches(0.05),
    toleranceBelow: inches(0.05),
    level: 'Supported',
    sources: ['data plate'],
    reportIds: [ids.label],
  },
  {
    action: 'opens',
    limit: 'nominal',
    pascals: inches(0.43),
    level: 'Supported',
    sources: ['data plate'],
    reportIds: [ids.label],
  },
]

export const reading = {
  ...ofFurnace,
  positionId: ids.low,
  samples: [inches(0.41)],
  sense: 'suction',
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage: 'low fire',
  door: 'on',
  phase: 'pre-purge',
  contacts: 'open',
  situation: 'as found',
  when: 'as found',
  byTeeAtTheSwitch: true,
  gaugeId: ids.gauge,
  zeroed: true,
  asTyped: '.41 WC',
  against,
}

const hot = {
  ...reading,
  samples: [inches(0.92)],
  phase: 'steady hot',
  contacts: 'closed',
  when: 'after repair',
  secondsWatched: 90,
  lowest: inches(0.91),
  highest: inches(0.93),
  asTyped: '.92 WC',
}

export const combustionTest = {
  ...ofFurnace,
  when: 'after repair',
  roomCoPpm: 0,
  roomCoLimitPpm: 9,
  flueCoPpm: [24, 26],
  oxygenPercent: 8,
  flueCoLimitPpm: 100,
  flueCoLimitFrom: 'Installation manual, page 40',
  minutesRunning: 20,
  minutesAsked: 15,
  meter: 'CO-3',
}

/** The report that the limits of that day rest on. */
const label: Row = [
  ids.label,
  'report',
  {
    ...report,
    asWritten: '-.58 WC CLOSE',
    pascals: inches(0.58),
    source: 'data plate',
    proof: { kind: 'document', name: 'Data plate', page: '1' },
    saidOn: '2026-01-05',
  },
  '2026-01-05T09:00:00.000Z',
]

export const provenRows: readonly Row[] = [
  label,
  [
    of.case,
    'case',
    { furnaceId: ids.furnace, complaint: 'No heat since the night', circuit: 'proving circuit' },
    at('14:40'),
    dispatcher.id,
  ],
  [
    of.visit,
    'visit',
    { caseId: of.case, on: '2026-01-12', licence: 'HV-2207', weather: '-12 °C, calm' },
    at('15:00'),
  ],
  [of.trap, 'finding', { ...ofVisit, finding: 'trap', value: 'sludge in it' }, at('15:04')],
  [of.water, 'finding', { ...ofVisit, finding: 'water-in-collector-box', value: 'seen' }, at('15:05')],
  [of.mistapped, 'finding', { ...ofVisit, finding: 'water-in-hose', value: 'seen' }, at('15:06')],
  [of.takenBack, 'withdrawal', { record: of.mistapped, reason: 'Tapped by mistake' }, at('15:07')],
  [of.found, 'reading', reading, at('15:20')],
  [
    of.repair,
    'repair',
    {
      ...ofFurnace,
      done: 'Trap taken out, flushed and primed',
      switchReplaced: false,
      parts: 'Trap gasket, from the van',
      minutes: 30,
      on: '2026-01-12',
    },
    at('15:50'),
  ],
  [of.lowAfter, 'reading', hot, at('16:10')],
  [of.highAfter, 'reading', { ...hot, positionId: ids.high, stage: 'high fire' }, at('16:20')],
  [of.combustion, 'combustion test', combustionTest, at('16:30')],
]

/** An ending that says everything that a proven repair asks of it. */
export const provenEnding = {
  ...ofVisit,
  how: 'repaired and proven',
  mainCause: 'trap-plugged',
  confirmingTest: 'confirmed',
  repairIds: [of.repair],
  minutes: 95,
  thermostatCycles: 3,
  putBack: ['tee out', 'hose on its own port', 'trap primed', 'joints sealed', 'door on'],
  nothingToPutBack: ['test holes plugged'],
}

/** A notice that says everything. */
export const fullNotice = {
  furnaceId: ids.furnace,
  caseId: of.case,
  on: '2026-01-12',
  found: 'The heat exchanger is cracked.',
  doNotRelightUntil: 'the heat exchanger is replaced',
  gas: 'off',
  power: 'off',
  tagged: true,
  told: 'tenant',
  toldAt: '2026-01-12T09:40:00-07:00',
  writtenNotice: true,
  authority: 'told',
  authorityWho: 'gas supplier, duty desk',
  heatAndFrost: 'Two electric heaters, water off at the main',
}

/** Records for a fake device: the equipment, and these rows in their order. */
export const recordsOf = (rows: readonly Row[]): HeldRecord[] =>
  [
    ...equipmentRecords,
    ...held(rows.map(([id, kind, body, saidAt]) => [id, kind, body, saidAt])).map((record, index) => ({
      ...record,
      author: rows[index]![4] ?? technician.id,
    })),
  ].map((record, index) => ({ ...record, seq: index + 1 }))

/** The rows without some of them. */
export const without = (rows: readonly Row[], ...ids: string[]): Row[] =>
  rows.filter(([id]) => !ids.includes(id))

/** The rows with part of one body changed. */
export const changed = (rows: readonly Row[], which: string, body: Record<string, unknown>): Row[] =>
  rows.map((row) => (row[0] === which ? [row[0], row[1], { ...row[2], ...body }, row[3], row[4]] : row))
