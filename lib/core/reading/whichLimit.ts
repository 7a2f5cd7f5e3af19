import { isHot } from './phases'
import type { Judgement, Limit, RatingForComparison, Reading } from './types'

/** Which limit a reading is held against, and which of the two questions that answers. */
type LimitTest = { question: 'start' | 'run'; limit: Limit; against: Judgement['against'] }

/**
 * Cold against the make point (will it start?), hot against the break point (will it stay on?). A switch that opens
 * on rise is closed until it opens, so both questions are asked of the point where it opens. Where that limit is not
 * on file the other one is judged, as what it is; a lone break point never becomes a make point.
 */
export function testFor(reading: Reading, rating: RatingForComparison): LimitTest | undefined {
  const { closes, opens, unstated } = rating
  const closing: LimitTest | undefined = closes && { question: 'start', limit: closes, against: 'closes' }
  const opening: LimitTest | undefined = opens && { question: 'run', limit: opens, against: 'opens' }
  const open: LimitTest | undefined = unstated && {
    question: 'start',
    limit: unstated,
    against: 'not stated',
  }
  if (reading.kind === 'opens on rise') {
    const question = isHot(reading.phase) ? 'run' : 'start'
    const test = opening ?? closing ?? open
    return test && { ...test, question }
  }
  return isHot(reading.phase) ? (opening ?? closing ?? open) : (closing ?? opening ?? open)
}
