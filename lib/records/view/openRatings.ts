import type { FurnaceForRating, FurnaceRating } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import type { ReportBody } from '../kinds/report'
import { reportsAt } from './ratingReports'
import { ratingAt, ratingSettings } from './setpoint'

/** The ratings of a whole team file, each worked out when it is asked for. */
export type OpenRatings = {
  /**
   * The rating at a position, for a furnace as far as it is known: the same as a setpoint card shows.
   * @param further reports that are not in the log yet, to see what they would change
   */
  at(
    position: Entry<PositionBody>,
    further?: readonly Entry<ReportBody>[],
    furnace?: FurnaceForRating,
  ): FurnaceRating
  /** The reports that count at a position, oldest first. */
  reportsAt(positionId: string): readonly Entry<ReportBody>[]
}

/** @param now the time, ISO 8601: what settled disputes taught by then is worked out once. */
export function openRatings(file: TeamFile, now: string): OpenRatings {
  const settings = ratingSettings(file, now)
  return {
    at: (position, further = [], furnace = {}) => ratingAt(file, position, furnace, settings, further),
    reportsAt: (positionId) => reportsAt(file, positionId),
  }
}
