import { toPascals } from '@/lib/core/pressure'
import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'
import { whyNoSuchFinding } from '@/lib/records/trade'
import { type CaseView, caseViewOf } from '@/lib/records/view/case/caseView'

/**
 * A small invented team with one furnace, its two switches and what is known of their ratings, for cases to happen
 * on. Every record is held against its schema, so that no test rests on what could not be in the log.
 */

export const inches = (value: number): number => toPascals(value, 'inH2O')

const idOf = (number: number): string => `01940000-0000-7000-8000-${String(number).padStart(12, '0')}`

export const ids = {
  maker: idOf(1),
  range: idOf(2),
  low: idOf(3),
  high: idOf(4),
  gauge: idOf(5),
  furnace: idOf(6),
  oldPart: idOf(7),
  newPart: idOf(8),
  highPart: idOf(9),
  generic: idOf(10),
  supersession: idOf(11),
  lowCloses: idOf(12),
  lowOpens: idOf(13),
  highOpens: idOf(14),
  lowClosesSaid: idOf(15),
  lowOpensSaid: idOf(16),
  highOpensSaid: idOf(17),
  riser: idOf(18),
  riserOpens: idOf(19),
  riserOpensSaid: idOf(20),
  case: idOf(30),
  visit: idOf(31),
} as const

/** A moment of January 2026, by the universal clock: the day, and the time as "14:05". */
export const at = (day: number, time = '12:00'): string =>
  new Date(Date.parse(`2026-01-01T${time}:00.000Z`) + (day - 1) * 86_400_000).toISOString()

let nextId = 1000

type Said = { id?: string; at?: string; by?: string; version?: number }

/** A record as a device holds it, said in good shape. */
export function said(
  kind: string,
  body: Record<string, unknown>,
  { id, at: saidAt, by, version }: Said = {},
): HeldRecord {
  nextId += 1
  const known = recordKinds[kind]!
  const parsed = known.versions[version ?? known.version]!.safeParse(body)
  if (!parsed.success) throw new Error(`${kind}: ${parsed.error.message}`)
  const unknown = kind === 'finding' && whyNoSuchFinding(String(body.finding), String(body.value))
  if (unknown) throw new Error(unknown.sentence)
  return {
    id: id ?? idOf(nextId),
    kind,
    version: version ?? known.version,
    body,
    saidAt: saidAt ?? at(1),
    author: by ?? 'person-1',
    device: 'device-1',
    seq: nextId,
    receivedAt: saidAt ?? at(1),
    clockShiftMs: 0,
  }
}

export const withdrawn = (record: HeldRecord, when?: string): HeldRecord =>
  said('withdrawal', { record: record.id, reason: 'Not so.' }, { at: when ?? record.saidAt })

const position = {
  rangeId: ids.range,
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  sense: 'suction',
}
const everywhere = { revisionRange: {}, serialRange: {}, elevationBand: { toMetres: 1500 } }
const saysOf = (positionId: string, stage: string, action: 'closes' | 'opens', value: number, more = {}) => ({
  positionId,
  asWritten: `${action} ${value}`,
  action,
  limit: 'nominal',
  pascals: inches(value),
  toleranceAbove: inches(0.05),
  toleranceBelow: inches(0.05),
  sense: 'suction',
  unit: 'inH2O',
  decimals: 2,
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage,
  ...everywhere,
  ...more,
})
const literature = {
  source: 'current literature',
  proof: { kind: 'document', name: 'Installation manual LF2', page: '14' },
  origin: 'manual LF2',
}
const support = {
  source: 'factory support',
  readBack: true,
  proof: { kind: 'call reference', organisation: 'Orrinmoor technical line', reference: 'T-5512' },
  saidBy: 'Technical line',
  origin: 'call T-5512',
}

const factory = {
  class: 'factory',
  fieldAdjustable: false,
  makerId: ids.maker,
  listedIn: 'Parts list LF2, page 9',
}

/**
 * Low fire closes at 0.58 and opens at 0.43, high fire opens at 0.75 in. w.c., each ± 0.05, all Verified: the maker's
 * manual and its technical line. OM-7731 is replaced by OM-7731K.
 */
