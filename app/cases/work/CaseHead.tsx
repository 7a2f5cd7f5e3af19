import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { otherSerialSeen } from '@/lib/records/view/case/furnaceSeen'
import { FittedWarning } from '../../foundFitted/FittedWarning'
import { LeftOffBanner } from '../../furnace/LeftOffBanner'
import { ButtonLink } from '../../ui/form/Button'
import { PageHeader } from '../../ui/paper/PageHeader'
import { Row } from '../../ui/paper/Stack'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { sayDate } from '../../ui/words/sayDate'
import { LastTime } from '../history/LastTime'
import { capitalised } from './capitalised'
import { UnsuitableNumber } from './UnsuitableNumber'

type Props = {
  view: CaseView
  file: TeamFile
  names: ReadonlyMap<string, string>
  now: string
  visitId: string | undefined
}

/** What the case is about, how it stands, whether its furnace is left off, and what happened the last time. */
export function CaseHead({ view, file, names, now, visitId }: Props) {
  const { entry, furnace, unsuitable } = view.file
  const otherSerial = otherSerialSeen(view.file)
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
      <LeftOffBanner furnaceId={furnace.id} {...{ file, names }} />
      {entry.withdrawn && (
        <p>
          This case was withdrawn {sayDate(entry.withdrawn.at)}: {entry.withdrawn.reason}. It stays readable.
        </p>
      )}
      {otherSerial !== undefined && (
        <p role="status">
          <b>
            The plate says <AsPrinted text={otherSerial} />, the file says{' '}
            <AsPrinted text={furnace.body.serial ?? ''} />. Is it another furnace?
          </b>{' '}
          Then{' '}
          <a href={`/furnace/add?${new URLSearchParams({ replaces: furnace.id, serial: otherSerial })}`}>
            record that it was replaced
          </a>
          . Until that is settled, ratings of the old number are not counted as on record for it.
        </p>
      )}
      <LastTime file={file} ofCase={view.file} now={now} />
      {unsuitable.map((found) => (
        <FittedWarning key={found.id} found={found} file={file} />
      ))}
      <UnsuitableNumber ofCase={view.file} file={file} />
    </>
  )
}
