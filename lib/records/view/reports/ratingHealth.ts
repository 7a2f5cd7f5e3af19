import type { RatingSettings } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { EquipmentRangeBody } from '@/lib/records/kinds/equipmentRange'
import type { PositionBody } from '@/lib/records/kinds/position'
import { leastReliableFirst, leastSure, rankOf } from '../leastSure'
import { ratingSettings } from '../setpoint'

/**
 * The number of one switch that proves the draft, as it stands now for the furnaces on file: where it stands
 * differently for some of them, as it stands for those that can rely on it least.
 */
export type RatingHealth = {
  position: Entry<PositionBody>
  level: Level
  /** It rests on one report alone. */
  single: boolean
  /** It would stand higher but for calls that are too old, or for a part number that was superseded. */
  heldDownBy: readonly ('old calls' | 'superseded part number')[]
}

/** The ratings of one model range. */
export type FamilyHealth = {
  range: Entry<EquipmentRangeBody>
  ratings: readonly RatingHealth[]
  /** How many stand at each level. */
  byLevel: Readonly<Record<Level, number>>
}

/** So that no call is too old, in months. */
const forEver = 100 * 12

/** How the ratings of every model range stand, the ranges with most that nobody can rely on first. */
export function ratingHealth(file: TeamFile, now: string): FamilyHealth[] {
  const settings = ratingSettings(file, now)
  const positions = counting(file.positions).filter(
    ({ body }) => body.kind !== 'gas pressure' && body.kind !== 'sensor',
  )
  const healthOf = (position: Entry<PositionBody>): RatingHealth => {
    const { level, reportIds } = leastSure(file, position, settings)
    const isHigher = (more: Partial<RatingSettings>) =>
      rankOf(leastSure(file, position, { ...settings, ...more }).level) > rankOf(level)
    return {
      position,
      level,
      single: reportIds.length === 1,
      heldDownBy: [
        ...(isHigher({ staleAfterMonths: forEver }) ? (['old calls'] as const) : []),
        ...(isHigher({ supersededPartNumbers: [] }) ? (['superseded part number'] as const) : []),
      ],
    }
  }
  return counting(file.ranges)
    .flatMap((range): FamilyHealth[] => {
      const ratings = positions
        .filter(({ body }) => file.keptId(body.rangeId) === range.id)
        .map(healthOf)
        .toSorted(
          (a, b) =>
            rankOf(a.level) - rankOf(b.level) || (a.position.body.name < b.position.body.name ? -1 : 1),
        )
      return ratings.length === 0 ? [] : [{ range, ratings, byLevel: counted(ratings) }]
    })
    .toSorted((a, b) => unreliable(b) - unreliable(a) || (a.range.body.name < b.range.body.name ? -1 : 1))
}

const counted = (ratings: readonly RatingHealth[]): Record<Level, number> =>
  Object.fromEntries(
    leastReliableFirst.map((level) => [level, ratings.filter((rating) => rating.level === level).length]),
  ) as Record<Level, number>

/** Levels that give nobody a number to rely on. */
const unreliable = ({ byLevel }: FamilyHealth): number =>
  byLevel['In dispute'] + byLevel['Not on file'] + byLevel.Unverified
