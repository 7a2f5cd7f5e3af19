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

/** The reports that ids name, in their order. */
export const reportsNamed = (ids: readonly string[], reports: Reports): Entry<ReportBody>[] =>
  ids.flatMap((id) => reports.get(id) ?? [])

/** When the source of a report said it, ISO 8601; where the report leaves that open, when it was recorded. */
export const saidAtOf = ({ body, at }: Entry<ReportBody>): string => body.saidOn ?? at

/** The newest date among reports: since when a standing has been what it is. */
export const newestDate = (ids: readonly string[], reports: Reports): string =>
  reportsNamed(ids, reports).map(saidAtOf).toSorted().at(-1) ?? ''
