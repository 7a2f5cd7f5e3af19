import { toPascals } from '@/lib/core/pressure'
import {
  type Comparison,
  type ComparisonInput,
  compareReading,
  type Instrument,
  type Judgement,
  type Limit,
  type RatingForComparison,
  type Reading,
  type ReadingSettings,
  usualReadingSettings,
} from '@/lib/core/reading'

export const inches = (value: number): number => toPascals(value, 'inH2O')

export const settings: ReadingSettings = { ...usualReadingSettings, now: '2026-01-20T15:00:00Z' }

/** ± 1 % of reading + 1 digit of 0.001 in. w.c., span 5 in. w.c. */
export const fineGauge: Instrument = {
  percentOfReading: 1,
  counts: 1,
  spanPascals: inches(5),
  resolutionPascals: inches(0.001),
  combine: 'plus',
  zeroed: true,
  calibrationDue: '2026-06-30',
}

/** ± 0.5 % of a span of 20 in. w.c., so ± 0.10 in. w.c. wherever it is read. */
export const coarseGauge: Instrument = {
  percentOfSpan: 0.5,
  spanPascals: inches(20),
  resolutionPascals: inches(0.01),
  combine: 'plus',
  zeroed: true,
  calibrationDue: '2026-06-30',
}

/** A reading in inches of water, cold, at a one-port suction switch with its contact open. */
export function reading(samplesInches: number[], changed: Partial<Reading> = {}): Reading {
  return {
    samples: samplesInches.map(inches),
    sense: 'suction',
    kind: 'one-port',
    between: 'port and room',
    tap: 'collector box',
    stage: 'single stage',
    door: 'on',
    secondsWatched: 60,
    phase: 'pre-purge',
    contacts: 'open',
    ...changed,
  }
}

/** A limit in inches of water, Verified. */
export function limit(valueInches: number, toleranceInches?: number, changed: Partial<Limit> = {}): Limit {
  return {
    pascals: inches(valueInches),
    ...(toleranceInches !== undefined && {
      toleranceAbove: inches(toleranceInches),
      toleranceBelow: inches(toleranceInches),
    }),
    kind: 'nominal',
    standing: 'Verified',
    ...changed,
  }
}

export function rating(changed: Partial<RatingForComparison> = {}): RatingForComparison {
  return {
    kind: 'one-port',
    between: 'port and room',
    tap: 'collector box',
    stage: 'single stage',
    sense: 'suction',
    ...changed,
  }
}

/** Freezes a value all the way down, so that a changed input throws. */
export function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null && !Object.isFrozen(value)) {
    Object.freeze(value)
    for (const part of Object.values(value)) frozen(part)
  }
  return value
}

export function compare(input: Partial<ComparisonInput> & Pick<ComparisonInput, 'reading' | 'rating'>) {
  return compareReading(frozen({ instrument: fineGauge, settings, ...input }))
}

/** The comparison, or a failed test with the problem's message. */
export function compared(input: Parameters<typeof compare>[0]): Comparison {
  const result = compare(input)
  if (!result.ok) throw new Error(`${result.problem.code}: ${result.problem.message}`)
  return result.value
}

export function started(input: Parameters<typeof compare>[0]): Judgement {
  const { start } = compared(input)
  if (start === undefined) throw new Error('no start judgement')
  return start
}

export function ran(input: Parameters<typeof compare>[0]): Judgement {
  const { run } = compared(input)
  if (run === undefined) throw new Error('no run judgement')
  return run
}

export function problem(input: Parameters<typeof compare>[0]) {
  const result = compare(input)
  if (result.ok) throw new Error('expected a problem')
  return result.problem
}
