import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { GaugeBody } from '@/lib/records/kinds/gauge'

/** A gauge whose calibration has run out, will soon, or is not on file. */
export type GaugeDue = {
  gauge: Entry<GaugeBody>
  standing: 'past' | 'soon' | 'no date on file'
  /** Whole days until its last good day; below 0 once that is past. Left out without a date. */
  days?: number
}

/** Time enough to send a gauge away and have it back (common practice, no published source). */
export const soonDays = 30
const dayMs = 86_400_000

/** Gauges to be calibrated: past ones first, the longest past first, then those due soon, then those without a date. */
export function gaugesDue(file: TeamFile, today: string): GaugeDue[] {
  return counting(file.gauges)
    .flatMap((gauge): GaugeDue[] => {
      const due = gauge.body.calibrationDue
      if (due === undefined) return [{ gauge, standing: 'no date on file' }]
      const days = Math.round((Date.parse(due) - Date.parse(today.slice(0, 'yyyy-mm-dd'.length))) / dayMs)
      return days > soonDays ? [] : [{ gauge, standing: days < 0 ? 'past' : 'soon', days }]
    })
    .toSorted((a, b) => (a.days ?? Infinity) - (b.days ?? Infinity) || (a.gauge.id < b.gauge.id ? -1 : 1))
}
