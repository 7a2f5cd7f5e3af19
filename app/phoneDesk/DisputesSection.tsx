'use client'

import { useMemo, useState } from 'react'
import { type Dispute, disputesIn } from '@/lib/records/view/disputes'
import { reportsAt } from '@/lib/records/view/ratingReports'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { rangeWords } from '../equipment/candidates'
import { setpointHref, setpointQuery } from '../setpoint/setpointAddress'
import { linesFor, newestDate, statedDecimals } from '../setpoint/sourceLines'
import { evidenceOnFile } from '../settle/dispute'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { actionWords } from '../ui/words/actionWords'
import { SetpointNumber } from '../ui/words/SetpointNumber'
import { sayDate } from '../ui/words/sayDate'

/** Every number in dispute, for those who may settle it: both values, since when, and the way to settle it. */
export function DisputesSection() {
  const { file } = useDeviceState()
  const [now] = useState(() => new Date().toISOString())
  const disputes = useMemo(() => disputesIn(file, now), [file, now])
  return (
    <section aria-labelledby="in-dispute">
      <Stack>
        <h2 id="in-dispute">In dispute</h2>
        {disputes.length === 0 && (
          <Empty
            what="No rating is in dispute"
            why="No two proven sources on file name different numbers for one switch."
            todo="When a report disagrees with what is on file, both values are listed here until somebody settles it."
          />
        )}
        {disputes.map((dispute) => (
          <DisputeSheet
            key={`${dispute.position.id} ${dispute.action} ${dispute.furnace?.id ?? ''}`}
            {...dispute}
          />
        ))}
      </Stack>
    </section>
  )
}

function DisputeSheet({ position, action, standing, furnace, since }: Dispute) {
  const { file, names, me } = useDeviceState()
  const { unit } = usePreference()
  const range = file.ranges.get(file.keptId(position.body.rangeId))
  const reports = useMemo(
    () => new Map(reportsAt(file, position.id).map((report) => [report.id, report])),
    [file, position],
  )
  const address = { positionId: position.id, ...(furnace === undefined ? {} : { furnaceId: furnace.id }) }
  const [saidAt] = useState(() => new Date().toISOString())
  const canSettle = evidenceOnFile(file, position.id, action, { ...me, saidAt }).length
  const values = [standing, ...standing.rivals.filter((rival) => rival.disputes)]
  return (
    <Sheet
      heading={3}
      title={`${position.body.name}, ${range === undefined ? '' : rangeWords(file, range)}`}
      sub={[
        actionWords[action].name,
        ...(furnace === undefined ? [] : [`for ${furnace.body.siteLabel} and furnaces like it`]),
        `in dispute since ${sayDate(since)}`,
      ].join(' · ')}
      foot={
        <Row>
          <ButtonLink kind="main" href={`/settle?${setpointQuery(address)}&action=${action}`}>
            Settle the dispute
          </ButtonLink>
          {canSettle === 0 && (
            <ButtonLink href={`/ask?${setpointQuery(address)}`}>Ask for what would settle it</ButtonLink>
          )}
          <ButtonLink kind="quiet" href={setpointHref(address)}>
            See the setpoint
          </ButtonLink>
        </Row>
      }
    >
      <Stack>
        {values.map((value) => (
          <SetpointNumber
            key={value.reportIds.join()}
            {...value}
            action={action}
            unit={unit}
            decimals={statedDecimals(value.reportIds, reports, unit)}
            size="line"
            standing={{
              level: 'In dispute',
              asOf: newestDate(value.reportIds, reports),
              sources: linesFor(value.reportIds, file, names),
            }}
          />
        ))}
        <p>
          {canSettle === 0
            ? 'Nothing on file can settle it yet. What would: factory technical support with a reference, or the page of the maker’s current literature.'
            : `${canSettle === 1 ? 'A report' : `${canSettle} reports`} on file can settle it.`}{' '}
          Until then nobody is advised to condemn a switch on it.
        </p>
      </Stack>
    </Sheet>
  )
}
