import type { SettledDispute } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { SettlementBody } from '../kinds/settlement'
import { reportsAt } from './ratingReports'

/** A dispute that is settled and stays so: its evidence stands. */
export type Settled = SettledDispute & {
  settlement: Entry<SettlementBody>
  /** The reports that had named the settled value all along. */
  upheldReportIds: string[]
}

/** Every settled dispute whose evidence still counts, oldest first, without the reports that were withdrawn since. */
export const settledDisputes = (file: TeamFile): Settled[] =>
  counting(file.settlements)
    .filter(({ body }) => isCounting(file, body.evidenceReportId))
    .map((settlement) => ({
      settlement,
      evidenceReportId: settlement.body.evidenceReportId,
      overruledReportIds: settlement.body.overruledReportIds.filter((id) => isCounting(file, id)),
      reason: settlement.body.reason,
      upheldReportIds: upheldBy(file, settlement.body),
    }))

const isCounting = (file: TeamFile, reportId: string): boolean => {
  const report = file.reports.get(reportId)
  return report !== undefined && report.withdrawn === undefined && report.sameAs === undefined
}

const upheldBy = (file: TeamFile, settlement: SettlementBody): string[] =>
  reportsAt(file, settlement.positionId)
    .filter(
      ({ id, body }) =>
        id !== settlement.evidenceReportId &&
        !settlement.overruledReportIds.includes(id) &&
        body.action === settlement.action &&
        body.pascals === settlement.pascals &&
        body.limit === settlement.limit,
    )
    .map(({ id }) => id)
