import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { SettlementBody } from '@/lib/records/kinds/settlement'
import { sourceLine } from '../setpoint/sourceLines'
import { actionWords } from '../ui/words/actionWords'
import { sayDate } from '../ui/words/sayDate'

type Props = { settlement: Entry<SettlementBody>; file: TeamFile; names: ReadonlyMap<string, string> }

/** How a dispute was settled: by whom and when, with which evidence against which reports, and why. */
export function SettlementLine({ settlement, file, names }: Props) {
  const { action, evidenceReportId, overruledReportIds, reason } = settlement.body
  const report = (id: string) => {
    const found = file.reports.get(id)
    if (found === undefined) return <>a report that is not on this device</>
    const { words, href, date } = sourceLine(found, file, names)
    return (
      <>
        <a href={href}>{words}</a>, {sayDate(date)}
        {found.withdrawn !== undefined && ', withdrawn since'}
      </>
    )
  }
  return (
    <>
      {actionWords[action].name}: settled <a href={`/record?id=${settlement.id}`}>{sayDate(settlement.at)}</a>{' '}
      by {names.get(settlement.by) ?? 'somebody'}. Why: {reason} By: {report(evidenceReportId)}. Overruled:{' '}
      {overruledReportIds.map((id, place) => (
        <span key={id}>
          {place > 0 && '; '}
          {report(id)}
        </span>
      ))}
      .
    </>
  )
}
