import type { FurnaceRating, RatingStanding } from '@/lib/core/rating'
import type { Limit, RatingForComparison } from '@/lib/core/reading'
import type { PositionBody } from '../kinds/position'

/**
 * A rating as a reading is held against it. What its sources leave open about the points is taken from the record
 * of the position; what a dispute leaves open goes along as candidates.
 */
export function ratingForComparison(rating: FurnaceRating, position: PositionBody): RatingForComparison {
  const best = [rating.closes, rating.opens, rating.unstated].find((each) => each.level !== 'Not on file')
  const stated = <Word extends string>(word: Word | undefined, otherwise: Word): Word =>
    word === undefined || word === 'not stated' ? otherwise : word
  return {
    closes: limitOf(rating.closes),
    opens: limitOf(rating.opens),
    unstated: limitOf(rating.unstated),
    kind: best?.kind ?? position.kind,
    between: stated(best?.between, position.between),
    tap: stated(best?.tap, position.tap),
    stage: stated(best?.stage, position.stage),
    sense: stated(best?.sense, position.sense),
  }
}

function limitOf(standing: RatingStanding): Limit | undefined {
  if (standing.level === 'Not on file') return undefined
  const candidate = (value: Omit<Limit, 'kind' | 'standing'> & { limit: Limit['kind'] }): Limit => ({
    pascals: value.pascals,
    kind: value.limit,
    standing: standing.level,
    ...(value.toleranceAbove === undefined ? {} : { toleranceAbove: value.toleranceAbove }),
    ...(value.toleranceBelow === undefined ? {} : { toleranceBelow: value.toleranceBelow }),
  })
  const limit = candidate(standing)
  return standing.level === 'In dispute' && standing.rivals.length > 0
    ? { ...limit, candidates: [limit, ...standing.rivals.map(candidate)] }
    : limit
}
