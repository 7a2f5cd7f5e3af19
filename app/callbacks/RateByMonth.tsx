import { fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import type { MonthFigure } from '@/lib/records/view/callbacks/monthFigures'
import { ChartFrame } from '../ui/charts/ChartFrame'
import { ControlChart, type ControlMonth } from '../ui/charts/ControlChart'
import { DataTable } from '../ui/paper/DataTable'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { sayMonth } from '../ui/words/sayMonth'
import { behindShare } from './behind'
import { CaseFigure } from './CaseFigure'
import { outOf, perCentWords, shareWithInterval, smallNumber } from './figureWords'
import { untilWords } from './lastDay'
import { OpenedCases } from './OpenedCases'
import { linkOf, type SectionProps } from './section'
import { usePrinting } from './usePrinting'

/** How many jobs came back, month by month, and whether a month stands out by more than chance. */
export function RateByMonth({ figures, file, opening }: SectionProps) {
  const printing = usePrinting()
  const { settled, open, months } = figures
  const all = behindShare('settled', 'Jobs of settled months', settled)
  const young = behindShare('open', 'Jobs of months still open', open, ['Came back so far', 'Not so far'])
  const behind = new Map(
    months.map(({ month, standing, cameBack }) => [
      month,
      behindShare(
        `month-${month}`,
        `Jobs of ${sayMonth(month)}`,
        cameBack,
        standing === 'open' ? ['Came back so far', 'Not so far'] : undefined,
      ),
    ]),
  )
  const outside = months.filter(({ point }) => point !== undefined && point.verdict !== 'within')
  return (
    <Sheet title="Jobs that came back, by month" sub="The month is that in which the job was done.">
      <p>
        In settled months{' '}
        <CaseFigure of={all} opening={opening} says={outOf(settled)}>
          {outOf(settled)}
        </CaseFigure>{' '}
        jobs came back{settled.of > 0 && ` (${shareWithInterval(settled)})`}. In months still open{' '}
        <CaseFigure of={young} opening={opening} says={outOf(open)}>
          {outOf(open)}
        </CaseFigure>{' '}
        so far.
      </p>
      {smallNumber(settled.of) && <p>{smallNumber(settled.of)}</p>}
      {months.length > 0 && (
        <>
          <ChartFrame
            begins="at the right"
            legend="Filled: a settled month. Small and hollow: fewer than ten jobs, too few for a rate. Broken outline: still open, it can grow. Between the broken lines chance alone explains the month; a ring marks one outside."
          >
            {(width) => (
              <ControlChart
                width={width}
                label="Share of jobs that came back, by month"
                months={months.map(asDrawn)}
                linkOf={(month) => linkOf(behind.get(month)!, opening)}
              />
            )}
          </ChartFrame>
          <p>{outsideWords(outside)}</p>
          {months.some(({ roughLimits }) => roughLimits) && (
            <Quiet>
              In most months so few callbacks are to be expected that the limits are rough: one more can put a
              small month outside by itself.
            </Quiet>
          )}
          <Fold summary="The picture in figures" open={printing}>
            {() => (
              <DataTable
                caption="Jobs and callbacks by month"
                rowKey={({ month }) => month}
                rows={months.toReversed()}
                columns={[
                  { key: 'month', words: 'Month', cell: ({ month }) => sayMonth(month) },
                  {
                    key: 'back',
                    words: 'Came back',
                    cell: ({ month, cameBack }) => (
                      <CaseFigure of={behind.get(month)!} opening={opening} says={outOf(cameBack)}>
                        {outOf(cameBack)}
                      </CaseFigure>
                    ),
                  },
                  {
                    key: 'fixes',
                    words: 'Of those proven',
                    cell: ({ fixesThatCameBack }) => outOf(fixesThatCameBack),
                  },
                  { key: 'share', words: 'That is', cell: shareOfMonth },
                  { key: 'limits', words: 'Limits', cell: limitsOf },
                ]}
                empty={null}
              />
            )}
          </Fold>
        </>
      )}
      <OpenedCases
        of={[all, young, ...behind.values()]}
        open={opening.open}
        file={file}
        callbacks={figures.callbacks}
      />
    </Sheet>
  )
}

function asDrawn({ month, standing, cameBack, point }: MonthFigure): ControlMonth {
  const says = `${sayMonth(month)}, ${standing}: ${outOf(cameBack)} jobs came back${
    point === undefined || point.verdict === 'within' ? '' : `, ${point.verdict} the limits`
  }`
  return {
    month,
    ...(cameBack.of === 0 ? {} : { share: cameBack.count / cameBack.of }),
    ...(point === undefined ? {} : { limits: point, verdict: point.verdict }),
    look: standing,
    few: cameBack.of < fewestForShare,
    says,
  }
}

const shareOfMonth = ({ standing, settlesAt, cameBack }: MonthFigure): string =>
  standing === 'open'
    ? `open: ${untilWords(settlesAt)}`
    : cameBack.of === 0
      ? 'no job'
      : shareWithInterval(cameBack)

const limitsOf = ({ point }: MonthFigure): string =>
  point === undefined
    ? '–'
    : `${perCentWords(point.lower)} to ${perCentWords(point.upper)}${point.verdict === 'within' ? '' : `: ${point.verdict}`}`

function outsideWords(outside: readonly MonthFigure[]): string {
  if (outside.length === 0)
    return 'No settled month lies outside its limits: the months differ by no more than chance makes them. There is nothing to explain in one of them.'
  const named = outside.map(({ month, point }) => `${sayMonth(month)} (${point?.verdict})`).join(', ')
  return `Outside its limits: ${named}. Look at those cases first.`
}
