import type { TrueCause } from './types'

/** The switch itself, which in the valley is guilty half as often as the trade has it. */
export const switchTruth = {
  'wrong-switch-fitted': {
    share: [1.2, 1.5, 1.5],
    shows: {
      'fitted-part-number': { 'is another number': 0.82, 'cannot be read': 0.1 },
      'label-differs-from-manual': 0.6,
      'switches-transposed': 0.15,
      'when-trouble-began': { 'after other work': 0.7 },
      'again-within-30-days': 0.4,
    },
    effect: { closesAt: [1.15, 1.7] },
    mended: ['Factory switch for this model fitted'],
    minutes: [20, 40],
    ordered: 0.5,
  },
  'switch-drifted-or-leaking': {
    share: [1.5, 1.2, 1],
    shows: {
      'make-on-hand-pump': { 'out of tolerance': 0.86 },
      'leaks-down-on-hand-pump': 0.4,
      'fitted-part-number': { 'is another number': 0.04 },
      'water-in-hose': 0.22,
    },
    effect: { closesAt: [1.2, 1.6] },
    mended: ['Factory switch replaced, readings the same before and after'],
    minutes: [25, 45],
    ordered: 0.45,
  },
  'contacts-resistive': {
    share: [1, 0.8, 0.6],
    shows: {
      'drop-across-closed-contact': { 'above 0.5 V': 0.84, '0.1 to 0.5 V': 0.1 },
      'switch-chatter': 0.36,
      'control-voltage-at-switch': { 'in, none out': 0.3 },
    },
    effect: { failsToConduct: 0.3 },
    mended: ['Factory switch replaced, drop gone'],
    minutes: [20, 40],
    ordered: 0.45,
  },
  'switch-stuck-closed': {
    share: [0.4, 0.4, 0.3],
    shows: {
      'switch-after-inducer-start': { 'read as closed before the inducer starts': 0.9 },
      'switch-closed-at-rest': 0.9,
      'switch-wires-shorted': 0.05,
    },
    effect: { stuckClosed: true },
    mended: ['Factory switch replaced, chafed wire found and sleeved'],
    minutes: [30, 50],
    ordered: 0.5,
  },
  'switch-bypassed': {
    share: [0.5, 0.6, 0.8],
    shows: {
      'jumper-or-bypass': 0.96,
      'switch-after-inducer-start': { 'read as closed before the inducer starts': 0.8 },
      'when-trouble-began': { 'after other work': 0.4 },
    },
    effect: { stuckClosed: true, cold: [0.6, 1] },
    mended: ['Jumper out, vent and trap put right behind it'],
    minutes: [40, 120],
    brings: { 'trap-plugged': 0.3, 'vent-end-blocked': 0.2 },
  },
} as const satisfies Record<string, TrueCause>
