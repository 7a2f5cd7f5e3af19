import type { RatingStanding } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import type { ReportBody } from '../kinds/report'

type Reports = ReadonlyMap<string, Entry<ReportBody>>

/** The reports behind the value that a standing shows; for a lone lead, the lead itself. */
export const behind = (standing: RatingStanding): string[] => [
  ...new Set([
    ...standing.reportIds,
    ...standing.leads
      .filter((lead) => standing.reportIds.length === 0 && lead.agrees)
      .map((lead) => lead.reportId),
  ]),
]

/** The newest date among reports: since when a standing has been what it is. */
export const newestDate = (ids: readonly string[], reports: Reports): string =>
  ids
    .flatMap((id) => {
      const report = reports.get(id)
      return report === undefined ? [] : [report.body.saidOn ?? report.at]
    })
    .toSorted()
    .at(-1) ?? ''
