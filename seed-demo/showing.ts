import type { Ask, Slip } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import type { CaseStanding } from '@/lib/records/view/case/caseStanding'

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

/** What a hand-written case of a furnace is there to show: how it stands, and what was observed in it. */
export type CaseShowing = {
  shows: string
  caseId: string
  standing: CaseStanding
  observed?: Readonly<Record<string, string>>
}
