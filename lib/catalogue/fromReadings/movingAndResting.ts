import type { Observations } from '@/lib/core/diagnosis'
import { isSameRunState } from './pairing'
import { type SeenOrNot, seenOnce } from './said'
import { isAtLeast, thresholds } from './thresholds'
import type { CaseReading } from './types'
import { isUnchanged, meanOf, spreadOf, temperatureOf } from './usable'

/** The inducer stopped and the gauge zeroed: what is left is held in hose, port or switch. */
function heldAtRest(one: CaseReading): SeenOrNot {
  if (one.reading.phase !== 'rest' || !one.zeroed || !isUnchanged(one)) return undefined
  if (isAtLeast(meanOf(one), thresholds.heldAtRest)) return 'seen'
  return isAtLeast(thresholds.restZero, meanOf(one)) ? 'ruled out' : undefined
}

function beats({ movement }: CaseReading): SeenOrNot {
  if (movement === undefined) return undefined
  return movement === 'a beat of one to three seconds' ? 'seen' : 'ruled out'
}

/** How far it moved in gusts, against the most that it moved in a calm at the same place. */
function gusts(one: CaseReading, calm: readonly CaseReading[]): SeenOrNot {
  const inCalm = calm.filter((other) => isSameRunState(one, other)).map(spreadOf)
  if (inCalm.length === 0) return undefined
  const more = spreadOf(one) - Math.max(...inCalm)
  if (isAtLeast(more, thresholds.change)) return 'seen'
  return isAtLeast(thresholds.noChange, more) ? 'ruled out' : undefined
}

/** How the readings moved while they were watched, and whether they went back to zero. */
export function movementFindings(readings: readonly CaseReading[]): Observations {
  const running = readings.filter((one) => isUnchanged(one) && temperatureOf(one) !== undefined)
  const calm = running.filter(({ situation }) => situation === 'calm')
  const inGusts = running.filter(({ situation }) => situation === 'in gusts')
  return {
    ...seenOnce('no-return-to-zero', readings.map(heldAtRest)),
    ...seenOnce('regular-pulse', running.map(beats)),
    ...seenOnce('moves-with-gusts', [
      ...running.map(({ movement }) => (movement === 'with the gusts' ? 'seen' : undefined)),
      ...inGusts.map((one) => gusts(one, calm)),
    ]),
  }
}
