import type { CaseReading } from './types'
import { meanOf, temperatureOf } from './usable'

/** Taken at the same switch between the same points on the same stage, both cold or both hot. */
export const isSamePlace = (one: CaseReading, other: CaseReading): boolean =>
  one.reading.kind === other.reading.kind &&
  one.reading.between === other.reading.between &&
  one.reading.tap === other.reading.tap &&
  one.reading.stage === other.reading.stage &&
  one.reading.sense === other.reading.sense

export const isSameRunState = (one: CaseReading, other: CaseReading): boolean =>
  isSamePlace(one, other) && temperatureOf(one) !== undefined && temperatureOf(one) === temperatureOf(other)

/** Minutes from one reading to another, below 0 when the other came first; NaN when a time cannot be read. */
export const minutesBetween = (from: CaseReading, to: CaseReading): number =>
  (Date.parse(to.at) - Date.parse(from.at)) / 60_000

/**
 * The candidates nearest in time to a reading, all of those equally near, so that no order decides. None beyond
 * `withinMinutes`, none whose time cannot be read.
 */
export function nearestTo(
  reading: CaseReading,
  candidates: readonly CaseReading[],
  withinMinutes: number,
): CaseReading[] {
  const apart = (one: CaseReading) => Math.abs(minutesBetween(one, reading))
  const near = candidates.filter((one) => apart(one) <= withinMinutes)
  const least = Math.min(...near.map(apart))
  return near.filter((one) => apart(one) === least)
}

/** How far the mean rose from the others to this one, by the smallest and by the largest account, pascals. */
export function riseFrom(others: readonly CaseReading[], to: CaseReading): { least: number; most: number } {
  const rises = others.map((one) => meanOf(to) - meanOf(one))
  return { least: Math.min(...rises), most: Math.max(...rises) }
}
