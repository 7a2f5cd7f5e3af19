import type { Observations } from '@/lib/core/diagnosis'
import type { ReadingSituation } from './situations'
import { isAtLeast, thresholds } from './thresholds'
import type { CaseReading } from './types'
import { meanOf } from './usable'

function shift(one: CaseReading) {
  const { expectedPascals } = one
  if (expectedPascals === undefined || !(expectedPascals >= 0 && expectedPascals < Infinity)) return undefined
  const more = meanOf(one) - expectedPascals
  if (isAtLeast(more, thresholds.change)) return 'both farther from zero'
  return isAtLeast(-thresholds.change, more) ? 'both nearer zero' : 'as expected'
}

/**
 * Each port of a two-port switch read to the room: both nearer zero than they should be points to the outlet side,
 * both farther from zero to the inlet side. Nothing is said unless every reading of either port goes the same way.
 */
export function portFindings(readings: readonly CaseReading[]): Observations {
  const shiftsOf = (situation: ReadingSituation) =>
    readings.filter((one) => one.situation === situation && one.reading.kind === 'two-port').map(shift)
  const [first, second] = [shiftsOf('first port to the room'), shiftsOf('second port to the room')]
  const way = first[0]
  const agrees = first.length > 0 && second.length > 0 && [...first, ...second].every((one) => one === way)
  return agrees && way !== undefined ? { 'ports-to-the-room': way } : {}
}
