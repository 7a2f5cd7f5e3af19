import type { Ask, Slip } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'

export type ShownRating = { level: Level; slip?: Slip }

/** What a hand-written case is there to show, so that it can be held to it. */
export type Showing = {
  shows: string
  positionId: string
  /** The furnace it is looked up for; none when it is looked up by number alone. */
  furnaceId?: string
  /** What else is known of the furnace. */
  elevationMetres?: number
  partNumber?: string
  closes?: ShownRating
  opens?: ShownRating
  unstated?: ShownRating
  asks?: readonly Ask[]
}
