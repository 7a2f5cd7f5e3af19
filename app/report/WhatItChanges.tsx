import { formatPressure, type PressureUnit } from '@/lib/core/pressure'
import type { FurnaceForRating, FurnaceRating } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { ratingAt, ratingSettings, type Setpoint } from '@/lib/records/view/setpoint'
import { actionWords } from '../ui/words/actionWords'
import type { DatedLevel } from '../ui/words/LevelWord'

type Props = {
  /** What the rating would be, from `onceSaved`. */
  after: FurnaceRating
  setpoint: Setpoint
  unit: PressureUnit
}

type Unsaved = {
  bodies: readonly ReportBody[]
  setpoint: Setpoint
  file: TeamFile
  me: string
  now: string
  furnace: FurnaceForRating
}

/** What the rating would be with this report, said before it is saved: agrees, disputes, or looks like a slip. */
export function WhatItChanges({ after, setpoint, unit }: Props) {
  const lines = (['closes', 'opens', 'unstated'] as const).flatMap((key) => {
    const before = setpoint.rating[key]
    const then = after[key]
    const name = actionWords[key === 'unstated' ? 'not stated' : key].name
    const slips = then.rivals.filter((rival) => rival.slip !== undefined && rival.reportIds.some(isNew))
    const slipped =
      then.level !== 'Not on file' && then.reportIds.some(isNew)
        ? then.rivals.filter((rival) => rival.slip)
        : []
    const changed = then.level !== before.level || then.pascals !== before.pascals
    const agrees = !changed && then.reportIds.some(isNew)
    return [
      ...(changed ? [`${name}: ${before.level} now. Would stand as: ${then.level}.`] : []),
      ...(agrees ? [`${name}: agrees with what is on file (${then.level}).`] : []),
      ...slips.map(
        (rival) =>
          `${formatPressure(rival.pascals, unit)} looks like a slip: ${rival.slip}. Look again, or ask back.`,
      ),
      ...slipped.map(
        (rival) => `It stands against another value on file, which looks like a slip: ${rival.slip}.`,
      ),
      ...(then.level === 'In dispute' && before.level !== 'In dispute'
        ? [
            'It disputes what is on file. Ask back before you hang up or leave: which is it, and where is it printed?',
          ]
        : []),
    ]
  })
  return (
    <div role="status">
      <p>Nothing of this is on file yet. Once the report is saved:</p>
      <ul>
        {lines.length === 0 ? (
          <li>Nothing changes: it is listed as a lead beside better reports.</li>
        ) : (
          lines.map((line) => <li key={line}>{line}</li>)
        )}
      </ul>
    </div>
  )
}

/** The id by which the n-th report that is not saved yet goes until then. */
export const unsavedId = (index: number): string => `to be saved ${index}`
const isNew = (id: string): boolean => id.startsWith('to be saved ')

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
