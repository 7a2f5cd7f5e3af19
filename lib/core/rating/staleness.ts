import type { WeighingSettings } from './settings'
import type { RatingReport } from './types'

/** The same day and time so many calendar months later, UTC; the month's last day where that day does not exist. */
function monthsLater(milliseconds: number, months: number): number {
  const date = new Date(milliseconds)
  const day = date.getUTCDate()
  date.setUTCDate(1)
  date.setUTCMonth(date.getUTCMonth() + months)
  const lastDay = new Date(Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 0)).getUTCDate()
  return date.setUTCDate(Math.min(day, lastDay))
}

/**
 * Whether a report's proof is a call older than the team's limit. A photo or a document does not go stale by age.
 * @example isStale(callOf('2024-01-10'), weighingSettings({ now: '2026-01-11' })) // true
 */
export function isStale(
  { proof, saidAt }: RatingReport,
  { nowMs, staleAfterMonths }: WeighingSettings,
): boolean {
  return proof === 'call reference' && monthsLater(Date.parse(saidAt), staleAfterMonths) < nowMs
}