export const base: readonly HeldRecord[] = [
  said('maker', { name: 'Orrinmoor' }, { id: ids.maker }),
  said(
    'equipment range',
    {
      makerId: ids.maker,
      name: 'Larkfell 2',
      modelPatterns: ['LF2-0??-*'],
      fuel: 'natural gas',
      heat: 'condensing',
    },
    { id: ids.range },
  ),
  said('position', { ...position, name: 'Low fire', stage: 'low fire' }, { id: ids.low }),
  said(
    'position',
    { ...position, name: 'High fire', stage: 'high fire', sisterId: ids.low },
    { id: ids.high },
  ),
  said(
    'gauge',
    {
      name: 'G-07',
      unit: 'inH2O',
      percentOfReading: 1,
      counts: 1,
      combine: 'plus',
      spanPascals: inches(5),
      resolutionPascals: inches(0.001),
      calibrationDue: '2026-09-30',
    },
    { id: ids.gauge },
  ),
  said(
    'furnace',
    {
      siteLabel: 'Mill Row 12',
      rangeId: ids.range,
      model: 'LF2-080-B',
      revision: 'B',
      serial: 'S2204-118',
      elevationMetres: 300,
      fuel: 'natural gas',
      ventMaterial: 'Plastic, 2 in.',
    },
    { id: ids.furnace },
  ),
  said('part', { partNumber: 'OM-7731', ...factory, positionIds: [ids.low] }, { id: ids.oldPart }),
  said('part', { partNumber: 'OM-7731K', ...factory, positionIds: [ids.low] }, { id: ids.newPart }),
  said('part', { partNumber: 'OM-7740', ...factory, positionIds: [ids.high] }, { id: ids.highPart }),
  said(
    'part',
    { partNumber: 'GP-ADJ-1', class: 'general-purpose', fieldAdjustable: true, positionIds: [] },
    { id: ids.generic },
  ),
  said(
    'supersession',
    { oldPartId: ids.oldPart, newPartId: ids.newPart, setting: 'same', kit: true, statedIn: 'Kit sheet 44' },
    { id: ids.supersession },
  ),
  ...(
    [
      [ids.low, 'low fire', 'closes', 0.58, ids.lowCloses, ids.lowClosesSaid],
      [ids.low, 'low fire', 'opens', 0.43, ids.lowOpens, ids.lowOpensSaid],
      [ids.high, 'high fire', 'opens', 0.75, ids.highOpens, ids.highOpensSaid],
    ] as const
  ).flatMap(([positionId, stage, action, value, printed, told]) => [
    said('report', { ...saysOf(positionId, stage, action, value), ...literature }, { id: printed }),
    said('report', { ...saysOf(positionId, stage, action, value), ...support }, { id: told }),
  ]),
]

/** A switch on the vent side that opens on rise: at 0.95 ± 0.05 in. w.c. */
export const riser: readonly HeldRecord[] = [
  said(
    'position',
    {
      ...position,
      name: 'Vent pressure',
      stage: 'high fire',
      kind: 'opens on rise',
      tap: 'vent side',
      sense: 'pressure',
    },
    { id: ids.riser },
  ),
  ...[literature, support].map((source, place) =>
    said(
      'report',
      {
        ...saysOf(ids.riser, 'high fire', 'opens', 0.95, {
          kind: 'opens on rise',
          tap: 'vent side',
          sense: 'pressure',
        }),
        ...source,
      },
      { id: place === 0 ? ids.riserOpens : ids.riserOpensSaid },
    ),
  ),
]

export const ofVisit = { caseId: ids.case, visitId: ids.visit }
export const ofFurnace = { furnaceId: ids.furnace, ...ofVisit }

export const aCase = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said(
    'case',
    { furnaceId: ids.furnace, complaint: 'No heat', circuit: 'proving circuit', ...more },
    { id: ids.case, at: at(12, '08:00'), ...options },
  )
export const aVisit = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said(
    'visit',
    { caseId: ids.case, on: '2026-01-12', ...more },
    { id: ids.visit, at: at(12, '09:00'), ...options },
  )

/** The case and its first visit, on 12 January. */
export const opened: readonly HeldRecord[] = [aCase(), aVisit()]

export const finding = (
  id: string,
  value: string,
  time = '09:10',
  more: Record<string, unknown> = {},
): HeldRecord =>
  said('finding', { ...ofVisit, finding: id, value, ...more }, { at: time.length > 5 ? time : at(12, time) })

const limitThen = (action: 'closes' | 'opens', value: number, reportIds: readonly string[]) => ({
  action,
  limit: 'nominal',
  pascals: inches(value),
  toleranceAbove: inches(0.05),
  toleranceBelow: inches(0.05),
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  level: 'Verified',
  sources: ['current literature', 'factory support'],
  reportIds,
})
const against: Record<string, unknown> = {
  [ids.low]: [
    { ...limitThen('closes', 0.58, [ids.lowCloses, ids.lowClosesSaid]), stage: 'low fire', sense: 'suction' },
    { ...limitThen('opens', 0.43, [ids.lowOpens, ids.lowOpensSaid]), stage: 'low fire', sense: 'suction' },
  ],
  [ids.high]: [
    { ...limitThen('opens', 0.75, [ids.highOpens, ids.highOpensSaid]), stage: 'high fire', sense: 'suction' },
  ],
  [ids.riser]: [
    {
      ...limitThen('opens', 0.95, [ids.riserOpens, ids.riserOpensSaid]),
      kind: 'opens on rise',
      tap: 'vent side',
      stage: 'high fire',
      sense: 'pressure',
    },
  ],
}

