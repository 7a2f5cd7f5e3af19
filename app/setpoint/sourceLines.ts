import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { secondReadingOf } from '@/lib/records/view/ratingReports'
import { sourceWords } from '@/lib/records/view/sourceWords'
import type { SourceLine } from '../ui/words/SourceList'

export { behind, newestDate } from '@/lib/records/view/standingReports'

type Reports = ReadonlyMap<string, Entry<ReportBody>>
type Names = ReadonlyMap<string, string>

/**
 * A report in a line: what it rests on, its proof, who recorded it, and when the source said so. Somebody else who read
 * the same off its photo stands beside who recorded it.
 */
export function sourceLine(
  report: Entry<ReportBody>,
  file: TeamFile,
  names: Names,
  note?: string,
): SourceLine {
  const second = secondReadingOf(report, file)
  const readers = second === undefined ? [report.by] : [report.by, second.by]
  const notes = [
    note,
    report.body.note,
    report.waiting ? 'On this device only, waiting to be sent.' : undefined,
  ]
  const said = notes.filter((each) => each !== undefined && each !== '').join(' ')
  return {
    key: report.id,
    words: sourceWords(report, file),
    who: readers.map((id) => names.get(id) ?? 'somebody whose name is not on this device').join(' and '),
    date: report.body.saidOn ?? report.at,
    href: `/record?id=${report.id}`,
    ...(said === '' ? {} : { note: said }),
  }
}

export const linesFor = (ids: readonly string[], file: TeamFile, names: Names): SourceLine[] =>
  ids.flatMap((id) => {
    const report = file.reports.get(id)
    return report === undefined ? [] : [sourceLine(report, file, names)]
  })

/** Decimals that the sources state in the reader's unit; undefined where none states it in that unit. */
export function statedDecimals(
  ids: readonly string[],
  reports: Reports,
  unit: ReportBody['unit'],
): number | undefined {
  const stated = ids.flatMap((id) => {
    const body = reports.get(id)?.body
    return body?.unit === unit ? [body.decimals] : []
  })
  return stated.length === 0 ? undefined : Math.max(...stated)
}
