import { isAtLeast } from './thresholds'
import type { CaseReading } from './types'

/** Pascals above or below zero make no difference here: all are magnitudes. */
const isMagnitude = (pascals: number) => pascals >= 0 && pascals < Number.POSITIVE_INFINITY

/**
 * Whether the signatures of the trade can be looked for in a reading at all. They are those of a switch that closes
 * as suction grows: one that opens on rise, a gas-pressure switch or a sensor has none of them.
 */
export function isUsable({ reading }: CaseReading): boolean {
  const { kind, samples, lowest = 0, highest = 0 } = reading
  const all = [...samples, lowest, highest]
  return (kind === 'one-port' || kind === 'two-port') && samples.length > 0 && all.every(isMagnitude)
}

export const meanOf = ({ reading }: CaseReading): number =>
  reading.samples.reduce((sum, pascals) => sum + pascals, 0) / reading.samples.length

export function spreadOf({ reading }: CaseReading): number {
  const { samples, lowest, highest } = reading
  return (
    Math.max(...samples, highest ?? Number.NEGATIVE_INFINITY) -
    Math.min(...samples, lowest ?? Number.POSITIVE_INFINITY)
  )
}

/**
 * Before light-off, or after it. Undefined at rest, and for the number caught as the contact closed: that one is
 * passed on the way up and says nothing of where the reading comes to stand.
 */
export function temperatureOf({ reading }: CaseReading): 'cold' | 'hot' | undefined {
  if (reading.phase === 'pre-purge') return 'cold'
  return reading.phase === 'after light-off' || reading.phase === 'steady hot' ? 'hot' : undefined
}

/** Nothing was done to the furnace; only the wind was noted. */
export const isUnchanged = ({ situation }: CaseReading): boolean =>
  situation === 'as found' || situation === 'calm' || situation === 'in gusts'

/** As the furnace serves: nothing changed, door on, and across both ports where there are two. */
export const isAsInService = (one: CaseReading): boolean =>
  isUnchanged(one) &&
  one.reading.door === 'on' &&
  (one.reading.kind === 'one-port' || one.reading.between === 'two ports')

/** Next to nothing at the switch although the inducer runs, and no verdict that says it is enough. */
export function isNearZero(one: CaseReading, nearZeroPascals: number): boolean {
  const { comparison } = one
  return (
    one.zeroed &&
    temperatureOf(one) !== undefined &&
    isAtLeast(nearZeroPascals, meanOf(one)) &&
    comparison?.start?.verdict !== 'enough' &&
    comparison?.run?.verdict !== 'enough'
  )
}
