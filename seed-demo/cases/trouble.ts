import type { ReadingSituation } from '@/lib/catalogue/fromReadings/situations'
import type { Movement } from '@/lib/catalogue/fromReadings/types'
import { drawn, happens, pickWeighted } from '../drawing'
import { branches } from '../names'
import type { House } from './houses'
import { weakSpots } from './park'
import { type Effect, type TrueCause, trueCauses, truthOf } from './truth'
import type { Day } from './weather'

/** What one fault does in one furnace: an effect with its chances drawn. Shares of a healthy reading, hundredths. */
export type Fault = {
  cold: number
  hot: number
  onHighFire: number
  acrossPorts: number | undefined
  moves: { how: Movement; by: number } | undefined
  heldAtRest: number
  undoneBy: ReadingSituation | undefined
  blowerTakes: number
  doorOff: number
  closesAt: number
  stuckClosed: boolean
  failsToConduct: boolean
}

/** Why a furnace really stopped. */
export type Trouble = { main: string; contributing: string | undefined; faults: readonly Fault[] }

/** How many times as often as others a furnace's own weakness stops it. */
const weaknessTimes = 5

/** Draws why a furnace stops on a day: by its branch, the weather, its kind, its family's weak spots and its own. */
export function drawTrouble(random: () => number, house: House, day: Day): Trouble {
  const main = pickWeighted(random, Object.keys(trueCauses), (cause) => likelihood(cause, house, day))
  const brought = Object.entries(truthOf(main).brings ?? {}).filter(([cause]) => fits(truthOf(cause), house))
  const contributing = brought.find(([, share]) => happens(random, share))?.[0]
  return troubleOf(random, main, contributing)
}

/** The same causes again, with their effects drawn anew. */
export const troubleOf = (random: () => number, main: string, contributing?: string): Trouble => ({
  main,
  contributing,
  faults: [
    drawFault(random, truthOf(main).effect, 1),
    ...(contributing === undefined ? [] : [drawFault(random, truthOf(contributing).effect, 0.5)]),
  ],
})

const branchOrder = Object.keys(branches)

export function likelihood(cause: string, house: House, { weather, on }: Day): number {
  const truth = truthOf(cause)
  if (!fits(truth, house)) return 0
  const spot = weakSpots[house.range.family.name]?.find((each) => each.cause === cause)
  const ofFamily = spot === undefined || on < (spot.from ?? '') ? 1 : spot.times
  const own = house.weakness === cause ? weaknessTimes : 1
  return truth.share[branchOrder.indexOf(house.branch)]! * (truth.weather?.[weather] ?? 1) * ofFamily * own
}

function fits({ only }: TrueCause, { condensing, stages, airFrom }: House): boolean {
  switch (only) {
    case 'condensing':
      return condensing
    case 'two stages':
      return stages.length > 1
    case 'room air':
      return airFrom === 'the room'
    case 'outdoor air':
      return airFrom !== 'the room'
    case undefined:
      return true
  }
}

/** @param weight how much of the effect is felt, 0 to 1 */
function drawFault(random: () => number, effect: Effect, weight: number): Fault {
  const share = (span: readonly [number, number] | undefined) =>
    span === undefined ? 1 : 1 + weight * (drawn(random, span) - 1)
  const { moves, heldAtRest, blowerTakes, acrossPorts } = effect
  return {
    cold: share(effect.cold),
    hot: share(effect.hot),
    onHighFire: share(effect.onHighFire),
    acrossPorts: acrossPorts && share(acrossPorts),
    moves:
      moves && happens(random, moves.chance) ? { how: moves.how, by: drawn(random, moves.by) } : undefined,
    heldAtRest: heldAtRest && happens(random, heldAtRest.chance) ? drawn(random, heldAtRest.hundredths) : 0,
    undoneBy: effect.undoneBy,
    blowerTakes: blowerTakes === undefined ? 0 : weight * drawn(random, blowerTakes),
    doorOff: share(effect.doorOff),
    closesAt: share(effect.closesAt),
    stuckClosed: effect.stuckClosed ?? false,
    failsToConduct: happens(random, weight * (effect.failsToConduct ?? 0)),
  }
}
