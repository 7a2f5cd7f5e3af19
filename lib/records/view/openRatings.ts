import { type FurnaceForRating, type FurnaceRating, type RatingReport, ratingFor } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import type { ReportBody } from '../kinds/report'
import { oldestFirst } from './ofFurnace'
import { ratingReportOf } from './ratingReports'
import { ratingSettings } from './setpoint'

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

/**
 * Sorts the reports of a team file by their positions once, so that asking for every rating of a large file does not
 * read every report for each of them.
 * @param now the time, ISO 8601
 */
export function openRatings(file: TeamFile, now: string): OpenRatings {
  const settings = ratingSettings(file, now)
  const reports = groupedBy(counting(file.reports).sort(oldestFirst), ({ body }) =>
    file.keptId(body.positionId),
  )
  const ofRange = groupedBy(counting(file.positions), ({ body }) => file.keptId(body.rangeId))
  const at = (positionId: string): RatingReport[] =>
    (reports.get(positionId) ?? []).map((report) => ratingReportOf(report, file))
  const sisterOf = (position: Entry<PositionBody>): Entry<PositionBody> | undefined => {
    const names = (one: Entry<PositionBody>, other: Entry<PositionBody>) =>
      one.body.sisterId !== undefined && file.keptId(one.body.sisterId) === other.id
    return ofRange
      .get(file.keptId(position.body.rangeId))
      ?.find((other) => other.id !== position.id && (names(position, other) || names(other, position)))
  }
  return {
    at(position, further = [], furnace = {}) {
      const sister = sisterOf(position)
      const own = [...at(position.id), ...further.map((report) => ratingReportOf(report, file))]
      return ratingFor(own, furnace, settings, sister === undefined ? [] : at(sister.id))
    },
    reportsAt: (positionId) => reports.get(file.keptId(positionId)) ?? [],
  }
}

function groupedBy<Item>(items: readonly Item[], keyOf: (item: Item) => string): Map<string, Item[]> {
  const groups = new Map<string, Item[]>()
  for (const item of items) {
    const key = keyOf(item)
    const group = groups.get(key)
    if (group === undefined) groups.set(key, [item])
    else group.push(item)
  }
  return groups
}
