import type { FurnaceForRating, FurnaceRating } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { ratingAt, ratingSettings, type Setpoint } from '@/lib/records/view/setpoint'
import type { DatedLevel } from '../ui/words/LevelWord'

type Unsaved = {
  bodies: readonly ReportBody[]
  setpoint: Setpoint
  file: TeamFile
  me: string
  now: string
  furnace: FurnaceForRating
}

/** The id by which the n-th report that is not saved yet goes until then. */
export const unsavedId = (index: number): string => `to be saved ${index}`

/** The rating as it would be with reports that are not saved yet: worked out as it will be then, and not foretold. */
export function onceSaved({ bodies, setpoint, file, me, now, furnace }: Unsaved): FurnaceRating {
  const entries = bodies.map(
    (body, index): Entry<ReportBody> => ({ id: unsavedId(index), body, by: me, at: now, waiting: true }),
  )
  return ratingAt(file, setpoint.position, furnace, ratingSettings(file, now), entries)
}

/** The level that the n-th unsaved report's own value would have: its standing's, that of a dispute, else the lowest. */
export function levelOnceSaved(after: FurnaceRating, index: number): DatedLevel['level'] {
  const id = unsavedId(index)
  for (const standing of [after.closes, after.opens, after.unstated]) {
    if (standing.level === 'Not on file') continue
    if (standing.reportIds.includes(id)) return standing.level
    if (standing.rivals.some((rival) => rival.disputes && rival.reportIds.includes(id))) return 'In dispute'
  }
  return 'Unverified'
}
