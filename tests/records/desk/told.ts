import type { HeldRecord } from '@/lib/records/fold/entry'
import { foldTeamFile, type TeamFile } from '@/lib/records/fold/teamFile'
import { recordKinds } from '@/lib/records/registry'

/** A small log, told line by line: who said what, at what time of 2 February 2026. All names are invented. */
export type Told = [id: string, kind: string, body: Record<string, unknown>, by?: string, at?: string]

export const id = (end: string): string => `01920000-0000-7000-8000-${end.padStart(12, '0')}`

/** A time of that day, UTC: `at('09:30')`. */
export const at = (time: string): string => `2026-02-02T${time}:00.000Z`

export const fileOf = (told: readonly Told[]): TeamFile =>
  foldTeamFile(
    told.map(([record, kind, body, author = 'ines', saidAt = at('08:00')], index): HeldRecord => {
      const version = recordKinds[kind]!.version
      recordKinds[kind]!.versions[version]!.parse(body)
      return {
        id: record,
        kind,
        version,
        body,
        author,
        device: 'device-1',
        saidAt,
        seq: index + 1,
        receivedAt: saidAt,
        clockShiftMs: 0,
      }
    }),
  )

export const ids = {
  maker: id('1'),
  small: id('2'),
  large: id('3'),
  low: id('4'),
  high: id('5'),
  lowLarge: id('6'),
  hill: id('7'),
  vale: id('8'),
} as const

const position = {
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  sense: 'suction',
} as const
const range = { makerId: ids.maker, fuel: 'natural gas', heat: 'condensing' } as const

/** One maker, two sizes, three switches, two furnaces of the small size. */
export const equipment: Told[] = [
  [ids.maker, 'maker', { name: 'Orrinmoor' }],
  [ids.small, 'equipment range', { ...range, name: 'Larkfell 2', modelPatterns: ['LF2-0??-*'] }],
  [ids.large, 'equipment range', { ...range, name: 'Larkfell 2 large', modelPatterns: ['LF2-1??-*'] }],
  [ids.low, 'position', { ...position, rangeId: ids.small, name: 'Low fire', stage: 'low fire' }],
  [
    ids.high,
    'position',
    { ...position, rangeId: ids.small, name: 'High fire', stage: 'high fire', sisterId: ids.low },
  ],
  [ids.lowLarge, 'position', { ...position, rangeId: ids.large, name: 'Low fire', stage: 'low fire' }],
  [
    ids.hill,
    'furnace',
    {
      siteLabel: 'Hill Lane 3',
      rangeId: ids.small,
      model: 'LF2-080-B',
      serial: 'S1',
      elevationMetres: 1500,
      fuel: 'natural gas',
    },
  ],
  [
    ids.vale,
    'furnace',
    { siteLabel: 'Vale Road 9', rangeId: ids.small, model: 'LF2-080-B', serial: 'S2', fuel: 'natural gas' },
  ],
]

/** A report of a read-back call; 249.08891 Pa to the inch (NIST SP 811, App. B.8). */
export const report = (over: Record<string, unknown> = {}): Record<string, unknown> => ({
  positionId: ids.low,
  asWritten: 'closes at zero point six zero',
  action: 'closes',
  limit: 'nominal',
  pascals: 0.6 * 249.08891,
  sense: 'suction',
  unit: 'inH2O',
  decimals: 2,
  kind: 'one-port',
  between: 'port and room',
  tap: 'collector box',
  stage: 'low fire',
  source: 'distributor',
  readBack: true,
  proof: { kind: 'call reference', organisation: 'Hobb & Lane counter', reference: 'C-1' },
  revisionRange: {},
  serialRange: {},
  elevationBand: {},
  ...over,
})

export const request = (over: Record<string, unknown> = {}): Record<string, unknown> => ({
  printed: 'nothing',
  needs: [],
  ...over,
})
