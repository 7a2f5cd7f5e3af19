import type { FindingId } from '@/lib/catalogue/findings'
import type { FindingGroup } from '@/lib/catalogue/findings/types'

export const technicians = ['ott', 'sunniva', 'tobin', 'lale'] as const
export type Technician = (typeof technicians)[number]

/** How somebody works. All are shares of the visits, 0 to 1, unless said otherwise. */
export type Habit = {
  /** How many times as often as usual a finding of a group is looked at and tapped. */
  looks: Readonly<Record<FindingGroup, number>>
  /** Hardly ever looked at. */
  skips: readonly FindingId[]
  reads: { cold: number; hot: number; atRest: number; splits: number }
  /** Follows the trail to the true cause and taps what leads there. */
  pursues: number
  /** Names the true cause. */
  right: number
  /** Blames the switch, when wrong. */
  blamesSwitch: number
  /** Stays for readings and CO after a repair. */
  proves: number
  readsPart: number
  gauge: string
  unit: 'inches' | 'pascals'
}

const usual: Habit['looks'] = {
  sequence: 1,
  sound: 1,
  'time and weather': 1,
  'vent, intake and outdoors': 1,
  condensate: 1,
  'hose and port': 1,
  readings: 1,
  'electrical and part identity': 1,
  'combustion and cabinet': 1,
}

/** Four technicians, no two of whom look at the same things: what is not on record was not looked at by somebody. */
export const habits: Readonly<Record<Technician, Habit>> = {
  ott: {
    looks: {
      ...usual,
      condensate: 1.4,
      'hose and port': 1.4,
      'electrical and part identity': 0.5,
      'time and weather': 0.6,
    },
    skips: ['inducer-speed-and-amps', 'inducer-volts-under-load', 'vent-length-count', 'gas-input'],
    reads: { cold: 0.9, hot: 0.7, atRest: 0.3, splits: 0.6 },
    pursues: 0.62,
    right: 0.86,
    blamesSwitch: 0.05,
    proves: 0.88,
    readsPart: 0.3,
    gauge: 'G-01 yellow',
    unit: 'inches',
  },
  sunniva: {
    looks: { ...usual, sequence: 1.2, 'vent, intake and outdoors': 1.2, 'combustion and cabinet': 1.5 },
    skips: ['neighbours-alike'],
    reads: { cold: 0.95, hot: 0.85, atRest: 0.5, splits: 0.7 },
    pursues: 0.72,
    right: 0.9,
    blamesSwitch: 0.02,
    proves: 0.95,
    readsPart: 0.5,
    gauge: 'G-03 orange',
    unit: 'inches',
  },
  tobin: {
    looks: {
      ...usual,
      condensate: 0.4,
      'vent, intake and outdoors': 0.5,
      'time and weather': 0.5,
      'electrical and part identity': 1.5,
      'combustion and cabinet': 0.4,
    },
    skips: ['trap', 'drain-on-water-test', 'vent-slope', 'drain-fall-too-small', 'soot-or-rust-flakes'],
    reads: { cold: 0.7, hot: 0.45, atRest: 0.15, splits: 0.3 },
    pursues: 0.5,
    right: 0.74,
    blamesSwitch: 0.4,
    proves: 0.66,
    readsPart: 0.35,
    gauge: 'G-04 water tube',
    unit: 'inches',
  },
  lale: {
    looks: {
      ...usual,
      'vent, intake and outdoors': 1.5,
      'time and weather': 1.5,
      'electrical and part identity': 0.7,
      condensate: 0.9,
    },
    skips: ['inducer-capacitor', 'drop-across-closed-contact'],
    reads: { cold: 0.85, hot: 0.7, atRest: 0.25, splits: 0.55 },
    pursues: 0.6,
    right: 0.85,
    blamesSwitch: 0.06,
    proves: 0.84,
    readsPart: 0.3,
    gauge: 'G-02 case',
    unit: 'pascals',
  },
}

/** From this day on Tobin reads with a real gauge: the tube went into the cupboard. */
export const tobinsNewGauge = { from: '2024-10-01', gauge: 'G-03 orange' } as const

/** How often each finding is looked at on a usual visit; the rest seldom. */
export const usuallyLookedAt: Readonly<Partial<Record<FindingId, number>>> = {
  'switch-after-inducer-start': 0.49,
  'inducer-on-call': 0.4,
  'drops-out': 0.36,
  'locked-out-on-arrival': 0.4,
  'inducer-sound': 0.42,
  'hose-condition': 0.43,
  'vent-end': 0.4,
  trap: 0.35,
  intake: 0.3,
  'water-in-hose': 0.3,
  'drain-on-water-test': 0.23,
  port: 0.24,
  'switch-wiring': 0.24,
  'vent-slope': 0.22,
  'control-voltage-at-switch': 0.2,
  'flue-co-normal-and-steady': 0.2,
  'first-call-of-the-morning': 0.2,
  'when-trouble-began': 0.22,
  'after-snowfall-or-drift': 0.16,
  'long-runs-in-bitter-cold': 0.16,
  'again-within-30-days': 0.22,
  'jumper-or-bypass': 0.22,
  'soot-or-rust-flakes': 0.17,
  'hose-low-loop': 0.16,
  'gurgle-in-a-pipe': 0.14,
  'gurgle-or-sucking-at-drain': 0.13,
  'switch-chatter': 0.14,
  'water-in-inducer-housing': 0.13,
  'rumble-or-late-light-off': 0.1,
  'first-start-of-season': 0.1,
  'on-calm-days-too': 0.07,
  'in-high-wind': 0.1,
  'same-month-last-year': 0.09,
  'termination-not-per-manual': 0.09,
  'snow-line-near-pipes': 0.12,
  'vent-clear-end-to-end': 0.14,
  'drain-route': 0.1,
  'condensate-pump': 0.1,
  'furnace-kind': 0.12,
  'combustion-air-from': 0.09,
  'room-tight-or-louvre-shut': 0.1,
  'fitted-part-number': 0.09,
  'inducer-speed-and-amps': 0.09,
  'another-device-open': 0.1,
  'code-names-another-device': 0.14,
  'gap-in-door-or-box-seal': 0.09,
}

/** And everything else. */
export const seldomLookedAt = 0.015
