import { checkOneAction, checkReports, sortReports } from './sortReports'
import type { KnownValues, RatingReport, RatingSettings, RatingStanding } from './types'
import { weigh } from './weigh'

/**
 * How far reports of one bundle and one action can be trusted together, and which value they support. Withdrawn
 * reports are simply not given. The answer does not depend on the order of the reports, and one report alone gives
 * exactly its own reliability.
 *
 * @param reports of one position and one action; none gives 'Not on file'
 * @param settings its `now` is the time
 * @param known what non-leads report for the other action and the sister switch, pascals, worked out beforehand
 * @throws RangeError if ids repeat, positions or actions differ, or a number, date or setting is impossible
 * @example weighReports([photoOfTheFactoryLabel], { now: '2026-01-12' }).level // 'Supported', probability 0.97
 */
export function weighReports(
  reports: readonly RatingReport[],
  settings: RatingSettings,
  known: KnownValues = { otherAction: [], sister: [] },
): RatingStanding {
  checkReports(reports)
  checkOneAction(reports)
  return weigh(sortReports(reports), reports[0]?.action ?? 'not stated', settings, known)
}
