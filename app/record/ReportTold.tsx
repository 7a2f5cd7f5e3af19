'use client'

import { useMemo, useState } from 'react'
import type { RatingStanding } from '@/lib/core/rating'
import type { Entry } from '@/lib/records/fold/entry'
import { counting } from '@/lib/records/fold/teamFile'
import type { ReportBody } from '@/lib/records/kinds/report'
import { coverWords } from '@/lib/records/view/coverWords'
import { questionOf } from '@/lib/records/view/desk/questions'
import { furnaceForRating } from '@/lib/records/view/furnaceForRating'
import { ratingAt, ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { rangeWords } from '../equipment/candidates'
import { levelOfReport } from '../phoneDesk/answerLines'
import { questionTitle } from '../phoneDesk/questionWords'
import { bundleLine } from '../setpoint/bundleWords'
import { setpointHref } from '../setpoint/setpointAddress'
import { sourceLine } from '../setpoint/sourceLines'
import { SettlementLine } from '../settle/SettlementLine'
import { Stack } from '../ui/paper/Stack'
import { AsPrinted } from '../ui/words/AsPrinted'
import { SetpointNumber } from '../ui/words/SetpointNumber'

const keys = { closes: 'closes', opens: 'opens', 'not stated': 'unstated' } as const

/** A report as a card would say it: letter for letter, its number with its standing of today, and what became of it. */
export function ReportTold({ report }: { report: Entry<ReportBody> }) {
  const { file, names } = useDeviceState()
  const { unit } = usePreference()
  const [now] = useState(() => new Date().toISOString())
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const { body } = report
  const position = file.positions.get(file.keptId(body.positionId))
  const range = position && file.ranges.get(file.keptId(position.body.rangeId))
  const furnace = body.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(body.furnaceId))
  const level = levelOfReport(file, report, furnace?.id, settings)
  const standing =
    position &&
    ratingAt(file, position, furnace === undefined ? {} : furnaceForRating(furnace), settings)[
      keys[body.action]
    ]
  const settlements = counting(file.settlements).filter(
    ({ body: { evidenceReportId, overruledReportIds } }) =>
      [evidenceReportId, ...overruledReportIds].includes(report.id),
  )
  const answered = body.requestId === undefined ? undefined : questionOf(file, body.requestId)
  return (
    <Stack>
      <p>
        <AsPrinted text={body.asWritten} />
      </p>
      <SetpointNumber
        {...body}
        unit={unit}
        decimals={body.unit === unit ? body.decimals : undefined}
        size="small"
        standing={{ level, asOf: body.saidOn ?? report.at, sources: [sourceLine(report, file, names)] }}
      />
      <p>
        {bundleLine(body)} · {coverWords(body)}
      </p>
      {position !== undefined && (
        <p>
          {report.withdrawn === undefined && standing !== undefined && `${placeWords(standing, report.id)} `}
          <a
            href={setpointHref({
              positionId: position.id,
              ...(furnace === undefined ? {} : { furnaceId: furnace.id }),
            })}
          >
            The setpoint of {position.body.name}
            {range === undefined ? '' : `, ${rangeWords(file, range)}`}
          </a>
        </p>
      )}
      {settlements.map((settlement) => (
        <p key={settlement.id}>
          <SettlementLine {...{ settlement, file, names }} />
        </p>
      ))}
      {answered !== undefined && (
        <p>
          It answers a question:{' '}
          <a href={`/record?id=${answered.lead.id}`}>{questionTitle(file, answered)}</a>
        </p>
      )}
    </Stack>
  )
}

/** Where the weighing of today puts a report. */
function placeWords({ reportIds, rivals, leads }: RatingStanding, id: string): string {
  if (reportIds.includes(id)) return 'It supports the number that is shown.'
  const rival = rivals.find((each) => each.reportIds.includes(id))
  if (rival !== undefined)
    return rival.disputes
      ? 'It stands against the number that is shown.'
      : 'It is listed as reported as well: better proof outweighs it.'
  const lead = leads.find(({ reportId }) => reportId === id)
  return lead === undefined ? 'It does not count today.' : `It is a lead. ${lead.why}`
}
