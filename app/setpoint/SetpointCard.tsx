import type { PressureUnit } from '@/lib/core/pressure'
import { coverWords } from '@/lib/records/view/coverWords'
import type { Setpoint } from '@/lib/records/view/setpoint'
import { OwnQuestions } from '../ask/OwnQuestions'
import { useDeviceState } from '../device/deviceContext'
import { ReportPhotos } from '../photo/ReportPhotos'
import { SettlementLine } from '../settle/SettlementLine'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { Quiet } from '../ui/words/Quiet'
import { SourceList } from '../ui/words/SourceList'
import { sayDate } from '../ui/words/sayDate'
import { bundleLine } from './bundleWords'
import { FoundElsewhere } from './FoundElsewhere'
import { FoundHere } from './FoundHere'
import { NothingOnFile } from './NothingOnFile'
import { Numbers } from './Numbers'
import { PartLines } from './PartLines'
import { type SetpointAddress, setpointQuery } from './setpointAddress'
import styles from './setpointCard.module.css'
import { sourceLine } from './sourceLines'

type Props = {
  setpoint: Setpoint
  address: SetpointAddress
  unit: PressureUnit
  names: ReadonlyMap<string, string>
}

/** One switch position: its numbers with their standing, the parts, what was printed, and what to do next. */
export function SetpointCard({ setpoint, address, unit, names }: Props) {
  const { position, range, maker, rating, partLines } = setpoint
  const query = setpointQuery(address)
  const comparable = position.body.kind !== 'gas pressure' && position.body.kind !== 'sensor'
  const onFile = [rating.closes, rating.opens, rating.unstated].some((each) => each.level !== 'Not on file')
  const weak = [rating.closes, rating.opens].some(
    (each) => each.level !== 'Verified' && each.level !== 'Supported',
  )
  const { file } = useDeviceState()
  const { furnaceId } = address
  const here = setpoint.foundFitted.filter(
    ({ body }) =>
      furnaceId !== undefined &&
      body.furnaceId !== undefined &&
      file.keptId(body.furnaceId) === file.keptId(furnaceId),
  )
  const gone = position.withdrawn ?? range.withdrawn
  const disputed = (['closes', 'opens', 'unstated'] as const).filter(
    (key) => rating[key].level === 'In dispute',
  )
  return (
    <Sheet
      title={`${position.body.name}, ${[maker?.body.name, range.body.name].filter(Boolean).join(' ')}`}
      sub={bundleLine(position.body)}
      foot={
        gone === undefined && (
          <Row>
            {comparable && onFile && rating.asks.length === 0 && (
              <ButtonLink kind="main" href={`/compare?${query}`}>
                Compare a reading
              </ButtonLink>
            )}
            {weak && (
              <ButtonLink kind={onFile ? 'plain' : 'main'} href={`/ask?${query}`}>
                Ask for this rating
              </ButtonLink>
            )}
            <ButtonLink href={`/report?${query}`}>Add a report</ButtonLink>
            {disputed.map((key) => (
              <ButtonLink
                key={key}
                href={`/settle?${query}&action=${key === 'unstated' ? 'not stated' : key}`}
              >
                Settle the dispute{disputed.length > 1 ? `: ${key}` : ''}
              </ButtonLink>
            ))}
            <ButtonLink kind="quiet" href={`/found-fitted?${query}`}>
              An unsuitable switch is in
            </ButtonLink>
          </Row>
        )
      }
    >
      {gone !== undefined && (
        <p className={styles.found}>
          <b>Withdrawn {sayDate(gone.at)}</b> by {names.get(gone.by) ?? 'somebody'}: {gone.reason}. What
          follows is what was recorded; do not work by it.
        </p>
      )}
      {here.map((found) => (
        <FoundHere key={found.id} found={found} />
      ))}
      <FoundElsewhere found={setpoint.foundFitted.filter((found) => !here.includes(found))} />
      <OwnQuestions positionId={position.id} />
      {onFile ? (
        <Numbers {...{ setpoint, address, unit, names }} />
      ) : (
        <NothingOnFile {...{ setpoint, address }} />
      )}
      <h3>Factory part</h3>
      <PartLines lines={partLines} />
      <ReportPhotos reports={[...setpoint.reports.values()]} />
      <Printed {...{ setpoint, names }} />
      <Settled {...{ setpoint, names }} />
      <Withdrawn {...{ setpoint, names }} />
      {setpoint.openRequests.length > 0 && onFile && (
        <p>
          Asked for {setpoint.openRequests.length === 1 ? 'once' : `${setpoint.openRequests.length} times`}{' '}
          and not answered yet: <a href="/phone-desk">see the Phone desk</a>.
        </p>
      )}
    </Sheet>
  )
}

function Printed({ setpoint, names }: Pick<Props, 'setpoint' | 'names'>) {
  const { file } = useDeviceState()
  const reports = [...setpoint.reports.values()]
  if (reports.length === 0) return null
  return (
    <details>
      <summary>
        What each source says, letter for letter (
        {reports.length === 1 ? '1 report' : `${reports.length} reports`})
      </summary>
      <ul className={styles.printed}>
        {reports.map((report) => (
          <li key={report.id}>
            <AsPrinted text={report.body.asWritten} /> <Quiet inline>{coverWords(report.body)}</Quiet>
            <SourceList sources={[sourceLine(report, file, names)]} label="Source" />
          </li>
        ))}
      </ul>
    </details>
  )
}

function Settled({ setpoint, names }: Pick<Props, 'setpoint' | 'names'>) {
  const { file } = useDeviceState()
  const { settlements } = setpoint
  if (settlements.length === 0) return null
  return (
    <details>
      <summary>
        Settled, with the reason ({settlements.length === 1 ? '1 dispute' : `${settlements.length} disputes`})
      </summary>
      <ul className={styles.printed}>
        {settlements.map((settlement) => (
          <li key={settlement.id}>
            <SettlementLine {...{ settlement, file, names }} />
          </li>
        ))}
      </ul>
    </details>
  )
}

function Withdrawn({ setpoint, names }: Pick<Props, 'setpoint' | 'names'>) {
  const { file } = useDeviceState()
  if (setpoint.withdrawn.length === 0) return null
  return (
    <details>
      <summary>
        Withdrawn, still readable (
        {setpoint.withdrawn.length === 1 ? '1 report' : `${setpoint.withdrawn.length} reports`})
      </summary>
      <ul className={styles.printed}>
        {setpoint.withdrawn.map((report) => (
          <li key={report.id}>
            <AsPrinted text={report.body.asWritten} />
            <SourceList
              label="Withdrawn report"
              sources={[
                sourceLine(
                  report,
                  file,
                  names,
                  `Withdrawn ${sayDate(report.withdrawn!.at)} by ${names.get(report.withdrawn!.by) ?? 'somebody'}: ${report.withdrawn!.reason}`,
                ),
              ]}
            />
          </li>
        ))}
      </ul>
    </details>
  )
}
