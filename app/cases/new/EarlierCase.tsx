import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseBody } from '@/lib/records/kinds/case'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { casesOf } from '@/lib/records/view/case/caseFile'
import { isOver } from '@/lib/records/view/case/caseStanding'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { causeOf } from '@/lib/records/view/case/pastCases'
import { sayDate } from '../../ui/words/sayDate'
import { caseViewIn } from '../list/caseViewIn'
import { knownWords } from '../list/filterWords'
import { causeName } from '../work/causeName'
import styles from './new.module.css'

type Props = {
  furnaceId: string
  /** Empty while nobody has said what it is about: then the last case of any circuit is shown, and not called a repeat. */
  circuit: CaseBody['circuit'] | ''
  file: TeamFile
  now: string
}

/**
 * The newest case on the same furnace and circuit. One that is still open is where the work goes on; one that is over
 * is repeated, and says what was fixed then and what the readings were.
 */
export function EarlierCase({ furnaceId, circuit, file, now }: Props) {
  const last = casesOf(file, furnaceId).findLast(({ body }) => circuit === '' || body.circuit === circuit)
  const view = last && caseViewIn(file, last.id)
  if (view === undefined) return null
  const { entry } = view.file
  if (!isOver(view.standing)) {
    return (
      <aside aria-label="A case is still open" className={styles.earlier}>
        <p>
          <b>The case of {sayDate(entry.at)} is still open</b>, {view.standing}: {entry.body.complaint}. A new
          visit for the same complaint belongs to it.
        </p>
        <a href={`/case?id=${entry.id}`}>Go on with the case of {sayDate(entry.at)}</a>
      </aside>
    )
  }
  return (
    <aside
      aria-label={circuit === '' ? 'The last case here' : 'This repeats an earlier case'}
      className={styles.earlier}
    >
      <p>
        <b>
          {circuit === '' ? 'The last case here was that of' : 'This repeats the case of'} {sayDate(entry.at)}
        </b>
        , {entry.body.circuit}: {entry.body.complaint}. It ended as {view.standing}.
      </p>
      <p>
        {fixedThen(view, file, now)} {view.file.readings.length === 0 && 'No reading was taken then.'}
      </p>
      {view.file.readings.length > 0 && (
        <>
          <p>Readings then:</p>
          <ul>
            {view.file.readings.map(({ id, body }) => (
              <li key={id}>
                <a href={`/record?id=${id}`}>{readingWords(body, file)}</a>
              </li>
            ))}
          </ul>
        </>
      )}
      <a href={`/case/history?id=${entry.id}`}>Read the case of {sayDate(entry.at)}</a>
    </aside>
  )
}

function fixedThen(view: CaseView, file: TeamFile, now: string): string {
  const cause = causeOf(file, view, now)
  const done = view.file.repairs.map(({ body }) => body.done)
  return [
    done.length === 0 ? 'Nothing was repaired then.' : `Fixed then: ${done.join('; ')}.`,
    cause === undefined
      ? 'No cause was named.'
      : `Cause, ${knownWords[cause.status]}: ${causeName(cause.main)}.`,
  ].join(' ')
}

/** What was typed, with the switch, stage, phase and whether the repair had been made. */
const readingWords = (body: ReadingBody, file: TeamFile): string =>
  [
    body.asTyped,
    body.positionId === undefined
      ? body.stage
      : `${file.positions.get(file.keptId(body.positionId))?.body.name ?? body.stage}`,
    body.phase,
    `contact ${body.contacts}`,
    body.when,
  ].join(', ')
