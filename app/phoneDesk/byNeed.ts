import type { Entry } from '@/lib/records/fold/entry'
import type { RatingRequestBody } from '@/lib/records/kinds/ratingRequest'

/** Requests in the order of need: the most reasons first, people and a furnace left off before all, then the oldest. */
export const byNeed = (requests: readonly Entry<RatingRequestBody>[]): Entry<RatingRequestBody>[] =>
  requests.toSorted((a, b) => weight(b) - weight(a) || (a.at < b.at ? -1 : 1))

const weights: Record<RatingRequestBody['needs'][number], number> = {
  infants: 4,
  'elderly or ill people': 4,
  'furnace left off': 4,
  'no other heat': 2,
  'house cold': 1,
}

const weight = ({ body }: Entry<RatingRequestBody>): number =>
  body.needs.reduce((sum, need) => sum + weights[need], 0)
