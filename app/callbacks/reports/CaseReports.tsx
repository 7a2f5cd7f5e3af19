'use client'

import type { Repeat } from '@/lib/core/callbacks/repeatsOf'
import { CaseLink } from '../../cases/work/CaseLink'
import { causeName } from '../../cases/work/causeName'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { DataTable } from '../../ui/paper/DataTable'
import { backWords } from '../backWords'
import { countOf } from '../countOf'
import { monthWords } from '../monthWords'
import { shareWords } from '../shareWords'
import { Report } from './Report'
import type { Reports } from './reportsSteps'

/** What callbacks said of causes, and how completely repairs were measured. */
export function CaseReports({ causes, measured }: Pick<Reports, 'causes' | 'measured'>) {
  const { file } = useDeviceState()
  const { overturned, sameAgain, notKnown } = causes
  const all = overturned.length + sameAgain.length + notKnown.length
  return (
    <>
      <Report
        title="Cause overturned on repeat"
        means="Callbacks opened in the period within 30 days of a finished job on the same furnace, both about the proving circuit, for which another cause was named than the first time."
      >
        {all > 0 && (
          <p>
            Of {countOf(all, 'callback')}: another cause {overturned.length}, the same again{' '}
            {sameAgain.length}, one of the two not named {notKnown.length}.
          </p>
        )}
        <DataTable
          caption="Another cause the second time"
          rows={overturned}
          rowKey={({ earlierId }) => earlierId}
          columns={[
            {
              key: 'first',
              words: 'First',
              cell: ({ earlierId }) => <CaseLink id={earlierId} file={file} />,
            },
            { key: 'was', words: 'Cause then', cell: ({ earlierCause }) => nameOf(earlierCause) },
            { key: 'later', words: 'Later', cell: ({ laterId }) => <CaseLink id={laterId} file={file} /> },
            { key: 'is', words: 'Cause then', cell: ({ laterCause }) => nameOf(laterCause) },
            { key: 'days', words: 'How long between', cell: backWords },
          ]}
          empty={
            <Empty
              what="No cause was overturned"
              why={
                all === 0
                  ? 'No job was called back in this period.'
                  : 'No callback of this period has another cause named than the first time.'
              }
              todo="A callback shows here once both cases have a cause."
            />
          }
        />
        <p>
          <a href="/callbacks">Repeat-call rates, and the time to a repeat</a> are on Callbacks.
        </p>
      </Report>
      <Report
        title="Before and after, and CO, by month"
        means="Repairs by the month in which their last visit ended: those with a reading as found and one after the repair, and those with CO measured after the repair in the room and in the flue. Under ten repairs no per cent is said."
      >
        <DataTable
          caption="Repairs measured"
          rows={measured}
          rowKey={({ month }) => month}
          columns={[
            { key: 'month', words: 'Month', cell: ({ month }) => monthWords(month) },
            {
              key: 'readings',
              words: 'Readings before and after',
              numeric: true,
              cell: ({ readings }) => shareWords(readings),
            },
            {
              key: 'co',
              words: 'CO in room and flue',
              numeric: true,
              cell: ({ coTests }) => shareWords(coTests),
            },
          ]}
          empty={
            <Empty
              what="No repair in this period"
              why="No case of it ended as repaired."
              todo="Choose a longer period."
            />
          }
        />
      </Report>
    </>
  )
}

const nameOf = (cause: Repeat['earlierCause']): string =>
  cause === 'not named' ? 'not named' : causeName(cause)
