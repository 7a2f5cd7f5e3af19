import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { savedTogether } from '@/lib/records/view/savedTogether'

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
  return [...file.reports.values()].filter((other) => {
    const { id: otherId, body, withdrawn } = other
    return (
      otherId !== id &&
      withdrawn === undefined &&
      savedTogether(other, report) &&
      body.action !== report.body.action &&
      body.asWritten === report.body.asWritten &&
      body.origin === report.body.origin &&
      same(body.positionId, report.body.positionId) &&
      same(body.furnaceId, report.body.furnaceId)
    )
  })
}
