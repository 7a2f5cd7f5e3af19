import { sources } from '@/lib/catalogue/sources'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { ReportBody } from '../kinds/report'
import { organisationRung } from './desk/answeredCalls'
import { photoStateOf } from './photos'
import { secondReadingOf } from './ratingReports'

/**
 * What a report rests on, in words, the same on a card, in an answer and in a table.
 * @example 'Distributor, read back, Fennhall Supply, ref. 4471, said by the counter'
 */
export const sourceWords = (report: Entry<ReportBody>, file: TeamFile): string =>
  [sources[report.body.source].words, ...proofWords(report, file)].join(', ')

/** What lets somebody check a report: read-back, document with its page, call with its reference. */
export function proofWords(report: Entry<ReportBody>, file: TeamFile): string[] {
  const { proof, readBack, saidBy } = report.body
  const words: string[] = []
  if (readBack === true) words.push('read back')
  if (readBack === false) words.push('not read back')
  if (proof?.kind === 'document') {
    words.push(`${proof.name}${proof.edition === undefined ? '' : ` (${proof.edition})`}, page ${proof.page}`)
  }
  if (proof?.kind === 'call reference') words.push(`${proof.organisation}, ref. ${proof.reference}`)
  const rung = organisationRung(report.body)
  if (proof === undefined && rung !== undefined) words.push(`${rung}, no reference`)
  const photo = photoStateOf(file, report)
  if (photo !== undefined && (proof === undefined || proof.kind === 'photo')) words.push(photoWords[photo])
  if (secondReadingOf(report, file) !== undefined) words.push('read the same by two people')
  if (saidBy !== undefined) words.push(`said by ${saidBy}`)
  return words
}

const photoWords = {
  held: 'photo',
  'not here yet': 'photo not here yet',
  withheld: 'photo withheld',
  withdrawn: 'photo withdrawn',
} as const
