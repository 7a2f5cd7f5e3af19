import type { Observations } from '@/lib/core/diagnosis'
import { afterChangeFindings } from './afterChange'
import { inServiceFindings } from './inService'
import { movementFindings } from './movingAndResting'
import { portFindings } from './ports'
import type { CaseReading } from './types'
import { isUsable } from './usable'

export { readingSituationIds, readingSituations } from './situations'
export { pairedWithinMinutes, stepWithinMinutes, thresholds } from './thresholds'
export { type CaseReading, movements } from './types'

/**
 * What the readings of a case show by themselves: the findings that are asked 'from readings'. Verdicts are those of
 * compareReading, never worked out again; every other threshold is in thresholds.ts. A finding is ruled out only by a
 * reading that really rules it out; where the readings leave it open it is absent. Their order does not matter.
 *
 * @param readings of the furnace as it was found; one taken after a repair describes another furnace
 * @example [too low as found, 40 Pa more with the vent opened ten minutes later]
 *   // { 'reading-at-start': 'too low from the start', 'recovers-with-vent-opened': 'seen' }
 */
export function findingsFromReadings(readings: readonly CaseReading[]): Observations {
  const usable = readings.filter(isUsable)
  return {
    ...inServiceFindings(usable),
    ...afterChangeFindings(usable),
    ...movementFindings(usable),
    ...portFindings(usable),
  }
}
