import { failure, type Result, success } from '@/lib/core/result'
import { judge } from './judge'
import type { Instrument, Judgement, Limit, Reading, ReadingSettings } from './types'

const sameLimit = (one: Limit, other: Limit): boolean =>
  one.pascals === other.pascals &&
  one.kind === other.kind &&
  one.toleranceAbove === other.toleranceAbove &&
  one.toleranceBelow === other.toleranceBelow

/**
 * Holds a reading against a limit that may be in dispute. In dispute, every value still possible is judged, the one
 * shown among them; a verdict that all share is given as such, with the figures of the one closest to the reading.
 * Otherwise the problem is 'settle-rating-first'. A dispute without its candidates can't be judged at all.
 * @throws RangeError if the limit is not on file
 */
export function judgeDisputed(
  reading: Reading,
  instrument: Instrument,
  limit: Limit,
  against: Judgement['against'],
  settings: ReadingSettings,
): Result<Judgement> {
  if (limit.standing === 'Not on file') throw new RangeError('judgeDisputed requires a limit that is on file')
  if (limit.standing !== 'In dispute') return success(judge(reading, instrument, limit, against, settings))
  const rivals = limit.candidates ?? []
  const possible = rivals.some((rival) => sameLimit(rival, limit)) ? rivals : [limit, ...rivals]
  const judged = possible.map((candidate) => judge(reading, instrument, candidate, against, settings))
  const [first, ...others] = judged
  if (first === undefined || rivals.length === 0 || others.some((other) => other.verdict !== first.verdict))
    return failure(
      'settle-rating-first',
      'The rating is in dispute, and the values still possible do not lead to one answer for this reading. Settle it first: ask factory technical support, or find the maker’s current page.',
    )
  const closest = judged.reduce((nearest, next) =>
    Math.abs(next.marginPascals) < Math.abs(nearest.marginPascals) ? next : nearest,
  )
  return success({
    ...closest,
    limit: { ...closest.limit, standing: limit.standing, candidates: rivals },
    thin: judged.some((each) => each.thin),
    clearsWorstCase: judged.every((each) => each.clearsWorstCase),
    sharedBy: judged.length,
  })
}
