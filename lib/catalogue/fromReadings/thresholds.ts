import { toPascals } from '@/lib/core/pressure'
import { usualReadingSettings } from '@/lib/core/reading'

/**
 * How far a reading has to go before something is said of it, all in pascals. All are common practice, no published
 * source. Steadiness itself (± 0.02 in. w.c. over a minute) and every verdict come from compareReading.
 */
export const thresholds = {
  /** Within this much of a limit, and moving: marginal. */
  marginal: toPascals(0.1, 'inH2O'),
  /** No more than this while the inducer runs: next to nothing reaches the gauge. */
  nearZero: toPascals(0.05, 'inH2O'),
  /** At rest, at least this much is held in hose, port or switch. */
  heldAtRest: toPascals(0.03, 'inH2O'),
  /** At rest, a zeroed gauge shows no more than this. */
  restZero: usualReadingSettings.restZeroLimitPascals,
  /** Twice the steady band of ± 0.02 with something to spare: a change at least this large is one. */
  change: toPascals(0.05, 'inH2O'),
  /** A change no larger than the steady band is none. */
  noChange: usualReadingSettings.flutterHalfSpreadPascals,
} as const

/** Two readings farther apart in time are not held against each other: weather and water have moved on. */
export const pairedWithinMinutes = 120

/** The blower's step is read against a reading of the same run. */
export const stepWithinMinutes = 10

/** a ≥ b, where a difference of two readings may miss its own value by a rounding of the machine. */
export const isAtLeast = (a: number, b: number): boolean => a >= b - 1e-9
