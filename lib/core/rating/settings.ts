import type { RatingSettings } from './types'

const defaultPlausibleValues = 40
const defaultStaleAfterMonths = 24

/** Settings as the weighing uses them: every one present and possible. */
export type WeighingSettings = { nowMs: number; plausibleValues: number; staleAfterMonths: number }

/**
 * Fills in the defaults (40 plausible values, 24 months; common practice, no published source) and checks the rest.
 * @throws RangeError if the time cannot be read, there are fewer than 2 plausible values, or the age is no whole
 * number of months
 * @example weighingSettings({ now: '2026-01-12' }) // { nowMs: 1768176000000, plausibleValues: 40, staleAfterMonths: 24 }
 */
export function weighingSettings({
  now,
  plausibleValues = defaultPlausibleValues,
  staleAfterMonths = defaultStaleAfterMonths,
}: RatingSettings): WeighingSettings {
  const nowMs = typeof now === 'number' ? now : Date.parse(now)
  if (!Number.isFinite(nowMs)) throw new RangeError(`A rating requires the time, not ${now}`)
  if (!Number.isInteger(plausibleValues) || plausibleValues < 2)
    throw new RangeError(`A rating requires 2 or more plausible values, not ${plausibleValues}`)
  if (!Number.isInteger(staleAfterMonths) || staleAfterMonths < 0)
    throw new RangeError(`A rating requires a whole number of months to go stale, not ${staleAfterMonths}`)
  return { nowMs, plausibleValues, staleAfterMonths }
}
