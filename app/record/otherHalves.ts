import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'

/** Reports of one statement are saved in one step; said this far apart they are two statements. */
const oneStepMs = 60_000

/**
 * The other numbers of the statement that a report is a part of: `CLOSE .62 / OPEN .45` is saved as two reports, of
 * one text, one origin and one furnace. Those that are withdrawn already are left out.
 */
export function otherHalves(file: TeamFile, id: string): Entry<ReportBody>[] {
  const report = file.reports.get(id)
  if (report === undefined) return []
  const same = (one: string | undefined, other: string | undefined) =>
    (one === undefined ? undefined : file.keptId(one)) ===
    (other === undefined ? undefined : file.keptId(other))
  return [...file.reports.values()].filter(
    ({ id: otherId, body, by, at, withdrawn }) =>
      otherId !== id &&
      withdrawn === undefined &&
      by === report.by &&
      Math.abs(Date.parse(at) - Date.parse(report.at)) < oneStepMs &&
      body.action !== report.body.action &&
      body.asWritten === report.body.asWritten &&
      body.origin === report.body.origin &&
      same(body.positionId, report.body.positionId) &&
      same(body.furnaceId, report.body.furnaceId),
  )
}
