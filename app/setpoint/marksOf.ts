import type { RatingStanding } from '@/lib/core/rating'
import type { Action } from '@/lib/core/vocabulary'
import type { Setpoint } from '@/lib/records/view/setpoint'
import type { ColumnMark } from '../ui/waterColumn/column'
import { behind, newestDate } from './sourceLines'

type Value = Pick<ColumnMark, 'pascals' | 'limit' | 'toleranceAbove' | 'toleranceBelow'>

const statedOf = ({ pascals, limit, toleranceAbove, toleranceBelow }: Value): Value => ({
  pascals,
  limit,
  toleranceAbove,
  toleranceBelow,
})

/** The lines on the water column: the value shown and, in a dispute, each value that stands against it. */
export function marksOf(
  standing: RatingStanding,
  action: Action,
  reports: Setpoint['reports'],
): ColumnMark[] {
  if (standing.level === 'Not on file') return []
  const shown: ColumnMark = {
    action,
    ...statedOf(standing),
    standing: { level: standing.level, asOf: newestDate(behind(standing), reports) },
  }
  const against = standing.rivals
    .filter((rival) => rival.disputes)
    .map(
      (rival): ColumnMark => ({
        action,
        ...statedOf(rival),
        standing: { level: 'In dispute', asOf: newestDate(rival.reportIds, reports) },
      }),
    )
  return [shown, ...against]
}
