import type { TrueCause } from './types'

/** The inducer. In Dunmarrow it fails more often than the trade has it: one batch of wheels came loose (see park.ts). */
export const fanTruth = {
  'inducer-motor-slow': {
    share: [6, 9, 5],
    weather: { 'bitter cold': 1.8, 'first cold': 1.4 },
    shows: {
      'inducer-sound': {
        'bearing squeal or growl': 0.48,
        'slow or labouring': 0.3,
        'scrape or rattle at the wheel': 0.05,
      },
      'inducer-on-call': { 'never starts': 0.12, 'hums, does not turn': 0.06 },
      'inducer-speed-and-amps': { 'slow, or amps high': 0.85 },
      'inducer-volts-under-load': { low: 0.05 },
      'switch-after-inducer-start': {
        'closes later than that': 0.4,
        'never closes, waits and times out': 0.35,
      },
      'first-call-of-the-morning': 0.44,
      'water-in-inducer-housing': 0.14,
    },
    effect: { cold: [0.55, 0.9], hot: [0.9, 1] },
    mended: ['Inducer replaced with its gasket'],
    parts: ['inducer assembly, gasket'],
    minutes: [50, 90],
    ordered: 0.5,
  },
  'inducer-wheel': {
    share: [2, 5, 2.5],
    shows: {
      'inducer-sound': { 'scrape or rattle at the wheel': 0.6, 'slow or labouring': 0.08 },
      'inducer-wheel': { 'loose, cracked or corroded': 0.7, 'packed with debris': 0.16 },
      'inducer-speed-and-amps': { 'slow, or amps high': 0.2 },
      'water-in-inducer-housing': 0.3,
      'soot-or-rust-flakes': 0.2,
    },
    effect: {
      cold: [0.55, 0.88],
      moves: { how: 'a beat of one to three seconds', by: [2, 5], chance: 0.25 },
    },
    mended: ['Wheel replaced, gasket new', 'Inducer assembly replaced'],
    parts: ['inducer wheel, gasket', 'inducer assembly, gasket'],
    minutes: [50, 90],
    ordered: 0.5,
  },
  'inducer-supply-weak': {
    share: [3, 4, 3],
    weather: { 'first cold': 1.6, 'bitter cold': 1.5 },
    shows: {
      'inducer-capacitor': { weak: 0.7 },
      'inducer-volts-under-load': { low: 0.34 },
      'inducer-on-call': { 'hums, does not turn': 0.36, 'never starts': 0.1 },
      'inducer-sound': { 'slow or labouring': 0.6 },
      'inducer-speed-and-amps': { 'slow, or amps high': 0.6 },
      'switch-after-inducer-start': {
        'closes later than that': 0.5,
        'never closes, waits and times out': 0.3,
      },
      'first-call-of-the-morning': 0.4,
    },
    effect: { cold: [0.5, 0.9] },
    mended: ['Capacitor replaced, value as marked', 'Loose neutral at the disconnect remade'],
    parts: ['run capacitor'],
    minutes: [15, 45],
    ordered: 0.1,
  },
  'suction-side-leak': {
    share: [2.5, 2.5, 1.5],
    shows: {
      'air-drawn-in-at-a-joint': 0.76,
      'whistle-at-a-joint': 0.5,
      'collector-cap-missing': 0.28,
      'stain-below-collector': 0.36,
      'soot-or-rust-flakes': 0.16,
    },
    effect: { cold: [0.58, 0.88] },
    mended: ['Inducer gasket renewed', 'Collector box replaced', 'Cap on the collector box'],
    parts: ['inducer gasket', 'collector box and gasket', 'cap'],
    minutes: [40, 110],
    ordered: 0.3,
  },
  'wrong-inducer': {
    share: [0.5, 0.8, 0.3],
    shows: {
      'inducer-not-the-named-part': 0.82,
      'when-trouble-began': { 'after other work': 0.76 },
      'drops-on-stage-change': 0.3,
      'low-fire-only': 0.25,
      'inducer-speed-and-amps': { 'slow, or amps high': 0.4 },
    },
    effect: { cold: [0.7, 0.95], onHighFire: [0.7, 0.9] },
    mended: ['The inducer that the parts list names fitted'],
    parts: ['inducer assembly, gasket'],
    minutes: [60, 100],
    ordered: 0.7,
  },
} as const satisfies Record<string, TrueCause>
