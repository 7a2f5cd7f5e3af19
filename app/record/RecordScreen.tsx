'use client'

import { useSearchParams } from 'next/navigation'
import { useDeviceState } from '../device/deviceContext'
import { SettlementLine } from '../settle/SettlementLine'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Facts } from '../ui/paper/Facts'
import { Fold } from '../ui/paper/Fold'
import { PageHeader } from '../ui/paper/PageHeader'
import { Sheet } from '../ui/paper/Sheet'
import { Stack } from '../ui/paper/Stack'
import { actionWords } from '../ui/words/actionWords'
import { sayMoment } from '../ui/words/sayDate'
import { WarrantyOfRepair } from '../warranty/WarrantyAnswers'
import { WarrantyTold } from '../warranty/WarrantyTold'
import { bodyFacts } from './bodyFacts'
import { CallTold } from './CallTold'
import { CameInBy } from './CameInBy'
import { otherHalves } from './otherHalves'
import { RecordPhotos } from './RecordPhotos'
import { ReportTold } from './ReportTold'
import { recordTitle } from './recordTitle'
import { fieldOf } from './recordWords'
import { useAbout } from './useAbout'
import { WhereItBelongs } from './WhereItBelongs'
import { maybeWithheld } from './withheldFields'

/** One record as it was said: nothing left out, nothing edited, with what withdrew it if something did. */
export function RecordScreen() {
  const id = useSearchParams().get('id') ?? ''
  const { file, names, me } = useDeviceState()
  const about = useAbout()
  const found = file.records.get(id)
  if (found === undefined) {
    return (
      <Empty
        page
        what="This record is not on this device"
        why="The address may be cut short, or the record has not reached this device."
        todo={<a href="/">Go to Find</a>}
      />
    )
  }
  const { kind, entry } = found
  const who = (person: string) => names.get(person) ?? 'Somebody whose name is not on this device'
  const others = otherHalves(file, id)
  const report = file.reports.get(id)
  const settlement = file.settlements.get(id)
  const call = file.callAttempts.get(id)
  const repair = file.repairs.get(id)
  const warranty = file.warrantyAnswers.get(id)
  const told =
    report !== undefined ? (
      <ReportTold report={report} />
    ) : settlement !== undefined ? (
      <p>
        <SettlementLine {...{ settlement, file, names }} />
      </p>
    ) : call !== undefined ? (
      <CallTold call={call} />
    ) : undefined
  const facts = <Facts facts={bodyFacts(kind, entry.body, about)} />
  const withholdable = maybeWithheld(kind, entry, me.role).length > 0
  const withdrawable = entry.withdrawn === undefined && kind !== 'withholding' && kind !== 'preference'
  return (
    <Stack>
      <PageHeader
        title={recordTitle(kind, entry.body)}
        lead={`${who(entry.by)}, ${sayMoment(entry.at)}${entry.waiting ? ', on this device only until it is sent' : ''}`}
      />
      {entry.withdrawn !== undefined && (
        <Sheet title="Withdrawn">
          <p>
            {who(entry.withdrawn.by)}, {sayMoment(entry.withdrawn.at)}: {entry.withdrawn.reason}
          </p>
          {entry.withdrawn.withImport !== undefined && (
            <p>
              Together with <a href={`/record?id=${entry.withdrawn.withImport}`}>the whole import</a> that it
              came in by.
            </p>
          )}
          {entry.withdrawn.replacedBy !== undefined && (
            <p>
              <a href={`/record?id=${entry.withdrawn.replacedBy}`}>The record that takes its place</a>
            </p>
          )}
          <p>
            <a href={`/withdraw?record=${entry.withdrawn.id}`}>Bring it back by withdrawing the withdrawal</a>
          </p>
        </Sheet>
      )}
      <CameInBy id={id} />
      {entry.withheld !== undefined && (
        <p>
          Withheld: {entry.withheld.fields.map((key) => fieldOf(kind, key).name).join(', ')}.{' '}
          <a href={`/record?id=${entry.withheld.by}`}>By whom and why</a>
        </p>
      )}
      <Sheet
        title="What was recorded"
        foot={
          withdrawable || withholdable ? (
            <>
              {withdrawable && <ButtonLink href={`/withdraw?record=${id}`}>Withdraw this record</ButtonLink>}
              {withholdable && (
                <ButtonLink kind="quiet" href={`/withhold?record=${id}`}>
                  Withhold personal data
                </ButtonLink>
              )}
            </>
          ) : undefined
        }
      >
        <Stack>
          {others.length > 0 && (
            <div>
              <p>Saved together with it, of the same text, and standing:</p>
              <ul>
                {others.map((other) => (
                  <li key={other.id}>
                    <a href={`/record?id=${other.id}`}>{actionWords[other.body.action].name}</a>
                  </li>
                ))}
              </ul>
            </div>
          )}
          {told === undefined ? (
            facts
          ) : (
            <>
              {told}
              <Fold summary="Every field, as it was recorded">{() => facts}</Fold>
            </>
          )}
          {warranty !== undefined && <WarrantyTold answer={warranty} />}
          {repair !== undefined && <WarrantyOfRepair repair={repair} back={`/record?id=${id}`} />}
          <RecordPhotos id={id} />
          <WhereItBelongs kind={kind} id={id} body={entry.body} />
        </Stack>
      </Sheet>
    </Stack>
  )
}
