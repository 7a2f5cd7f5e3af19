import type { TrueCause } from './types'

/** The port, the hose, and the passages that the gas goes through. */
export const hoseAndExchangerTruth = {
  'port-plugged': {
    share: [6, 6, 3],
    shows: {
      port: { plugged: 0.6, narrowed: 0.28 },
      'switch-after-inducer-start': {
        'never closes, waits and times out': 0.5,
        'closes later than that': 0.3,
      },
      'soot-or-rust-flakes': 0.3,
      'water-in-hose': 0.12,
      'first-start-of-season': 0.22,
    },
    effect: { cold: [0, 0.5], heldAtRest: { hundredths: [3, 9], chance: 0.3 } },
    mended: ['Port cleared to its full bore', 'Port cleared, flakes out of the collector box'],
    minutes: [10, 25],
    passing: { done: ['Port poked through'], chance: 0.22 },
    brings: { 'water-in-hose-or-switch': 0.08 },
  },
  'hose-off-or-leaking': {
    share: [4, 4, 3],
    shows: {
      'hose-condition': { off: 0.26, 'cracked, or loose at a barb': 0.62 },
      'reading-moves-when-hose-is-touched': 0.62,
      'when-trouble-began': { 'after other work': 0.3 },
      'switch-after-inducer-start': {
        'never closes, waits and times out': 0.6,
        'closes later than that': 0.15,
      },
    },
    effect: { cold: [0, 0.75] },
    mended: ['Hose replaced, same bore and length', 'Hose end cut back and clipped on'],
    parts: ['half a metre of hose'],
    minutes: [8, 18],
  },
  'hose-misrouted': {
    share: [1.5, 1, 1],
    shows: {
      'hose-routing': { 'on the wrong port': 0.58 },
      'hose-condition': { pinched: 0.25 },
      'hose-restrictor': { missing: 0.2, blocked: 0.26 },
      'switches-transposed': 0.2,
      'when-trouble-began': { 'after other work': 0.76 },
    },
    effect: { cold: [0.5, 0.85], doorOff: [1.05, 1.25] },
    mended: ['Hoses on as the diagram shows', 'Restrictor cleared and put back'],
    minutes: [10, 22],
  },
  'secondary-exchanger-restricted': {
    share: [2, 1.5, 1],
    only: 'condensing',
    shows: {
      'pressure-across-exchanger': { 'not as the manual says': 0.86 },
      'soot-or-rust-flakes': 0.42,
      'flue-co-high': 0.24,
      'flue-temperature': { 'out of range': 0.6 },
      'flue-co-normal-and-steady': 0.35,
      trap: { 'sludge in it': 0.62 },
      'drops-on-stage-change': 0.3,
      'rumble-or-late-light-off': 0.25,
    },
    effect: { cold: [1.12, 1.4], onHighFire: [0.62, 0.8], acrossPorts: [0.6, 0.85] },
    mended: ['Condensing exchanger replaced under the maker’s procedure'],
    parts: ['secondary exchanger, gaskets'],
    minutes: [200, 420],
    ordered: 0.85,
  },
  'primary-exchanger-cracked': {
    share: [0.6, 0.6, 0.6],
    shows: {
      'cracked-heat-exchanger': 0.8,
      'flame-moves-at-blower-start': 0.74,
      'drops-when-air-blower-starts': 0.66,
      'soot-or-rust-flakes': 0.3,
      scorching: 0.12,
    },
    effect: { blowerTakes: [10, 32] },
    mended: ['Furnace replaced by another trade; old one taken out'],
    minutes: [60, 120],
    ordered: 1,
  },
  'primary-exchanger-sooted': {
    share: [0.5, 0.5, 0.8],
    shows: {
      'soot-or-rust-flakes': 0.86,
      'flue-co-high': 0.62,
      scorching: 0.3,
      'rumble-or-late-light-off': 0.5,
      'flue-co-normal-and-steady': 0.08,
      'gas-input': { 'out of range': 0.3 },
    },
    effect: { cold: [1.04, 1.25], acrossPorts: [0.75, 0.92] },
    mended: ['Passages cleaned, air and input put right first'],
    minutes: [140, 280],
  },
} as const satisfies Record<string, TrueCause>
