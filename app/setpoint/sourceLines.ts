import { sources } from '@/lib/catalogue/sources'
import type { Entry } from '@/lib/records/fold/entry'
import type { ReportBody } from '@/lib/records/kinds/report'
import type { SourceLine } from '../ui/words/SourceList'

export { behind, newestDate } from '@/lib/records/view/standingReports'

type Reports = ReadonlyMap<string, Entry<ReportBody>>
type Names = ReadonlyMap<string, string>

/** A report in a line: what it rests on, its proof, who recorded it, and when the source said so. */
export function sourceLine(report: Entry<ReportBody>, names: Names, note?: string): SourceLine {
  const notes = [
    note,
    report.body.note,
    report.waiting ? 'On this device only, waiting to be sent.' : undefined,
  ]
  const said = notes.filter((each) => each !== undefined && each !== '').join(' ')
  return {
    key: report.id,
    words: [sources[report.body.source].words, ...proofWords(report.body)].join(', '),
    who: names.get(report.by) ?? 'somebody whose name is not on this device',
    date: report.body.saidOn ?? report.at,
    href: `/record?id=${report.id}`,
    ...(said === '' ? {} : { note: said }),
  }
}

/** What lets somebody check a report: read-back, document with its page, call with its reference. */
export function proofWords({ proof, readBack, saidBy }: ReportBody): string[] {
  const words: string[] = []
  if (readBack === true) words.push('read back')
  if (readBack === false) words.push('not read back')
  if (proof?.kind === 'document') {
    words.push(`${proof.name}${proof.edition === undefined ? '' : ` (${proof.edition})`}, page ${proof.page}`)
  }
  if (proof?.kind === 'call reference') words.push(`${proof.organisation}, ref. ${proof.reference}`)
  if (proof?.kind === 'photo') words.push('photo')
  if (saidBy !== undefined) words.push(`said by ${saidBy}`)
  return words
}

export const linesFor = (ids: readonly string[], reports: Reports, names: Names): SourceLine[] =>
  ids.flatMap((id) => {
    const report = reports.get(id)
    return report === undefined ? [] : [sourceLine(report, names)]
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
