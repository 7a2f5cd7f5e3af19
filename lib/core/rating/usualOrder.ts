import type { Stage } from '@/lib/core/vocabulary'
import { whyOrder } from './explain'
import { slack } from './resolution'
import type { FurnaceRating, RatingStanding } from './types'

const beyond = (value: number | undefined, other: number | undefined): boolean =>
  value !== undefined && other !== undefined && value > other * (1 + slack)

/**
 * Warns where two ratings stand in the wrong order: a break beyond the make; a low-fire value beyond the high-fire
 * one, or the reverse. Common practice, no published source, so it warns and decides nothing. A switch that opens on
 * rise, a gas-pressure switch and a sensor have orders of their own and are left alone.
 *
 * @param sister what non-leads say of the sister switch, and its stage
 * @returns the same ratings, with a reason added to each that looks swapped
 */
export function withUsualOrder(
  rating: Omit<FurnaceRating, 'asks'>,
  sister: { closes: readonly number[]; opens: readonly number[]; stage: Stage },
): Omit<FurnaceRating, 'asks'> {
  const { closes, opens } = rating
  const isAirSwitch = [closes, opens].every(
    ({ kind }) => kind === undefined || kind === 'one-port' || kind === 'two-port',
  )
  if (!isAirSwitch) return rating
  const swappedStages = ({ stage, pascals }: RatingStanding, others: readonly number[]): boolean => {
    const stages = `${stage}, ${sister.stage}`
    return others.some((other) =>
      stages === 'low fire, high fire'
        ? beyond(pascals, other)
        : stages === 'high fire, low fire' && beyond(other, pascals),
    )
  }
  const swappedActions = beyond(opens.pascals, closes.pascals)
  const warned = (standing: RatingStanding, others: readonly number[]): RatingStanding => ({
    ...standing,
    reasons: [
      ...standing.reasons,
      ...(swappedActions ? [whyOrder.breakAboveMake()] : []),
      ...(swappedStages(standing, others) ? [whyOrder.lowAboveHigh()] : []),
    ],
  })
  return { ...rating, closes: warned(closes, sister.closes), opens: warned(opens, sister.opens) }
}
