import type { Observations } from '@/lib/core/diagnosis'
import { isSameRunState, minutesBetween, nearestTo, riseFrom } from './pairing'
import { gravestOf, type SeenOrNot, seenOnce } from './said'
import type { ReadingSituation } from './situations'
import { isAtLeast, pairedWithinMinutes, stepWithinMinutes, thresholds } from './thresholds'
import type { CaseReading } from './types'
import { isAsInService, isNearZero } from './usable'

/** Too low, or too close to call: only then can anything recover. An open vent lifts a healthy reading as well. */
const isTroubled = (one: CaseReading): boolean => {
  const judgement = one.comparison?.start ?? one.comparison?.run
  return judgement === undefined ? isNearZero(one, thresholds.nearZero) : judgement.verdict !== 'enough'
}

/** Rose from a reading that was not enough: that side of the air path held it down. */
function recovers(one: CaseReading, before: readonly CaseReading[]): SeenOrNot {
  if (before.length === 0 || !before.every(isTroubled)) return undefined
  const rise = riseFrom(before, one)
  if (isAtLeast(rise.least, thresholds.change)) return 'seen'
  return isAtLeast(thresholds.noChange, rise.most) ? 'ruled out' : undefined
}

/** A restriction on the inlet side raises suction at one port, so that taking the intake off lets it fall. */
function recoversFromHigh(one: CaseReading, before: readonly CaseReading[]): SeenOrNot {
  if (before.length === 0 || !before.every(({ comparison }) => comparison?.higherThanExpected === true))
    return recovers(one, before)
  const rise = riseFrom(before, one)
  if (isAtLeast(-thresholds.change, rise.most) && one.comparison?.higherThanExpected !== true) return 'seen'
  return isAtLeast(rise.least, -thresholds.noChange) ? 'ruled out' : undefined
}

/** The blower's air in the gas side takes suction away at once: read against the same run, door on. */
function stepsDown(one: CaseReading, before: readonly CaseReading[]): SeenOrNot {
  if (before.length === 0 || one.reading.door !== 'on') return undefined
  const rise = riseFrom(before, one)
  if (isAtLeast(-thresholds.change, rise.most)) return 'seen'
  return isAtLeast(rise.least, -thresholds.noChange) ? 'ruled out' : undefined
}

function changesWithDoor(one: CaseReading, before: readonly CaseReading[]) {
  if (before.length === 0) return undefined
  const rise = riseFrom(before, one)
  if (isAtLeast(rise.least, thresholds.change)) return 'higher'
  if (isAtLeast(-thresholds.change, rise.most)) return 'lower'
  return isAtLeast(rise.least, -thresholds.noChange) && isAtLeast(thresholds.noChange, rise.most)
    ? 'no change'
    : undefined
}

/** What changed in the readings when something was done to the furnace. */
export function afterChangeFindings(readings: readonly CaseReading[]): Observations {
  const asItServes = readings.filter(isAsInService)
  const inSituation = (situation: ReadingSituation) => readings.filter((one) => one.situation === situation)
  const before = (one: CaseReading) =>
    nearestTo(
      one,
      asItServes.filter((other) => isSameRunState(one, other)),
      pairedWithinMinutes,
    )
  const justBefore = (one: CaseReading) =>
    nearestTo(
      one,
      asItServes.filter(
        (other) =>
          isSameRunState(one, other) &&
          other.reading.phase === one.reading.phase &&
          minutesBetween(other, one) >= 0,
      ),
      stepWithinMinutes,
    )
  const doorOff = inSituation('as found').filter(({ reading }) => reading.door === 'off')
  const withDoor = doorOff.map((one) => changesWithDoor(one, before(one)))
  const bothWays = withDoor.includes('higher') && withDoor.includes('lower')
  return {
    ...seenOnce(
      'recovers-with-vent-opened',
      inSituation('vent opened').map((one) => recovers(one, before(one))),
    ),
    ...seenOnce(
      'recovers-after-draining',
      inSituation('after draining').map((one) => recovers(one, before(one))),
    ),
    ...seenOnce(
      'recovers-with-window-open',
      inSituation('window open').map((one) => recovers(one, before(one))),
    ),
    ...seenOnce(
      'recovers-with-intake-off',
      inSituation('intake off').map((one) => recoversFromHigh(one, before(one))),
    ),
    ...seenOnce(
      'step-at-blower-start',
      inSituation('air blower just started').map((one) => stepsDown(one, justBefore(one))),
    ),
    ...(bothWays ? {} : gravestOf('reading-with-door-off', withDoor, ['higher', 'lower', 'no change'])),
  }
}
