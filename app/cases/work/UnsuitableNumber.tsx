import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { unsuitableNumbers } from '@/lib/records/view/case/dangers'
import { foundFittedHref } from '../../foundFitted/foundFittedAddress'
import { ButtonLink } from '../../ui/form/Button'
import { AsPrinted } from '../../ui/words/AsPrinted'
import styles from './work.module.css'

/** Numbers read off a switch that should not be in, with the way to record it as found fitted. */
export function UnsuitableNumber({ ofCase, file }: { ofCase: CaseFile; file: TeamFile }) {
  const recorded = new Set(
    ofCase.unsuitable.flatMap(({ body }) => (body.positionId ? [file.keptId(body.positionId)] : [])),
  )
  return unsuitableNumbers(file, ofCase)
    .filter(({ body }) => !recorded.has(file.keptId(body.positionId)))
    .map(({ id, body: { printed, positionId } }) => (
      <section key={id} className={styles.danger} aria-label="A switch that should not be in">
        <p>
          <b>
            By its number, <AsPrinted text={printed} />, the switch that is in is no factory part:
          </b>{' '}
          adjustable, general-purpose or a bypass. It is recorded only as a number so far. Record when it was
          fitted and by whom; the furnace stays off until the factory part is in.
        </p>
        <ButtonLink
          kind="danger"
          href={foundFittedHref({ positionId, furnaceId: ofCase.furnace.id, printed })}
        >
          Record it as found fitted
        </ButtonLink>
      </section>
    ))
}
