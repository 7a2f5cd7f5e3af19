'use client'

import type { SwapsShown } from '@/lib/records/view/swaps/unjustifiedSwaps'
import { CaseLink } from '../../cases/work/CaseLink'
import { useDeviceState } from '../../device/deviceContext'
import { Empty } from '../../ui/answers/Empty'
import { DataTable } from '../../ui/paper/DataTable'
import { shareWords } from '../shareWords'
import { afterwardsWords } from '../swaps/swapWords'
import { Report } from './Report'

/** What was on record when switches were replaced. */
export function SwapReports({ swaps: { all, flagged } }: { swaps: SwapsShown }) {
  const { file } = useDeviceState()
  const share = (count: number) => shareWords({ count, of: all.length })
  const below = flagged.filter(({ almostCertainlyWrong }) => almostCertainlyWrong)
  return (
    <>
      <Report
        title="Switches replaced without justification"
        means="Replacements for which something that must be on record first was missing, of all replacements of a switch in the period, by the day of the repair. Each was held against what stood just before it."
      >
        <DataTable
          caption="Replacements of a switch"
          rows={[
            {
              words: 'Something was missing before',
              count: all.filter(({ missing }) => missing.length > 0).length,
            },
            {
              words: 'No reading before that could be held against the make point',
              count: all.filter(({ reading }) => reading === 'none').length,
            },
            {
              words: 'No reading afterwards at that switch',
              count: all.filter(({ readAfterwards }) => !readAfterwards).length,
            },
            { words: 'On no case', count: all.filter(({ caseId }) => caseId === undefined).length },
          ].slice(0, all.length === 0 ? 0 : undefined)}
          rowKey={({ words }) => words}
          columns={[
            { key: 'what', words: 'What', cell: ({ words }) => words },
            { key: 'count', words: 'Replacements', numeric: true, cell: ({ count }) => share(count) },
          ]}
          empty={
            <Empty
              what="No switch was replaced"
              why="No repair of this period says that a pressure switch was replaced."
              todo="Choose a longer period, or be glad of it."
            />
          }
        />
        <p>
          <a href="/swaps">Which ones, what was missing, and what happened afterwards</a>
        </p>
      </Report>
      <Report
        title="Switches replaced while the reading was below make"
        means="Cases of the period in which the reading before the replacement was too low to close any sound switch: almost certainly the wrong fix."
      >
        <DataTable
          caption="Cases"
          rows={below}
          rowKey={({ caseId }) => caseId}
          columns={[
            { key: 'case', words: 'Case', cell: ({ caseId }) => <CaseLink id={caseId} file={file} /> },
            { key: 'after', words: 'Afterwards', cell: ({ afterwards }) => afterwardsWords(afterwards) },
          ]}
          empty={
            <Empty
              what="None"
              why="No switch of this period was replaced on a reading below its make point."
              todo="Only replacements with a reading on record can show here."
            />
          }
        />
      </Report>
    </>
  )
}
