import type { Stage, SwitchKind } from '@/lib/core/vocabulary'
import { whyOrder } from './explain'
import { slack } from './resolution'
import type { Disorder, FurnaceRating, RatingStanding } from './types'

const beyond = (value: number | undefined, other: number | undefined): boolean =>
  value !== undefined && other !== undefined && value > other * (1 + slack)

type Point = { pascals?: number | undefined; kind?: SwitchKind | undefined }

const ofAirSwitch = ({ kind }: Point): boolean =>
  kind === undefined || kind === 'one-port' || kind === 'two-port'

/**
 * Whether a break point is beyond its make point, which is the wrong way round for an air switch that closes on rise:
 * it opens at a smaller magnitude than it closes at. Common practice, no published source. Any other kind of switch has
 * an order of its own and is left alone.
 *
 * @param closes magnitude of the make point, pascals
 * @param opens magnitude of the break point, pascals
 * @example breakBeyondMake({ pascals: 120, kind: 'one-port' }, { pascals: 154, kind: 'one-port' }) // true
 */
export const breakBeyondMake = (closes: Point, opens: Point): boolean =>
  ofAirSwitch(closes) && ofAirSwitch(opens) && beyond(opens.pascals, closes.pascals)

/**
 * Warns where two ratings stand in the wrong order: a break beyond the make; a low-fire value beyond the high-fire
 * one, or the reverse. Common practice, no published source, so it warns and decides nothing. A switch that opens on
 * rise, a gas-pressure switch and a sensor have orders of their own and are left alone.
 *
 * @param sister what non-leads say of the sister switch, and its stage
 * @returns the same ratings, with how it is out of order and a reason added to each that looks swapped
 */
export function withUsualOrder(
  rating: Omit<FurnaceRating, 'asks'>,
  sister: { closes: readonly number[]; opens: readonly number[]; stage: Stage },
): Omit<FurnaceRating, 'asks'> {
  const { closes, opens } = rating
  if (![closes, opens].every(ofAirSwitch)) return rating
  const swappedStages = ({ stage, pascals }: RatingStanding, others: readonly number[]): boolean => {
    const stages = `${stage}, ${sister.stage}`
    return others.some((other) =>
      stages === 'low fire, high fire'
        ? beyond(pascals, other)
        : stages === 'high fire, low fire' && beyond(other, pascals),
    )
  }
  const swappedActions = breakBeyondMake(closes, opens)
  const warned = (standing: RatingStanding, others: readonly number[]): RatingStanding => {
    const outOfOrder: Disorder[] = [
      ...(swappedActions ? ['break beyond make' as const] : []),
      ...(swappedStages(standing, others) ? ['low fire beyond high fire' as const] : []),
    ]
    return outOfOrder.length === 0
      ? standing
      : {
          ...standing,
          outOfOrder,
          reasons: [...standing.reasons, ...outOfOrder.map((disorder) => whyOrder[disorder])],
        }
  }
  return { ...rating, closes: warned(closes, sister.closes), opens: warned(opens, sister.opens) }
}
