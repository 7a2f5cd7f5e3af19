import type { ReadingSituation } from '@/lib/catalogue/fromReadings/situations'
import type { Movement } from '@/lib/catalogue/fromReadings/types'
import type { Stage } from './houses'
import type { Fault } from './trouble'

/** What was done to a furnace, or around it, at the moment of a reading. */
export type Moment = {
  temperature: 'cold' | 'hot'
  situation: ReadingSituation
  door: 'on' | 'off'
}

export const asFoundCold: Moment = { temperature: 'cold', situation: 'as found', door: 'on' }
export const asFoundHot: Moment = { temperature: 'hot', situation: 'as found', door: 'on' }

/** The true pressure at a switch while the faults last, in hundredths of an inch. None: a healthy furnace. */
export function pressureAt({ healthy, place }: Stage, faults: readonly Fault[], moment: Moment): number {
  const { temperature, situation, door } = moment
  const isHigh = place.stage === 'high fire'
  const left = faults.reduce((share, fault) => {
    if (fault.undoneBy === situation) return share
    const across = place.kind === 'two-port' ? fault.acrossPorts : undefined
    const felt = across ?? fault.cold * (temperature === 'hot' ? fault.hot : 1)
    return share * felt * (isHigh ? fault.onHighFire : 1) * (door === 'off' ? fault.doorOff : 1)
  }, 1)
  const taken =
    situation === 'air blower just started'
      ? faults.reduce((sum, { blowerTakes }) => sum + blowerTakes, 0)
      : 0
  return Math.max(0, healthy[temperature] * left - taken)
}

/** How far it swings to either side, in hundredths, and how. */
export function movementAt(
  faults: readonly Fault[],
  situation: ReadingSituation,
): { how: Movement; by: number } {
  const moving = faults.find(
    ({ moves, undoneBy }) =>
      moves !== undefined &&
      undoneBy !== situation &&
      !(moves.how === 'with the gusts' && situation === 'calm'),
  )
  return moving?.moves ?? { how: 'still', by: 0.4 }
}

/** Whether the contact is closed at such a pressure: once closed it stays so down to the break point. */
export function isClosedAt(
  { points, place }: Stage,
  faults: readonly Fault[],
  hundredths: number,
  temperature: Moment['temperature'],
): boolean {
  if (faults.some(({ stuckClosed }) => stuckClosed)) return true
  if (faults.some(({ failsToConduct }) => failsToConduct)) return false
  if (place.kind === 'opens on rise') return hundredths < points.break
  const times = faults.reduce((product, { closesAt }) => product * closesAt, 1)
  return hundredths >= times * (temperature === 'hot' ? points.break : points.make)
}

export const heldAtRest = (faults: readonly Fault[]): number =>
  faults.reduce((sum, fault) => sum + fault.heldAtRest, 0)
