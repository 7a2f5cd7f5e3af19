import { verdictWords } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { Quiet } from '../../ui/words/Quiet'

type Props = { view: CaseView; file: TeamFile }

/** The readings of a case in a line each, with what they meant by the limits of their day. */
export function ReadingsOfCase({ view, file }: Props) {
  const { judged } = view
  return (
    <section aria-labelledby="end-readings">
      <h2 id="end-readings">Readings of this case</h2>
      {judged.length === 0 ? (
        <Quiet>
          None. Without one nobody can tell next time what was normal.{' '}
          <a href={`/case?id=${view.file.entry.id}#readings`}>Take one</a>
        </Quiet>
      ) : (
        <ul>
          {judged.map(({ entry: { id, body }, comparison }) => (
            <li key={id}>
              <b>{verdictWords(comparison).join('. ') || 'At rest'}</b>:{' '}
              <a href={`/record?id=${id}`}>{body.asTyped}</a>,{' '}
              {body.positionId === undefined
                ? 'no switch named'
                : file.positions.get(file.keptId(body.positionId))?.body.name}
              , {body.phase}, {body.when}
            </li>
          ))}
        </ul>
      )}
    </section>
  )
}
