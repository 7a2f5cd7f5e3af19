import { plainSpelling } from '@/lib/core/find'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { ReportBody } from '../kinds/report'
import type { SettlementBody } from '../kinds/settlement'
import { settledDisputes } from './settledDisputes'

/** A source of a number that was overruled for another number of the same switch. */
export type SettledAgainst = { settlement: Entry<SettlementBody>; report: Entry<ReportBody> }

/**
 * The settled disputes that overruled, for another number of the same switch, the very source that a number rests on:
 * the same page, label or call. Who misread one number of a line may have misread the other.
 *
 * @param reportIds what the number rests on
 */
export function settledAgainst(file: TeamFile, reportIds: readonly string[]): SettledAgainst[] {
  const own = reportIds.flatMap((id) => file.reports.get(id) ?? [])
  if (own.length === 0) return []
  return settledDisputes(file).flatMap(({ settlement, overruledReportIds }) => {
    const overruled = overruledReportIds.flatMap((id) => file.reports.get(id) ?? [])
    const report = own.find((each) => overruled.some((other) => fromOneSource(file, each.body, other.body)))
    return report === undefined ? [] : [{ settlement, report }]
  })
}

const fromOneSource = (file: TeamFile, one: ReportBody, other: ReportBody): boolean =>
  one.action !== other.action &&
  file.keptId(one.positionId) === file.keptId(other.positionId) &&
  ((one.origin !== undefined && one.origin === other.origin) || samePage(one, other))

/** Whether two reports name the same page of the same document. */
const samePage = ({ proof: one }: ReportBody, { proof: other }: ReportBody): boolean =>
  one?.kind === 'document' &&
  other?.kind === 'document' &&
  plainSpelling(one.name) === plainSpelling(other.name) &&
  plainSpelling(one.page) === plainSpelling(other.page)
