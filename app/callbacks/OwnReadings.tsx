import type { ReadingShares } from '@/lib/records/view/callbacks/readingFigures'
import { ChartFrame } from '../ui/charts/ChartFrame'
import { MonthBars } from '../ui/charts/MonthBars'
import { DataTable } from '../ui/paper/DataTable'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { sayMonth } from '../ui/words/sayMonth'
import { type Behind, behindShare } from './behind'
import { CaseFigure } from './CaseFigure'
import { outOf, shareWithInterval } from './figureWords'
import { OpenedCases } from './OpenedCases'
import { linkOf, type SectionProps } from './section'
import { usePrinting } from './usePrinting'

const behindReadings = (key: string, when: string, { both }: ReadingShares): Behind =>
  behindShare(`readings-${key}`, `Repairs ${when} with readings before and after`, both, [
    'With both readings',
    'Without one of them, or both',
  ])

/** How many of the team's own repairs have readings before and after: what it can better by itself, at once. */
export function OwnReadings({ figures, file, opening }: SectionProps) {
  const printing = usePrinting()
  const { all, months } = figures.readings
  const whole = behindReadings('all', 'in this time', all)
  const behind = new Map(
    months.map((month) => [month.month, behindReadings(month.month, `of ${sayMonth(month.month)}`, month)]),
  )
  return (
    <Sheet
      title="Readings before and after"
      sub="The team’s own work, and the first thing to better: a repair without both readings proves nothing to whoever comes next."
    >
      {all.both.of === 0 ? (
        <p>No repair ended in this time.</p>
      ) : (
        <>
          <p>
            <CaseFigure of={whole} opening={opening} says={outOf(all.both)}>
              {outOf(all.both)}
            </CaseFigure>{' '}
            repairs have a reading as found and one after the repair ({shareWithInterval(all.both)}). A
            reading as found: {outOf(all.before)}. A reading after the repair: {outOf(all.after)}.
          </p>
          <ChartFrame
            begins="at the right"
            legend="Each column is the repairs of a month. Filled: both readings. Lines: one of the two. Empty: none."
          >
            {(width) => (
              <MonthBars
                width={width}
                label="Repairs by month, with and without readings before and after"
                months={months.map((month) => ({
                  month: month.month,
                  whole: month.both.count,
                  part: month.before.count + month.after.count - 2 * month.both.count,
                  of: month.both.of,
                  says: `${sayMonth(month.month)}: ${outOf(month.both)} repairs with both readings`,
                }))}
                linkOf={(month) => linkOf(behind.get(month)!, opening)}
              />
            )}
          </ChartFrame>
          <Fold summary="The picture in figures" open={printing}>
            {() => (
              <DataTable
                caption="Repairs with readings, by month"
                rowKey={({ month }) => month}
                rows={months.toReversed()}
                columns={[
                  { key: 'month', words: 'Month', cell: ({ month }) => sayMonth(month) },
                  {
                    key: 'both',
                    words: 'Both readings',
                    cell: ({ month, both }) => (
                      <CaseFigure of={behind.get(month)!} opening={opening} says={outOf(both)}>
                        {outOf(both)}
                      </CaseFigure>
                    ),
                  },
                  {
                    key: 'share',
                    words: 'That is',
                    cell: ({ both }) => (both.of === 0 ? 'no repair' : shareWithInterval(both)),
                  },
                  { key: 'before', words: 'As found', cell: ({ before }) => outOf(before) },
                  { key: 'after', words: 'After the repair', cell: ({ after }) => outOf(after) },
                ]}
                empty={null}
              />
            )}
          </Fold>
          <Quiet>
            Only repairs count: where no fault was found, or the repair was declined, there is no after.
          </Quiet>
        </>
      )}
      <OpenedCases
        of={[whole, ...behind.values()]}
        open={opening.open}
        file={file}
        callbacks={figures.callbacks}
      />
    </Sheet>
  )
}
