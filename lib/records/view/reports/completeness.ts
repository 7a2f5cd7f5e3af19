import { monthName, monthNumber } from '@/lib/core/callbacks/month'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type CaseFacts, casesOfTeam } from '../callbacks/caseFacts'
import { type CaseShare, caseShare } from '../callbacks/caseShare'
import { caseFileOf } from '../case/caseFile'
import { isIn, type Period } from './period'

/** How completely the repairs of a month were measured. */
export type MonthMeasured = {
  month: string
  /** Repairs with a reading as found and one after the repair. */
  readings: CaseShare
  /** Repairs with CO measured after the repair, in the room and in the flue. */
  coTests: CaseShare
}

const repaired: readonly string[] = ['repaired and proven', 'repaired, not proven']

/**
 * Repairs by the month in which their last visit ended, the newest month first. Where nothing was repaired there is
 * nothing to measure afterwards, so other endings are left out.
 */
export function completeness(file: TeamFile, period: Period): MonthMeasured[] {
  const byMonth = new Map<string, CaseFacts[]>()
  for (const one of casesOfTeam(file)) {
    if (one.ended === undefined || !repaired.includes(one.ended.how) || !isIn(period, one.ended.at)) continue
    const month = monthName(monthNumber(one.ended.at))
    byMonth.set(month, [...(byMonth.get(month) ?? []), one])
  }
  return [...byMonth]
    .toSorted(([a], [b]) => (a < b ? 1 : -1))
    .map(([month, cases]) => ({
      month,
      readings: caseShare(cases, ({ readBefore, readAfter }) => readBefore && readAfter),
      coTests: caseShare(cases, ({ id }) => isCoMeasured(file, id)),
    }))
}

function isCoMeasured(file: TeamFile, caseId: string): boolean {
  const after = (caseFileOf(file, caseId)?.combustionTests ?? []).filter(
    ({ body }) => body.when === 'after repair',
  )
  return (
    after.some(({ body }) => body.roomCoPpm !== undefined) &&
    after.some(({ body }) => body.flueCoPpm.length > 0)
  )
}
