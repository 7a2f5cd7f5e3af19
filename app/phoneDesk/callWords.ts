import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CallAttemptBody } from '@/lib/records/kinds/callAttempt'
import { sayMoment } from '../ui/words/sayDate'

/** What became of a call, in words that spare the next person the same call. */
export const outcomeWords: Readonly<Record<CallAttemptBody['outcome'], string>> = {
  answered: 'answered',
  'no answer': 'no answer',
  'ring back': 'ring back',
  'doesn’t know': 'doesn’t know',
  'refuses to say': 'refuses to say',
  'offered a general-purpose part': 'offered a general-purpose part: refused',
}

export const organisationName = (file: TeamFile, id: string): string =>
  file.organisations.get(id)?.body.name ?? 'An organisation that is not on this device'

/** One call in a line: whom, what became of it, who rang and when. */
export function callLine(
  file: TeamFile,
  names: ReadonlyMap<string, string>,
  { body, by, at }: Entry<CallAttemptBody>,
): string {
  const { outcome, ringBackAt, person, offered } = body
  return [
    `${organisationName(file, body.organisationId)}: ${outcomeWords[outcome]}`,
    outcome === 'ring back' && ringBackAt !== undefined ? ` at ${sayMoment(ringBackAt)}` : '',
    offered === undefined ? '' : ` (${offered})`,
    person === undefined ? '' : `, ${person}`,
    `. ${names.get(by) ?? 'Somebody'} rang, ${sayMoment(at)}.`,
  ].join('')
}
