import type { PositionBody } from '@/lib/records/kinds/position'

type PlaceInCircuit = Pick<PositionBody, 'stage' | 'kind' | 'between' | 'tap' | 'sense' | 'note'>

const air = { kind: 'one-port', between: 'port and room', sense: 'suction' } as const
const twoPort = { kind: 'two-port', between: 'two ports', tap: 'collector box', sense: 'suction' } as const

/** The places in a proving circuit that the demo's furnaces have. */
export const places = {
  'Single stage': { ...air, stage: 'single stage', tap: 'inducer inlet' },
  'Low fire': { ...air, stage: 'low fire', tap: 'collector box' },
  'Middle fire': { ...air, stage: 'middle fire', tap: 'collector box' },
  'High fire': { ...air, stage: 'high fire', tap: 'inducer inlet' },
  'Blocked drain': { ...air, stage: 'not stated', tap: 'collector box' },
  Proving: { ...twoPort, stage: 'single stage' },
  'Low fire, across both ports': { ...twoPort, stage: 'low fire' },
  'High fire, across both ports': { ...twoPort, stage: 'high fire' },
  'Vent back-pressure': {
    kind: 'opens on rise',
    between: 'port and room',
    tap: 'vent side',
    sense: 'pressure',
    stage: 'not stated',
    note: 'Closed at rest. Too much pressure in the vent opens it.',
  },
  'Low gas pressure': {
    kind: 'gas pressure',
    between: 'port and room',
    tap: 'not stated',
    sense: 'pressure',
    stage: 'not stated',
    note: 'Not an air switch. Its number is never held against a draft reading.',
  },
  'Pressure sensor': {
    kind: 'sensor',
    between: 'not stated',
    tap: 'collector box',
    sense: 'suction',
    stage: 'not stated',
    note: 'No make point of its own; the sheet has a table of targets.',
  },
} as const satisfies Readonly<Record<string, PlaceInCircuit>>

export type Place = keyof typeof places

/** The switch whose number is most often taken for this one's, by place. */
export const sisterOf: Readonly<Partial<Record<Place, Place>>> = {
  'High fire': 'Low fire',
  'Middle fire': 'Low fire',
  'High fire, across both ports': 'Low fire, across both ports',
}