/** A reading in inches of water at the low-fire switch, cold, contact open, watched for a minute, unless told otherwise. */
export function reading(value: number, more: Record<string, unknown> = {}, options: Said = {}): HeldRecord {
  const positionId = (more.positionId as string | undefined) ?? ids.low
  return said(
    'reading',
    {
      ...ofFurnace,
      positionId,
      samples: [inches(value), inches(value), inches(value)],
      sense: positionId === ids.riser ? 'pressure' : 'suction',
      kind: positionId === ids.riser ? 'opens on rise' : 'one-port',
      between: 'port and room',
      tap: positionId === ids.riser ? 'vent side' : 'collector box',
      stage: positionId === ids.low ? 'low fire' : 'high fire',
      door: 'on',
      secondsWatched: 60,
      phase: 'pre-purge',
      contacts: 'open',
      situation: 'as found',
      when: 'as found',
      byTeeAtTheSwitch: true,
      gaugeId: ids.gauge,
      zeroed: true,
      asTyped: `${value}`,
      against: against[positionId],
      ...more,
    },
    { at: at(12, '09:30'), ...options },
  )
}

/** A hot reading after the repair, contact closed, its minimum and maximum held. */
export const hot = (value: number, more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  reading(
    value,
    {
      phase: 'steady hot',
      contacts: 'closed',
      when: 'after repair',
      lowest: inches(value),
      highest: inches(value),
      ...more,
    },
    { at: at(12, '11:30'), ...options },
  )

export const repair = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said(
    'repair',
    { ...ofFurnace, done: 'Cleared the trap', switchReplaced: false, on: '2026-01-12', ...more },
    { at: at(12, '11:00'), ...options },
  )

export const combustion = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said(
    'combustion test',
    {
      ...ofFurnace,
      when: 'after repair',
      roomCoPpm: 0,
      roomCoLimitPpm: 9,
      flueCoPpm: [24, 26],
      oxygenPercent: 8,
      flueCoLimitPpm: 100,
      flueCoLimitFrom: 'Manual LF2, page 31',
      minutesRunning: 16,
      minutesAsked: 15,
      ...more,
    },
    { at: at(12, '11:40'), ...options },
  )

/** Everything that a proven repair asks for. */
export const provenEnding = {
  ...ofVisit,
  how: 'repaired and proven',
  mainCause: 'trap-plugged',
  confirmingTest: 'confirmed',
  minutes: 90,
  thermostatCycles: 3,
  putBack: [
    'tee out',
    'hose on its own port',
    'test holes plugged',
    'trap primed',
    'joints sealed',
    'door on',
  ],
}

export const ending = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said('ending', { ...provenEnding, ...more }, { at: at(12, '13:00'), ...options })

/** A whole case that ended repaired and proven on 12 January. */
export const proven: readonly HeldRecord[] = [
  ...opened,
  finding('trap', 'sludge in it'),
  reading(0.4),
  repair(),
  hot(0.65),
  hot(0.95, { positionId: ids.high }),
  combustion(),
]

export const notice = (more: Record<string, unknown> = {}, options: Said = {}): HeldRecord =>
  said(
    'shut-down notice',
    {
      furnaceId: ids.furnace,
      caseId: ids.case,
      on: '2026-01-12',
      found: 'Spillage',
      doNotRelightUntil: 'The vent is rebuilt',
      gas: 'off',
      power: 'off',
      tagged: true,
      told: 'The tenant',
      toldAt: at(12, '12:30'),
      writtenNotice: true,
      authority: 'told',
      authorityWho: 'Gas supplier',
      heatAndFrost: 'Two heaters',
      ...more,
    },
    { at: at(12, '12:40'), ...options },
  )

export const lifting = (of: HeldRecord, options: Said = {}): HeldRecord =>
  said('lifting', { noticeId: of.id, on: '2026-01-14', because: 'Vent rebuilt' }, { at: at(14), ...options })

/** The team file with these records beside the base. */
export const team = (...records: readonly (HeldRecord | readonly HeldRecord[])[]): TeamFile =>
  foldTeamFile([...base, ...records.flat()])

/** The case of the team file. @throws when it is not on it */
export function viewOf(file: TeamFile, now?: string, caseId: string = ids.case): CaseView {
  const view = caseViewOf(file, caseId, now)
  if (view === undefined) throw new Error('The case is not on file')
  return view
}

export const codesOf = (dangers: readonly { code: string }[]): string[] => dangers.map(({ code }) => code)
