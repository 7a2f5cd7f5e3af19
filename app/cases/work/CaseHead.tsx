import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { caseViewOf } from '@/lib/records/view/case/caseView'
import { causeOf } from '@/lib/records/view/case/pastCases'
import { FittedWarning } from '../../foundFitted/FittedWarning'
import { ButtonLink } from '../../ui/form/Button'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Row } from '../../ui/paper/Stack'
import { sayDate } from '../../ui/words/sayDate'
import { capitalised } from './capitalised'
import { causeName } from './causeName'

type Props = { view: CaseView; file: TeamFile; now: string; visitId: string | undefined }

/** What the case is about, how it stands, and what happened the last time. */
export function CaseHead({ view, file, now, visitId }: Props) {
  const { entry, furnace, unsuitable, earlier } = view.file
  const last = earlier[0]
  return (
    <>
      <PageHeader
        above={<a href="/cases">Cases</a>}
        title={furnace.body.siteLabel}
        lead={
          <>
            {entry.body.complaint}. <a href={`/furnace?id=${furnace.id}`}>Furnace {furnace.body.model}</a>.
            Opened {sayDate(entry.at)}. {capitalised(view.standing)}.
          </>
        }
        actions={
          <Row>
            {visitId !== undefined && (
              <ButtonLink kind="main" href={`/case/end?id=${entry.id}&visit=${visitId}`}>
                End the visit
              </ButtonLink>
            )}
            <ButtonLink href={`/case/history?id=${entry.id}`}>History, to read or print</ButtonLink>
          </Row>
        }
      />
      {entry.withdrawn && (
        <p>
          This case was withdrawn {sayDate(entry.withdrawn.at)}: {entry.withdrawn.reason}. It stays readable.
        </p>
      )}
      {last !== undefined && <Repeat file={file} caseId={last.id} now={now} />}
      {unsuitable.map((found) => (
        <FittedWarning key={found.id} found={found} file={file} />
      ))}
    </>
  )
}

/** What was fixed the last time on this furnace, and what the readings were then. */
function Repeat({ file, caseId, now }: { file: TeamFile; caseId: string; now: string }) {
  const earlier = caseViewOf(file, caseId)
  if (earlier === undefined) return null
  const cause = causeOf(file, earlier, now)
  const repairs = earlier.file.repairs.map(({ body }) => body.done)
  return (
    <aside aria-label="Repeats an earlier case">
      <p>
        <b>
          This repeats <a href={`/case/history?id=${caseId}`}>the case of {sayDate(earlier.file.entry.at)}</a>
        </b>{' '}
        on the same furnace.{' '}
        {cause === undefined
          ? 'No cause was named then.'
          : `Cause then, ${cause.status}: ${causeName(cause.main)}.`}{' '}
        {repairs.length === 0 ? 'Nothing was repaired.' : `Done then: ${repairs.join('; ')}.`}{' '}
        {earlier.file.readings.length === 0
          ? 'No reading was taken.'
          : `Readings then: ${earlier.file.readings.map(({ body }) => `${body.asTyped}, ${body.stage}, ${body.phase}, ${body.when}`).join('; ')}.`}
      </p>
    </aside>
  )
}
