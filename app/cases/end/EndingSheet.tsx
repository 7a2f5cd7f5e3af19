import type { ReactNode } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingBody } from '@/lib/records/kinds/ending'
import { ButtonLink } from '../../ui/form/Button'
import { Facts } from '../../ui/paper/Facts'
import { Sheet } from '../../ui/paper/Sheet'
import { momentWords } from '../history/momentWords'
import { endingFacts } from './endingFacts'
import { saidHow } from './endingWords'

type Props = {
  entry: Entry<EndingBody>
  file: TeamFile
  names: ReadonlyMap<string, string>
  /** Nothing is missing from it. */
  finished: boolean
  /** What else can be done with it, before its record and its withdrawal. */
  actions?: ReactNode
}

/** One ending of a visit: how it ended, by whom and when, and everything it says. */
export function EndingSheet({ entry, file, names, finished, actions }: Props) {
  const facts = endingFacts(entry.body, file)
  return (
    <Sheet
      title={saidHow(entry.body.how, finished)}
      sub={`${names.get(entry.by) ?? 'Somebody whose name is not on this device'}, ${momentWords(entry.at)}${entry.waiting ? ', on this device only until it is sent' : ''}`}
      foot={
        <>
          {actions}
          <ButtonLink href={`/withdraw?record=${entry.id}`}>Withdraw this ending</ButtonLink>
          <ButtonLink kind="quiet" href={`/record?id=${entry.id}`}>
            The record itself
          </ButtonLink>
        </>
      }
    >
      {facts.length === 0 ? <p>It says nothing more.</p> : <Facts facts={facts} />}
    </Sheet>
  )
}
