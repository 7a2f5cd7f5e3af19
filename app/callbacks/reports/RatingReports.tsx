'use client'

import type { Level } from '@/lib/core/vocabulary'
import { needsOf } from '@/lib/records/view/desk/need'
import { askedAt } from '@/lib/records/view/leftUndone/oldRequests'
import type { FamilyHealth } from '@/lib/records/view/reports/ratingHealth'
import { useDeviceState } from '../../device/deviceContext'
import { rangeWords } from '../../equipment/candidates'
import { calibrationWords } from '../../gauges/gaugeWords'
import { questionTitle } from '../../phoneDesk/questionWords'
import { Empty } from '../../ui/answers/Empty'
import { type Column, DataTable } from '../../ui/paper/DataTable'
import { sayAge } from '../../ui/words/sayAge'
import { Report } from './Report'
import type { Reports } from './reportsSteps'

/** The numbers that work rests on: asked for, on file, and measured with. */
export function RatingReports({
  requests,
  health,
  gauges,
  now,
}: Pick<Reports, 'requests' | 'health' | 'gauges'> & { now: string }) {
  const { file } = useDeviceState()
  return (
    <>
      <Report
        title="Open rating requests"
        means="Every rating that was asked for and has no answer on file, whenever it was asked; requests that ask the same are one. The oldest first."
      >
        <DataTable
          caption="Waiting for an answer"
          rows={requests}
          rowKey={({ lead }) => lead.id}
          columns={[
            {
              key: 'what',
              words: 'Rating',
              cell: (question) => (
                <a href={`/call?request=${question.lead.id}`}>{questionTitle(file, question)}</a>
              ),
            },
            { key: 'age', words: 'Asked', cell: (question) => sayAge(askedAt(question), now) },
            {
              key: 'job',
              words: 'What waits for it',
              cell: (question) =>
                [...question.furnaces.map(({ body }) => body.siteLabel), ...needsOf(file, question)].join(
                  ', ',
                ) || 'no furnace named',
            },
            { key: 'calls', words: 'Calls made', numeric: true, cell: ({ calls }) => calls.length },
          ]}
          empty={
            <Empty
              what="Nobody is waiting for a rating"
              why="Every question from the field has its answer on file."
              todo="Questions are asked from the setpoint, or on the Phone desk."
            />
          }
        />
      </Report>
      <Report
        title="Rating health by family"
        means="For each model range, how the numbers that prove the draft stand today: where the switch closes or, for one that opens on rise, where it opens. Where a number stands differently for some furnaces on file, the least reliable counts. Ranges with most that nobody can rely on come first."
      >
        <DataTable
          caption="Switches by level"
          rows={health}
          rowKey={({ range }) => range.id}
          columns={[
            {
              key: 'range',
              words: 'Model range',
              cell: ({ range }) => <a href={`/equipment/range?id=${range.id}`}>{rangeWords(file, range)}</a>,
            },
            ...(['Verified', 'Supported', 'Unverified', 'In dispute', 'Not on file'] as const).map(
              levelColumn,
            ),
            countColumn('single', 'On one report alone', ({ single }) => single),
            countColumn('old', 'Held down by old calls', ({ heldDownBy }) =>
              heldDownBy.includes('old calls'),
            ),
            countColumn('superseded', 'Held down by a superseded part', ({ heldDownBy }) =>
              heldDownBy.includes('superseded part number'),
            ),
          ]}
          empty={
            <Empty
              what="No switch is on file"
              why="No model range has a switch position yet."
              todo={<a href="/equipment">Add the ranges that the team works on</a>}
            />
          }
        />
      </Report>
      <Report
        title="Gauge calibration due"
        means="Gauges whose calibration has run out, runs out within 30 days, or has no date on file."
      >
        <DataTable
          caption="Gauges"
          rows={gauges}
          rowKey={({ gauge }) => gauge.id}
          columns={[
            {
              key: 'gauge',
              words: 'Gauge',
              cell: ({ gauge }) => <a href={`/record?id=${gauge.id}`}>{gauge.body.name}</a>,
            },
            {
              key: 'due',
              words: 'Calibration',
              cell: ({ gauge }) =>
                calibrationWords(gauge.body.calibrationDue, now.slice(0, 'yyyy-mm-dd'.length)),
            },
          ]}
          empty={
            <Empty
              what="No gauge is due"
              why="Every gauge on file is calibrated for more than 30 days yet."
              todo="Nothing to send away."
            />
          }
        />
      </Report>
    </>
  )
}

const levelColumn = (level: Level): Column<FamilyHealth> => ({
  key: level,
  words: level,
  numeric: true,
  cell: ({ byLevel }) => byLevel[level],
})

const countColumn = (
  key: string,
  words: string,
  counts: (rating: FamilyHealth['ratings'][number]) => boolean,
): Column<FamilyHealth> => ({
  key,
  words,
  numeric: true,
  cell: ({ ratings }) => ratings.filter(counts).length,
})
