import type { MinutesFigure } from '@/lib/records/view/callbacks/costFigures'
import { DataTable } from '../ui/paper/DataTable'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { type Behind, behindShare } from './behind'
import { CaseFigure } from './CaseFigure'
import { outOf, sayMinutes } from './figureWords'
import { causeWords } from './groupWords'
import { OpenedCases } from './OpenedCases'
import type { SectionProps } from './section'
import { usePrinting } from './usePrinting'

const behindMinutes = (key: string, title: string, { saidIds, notSaidIds }: MinutesFigure): Behind => ({
  key: `minutes-${key}`,
  title,
  groups: () => [
    { words: 'With minutes on record', ids: saidIds },
    { words: 'Nobody said the minutes', ids: notSaidIds },
  ],
})

/** What the cases cost in minutes and parts, and how much of it went into coming back. */
export function Costs({ figures, file, opening }: SectionProps) {
  const printing = usePrinting()
  const { all, callbacks, byCause, parts } = figures.costs
  const whole = behindMinutes('all', 'Cases that ended in this time', all)
  const again = behindMinutes('callbacks', 'Cases that were callbacks', callbacks)
  const behindCause = new Map(
    byCause.map((figure) => [
      figure.key,
      behindMinutes(figure.key, `Minutes: ${causeWords(figure.key)}`, figure),
    ]),
  )
  const behindPart = new Map(
    parts.map(({ key, words, callbacks: share }) => [
      key,
      behindShare(`part-${key}`, `Part: ${words}`, share, ['On a callback', 'On a first visit']),
    ]),
  )
  const cases = all.saidIds.length + all.notSaidIds.length
  const figureOf = (of: Behind, figure: MinutesFigure) => (
    <CaseFigure of={of} opening={opening} says={sayMinutes(figure.minutes)}>
      {sayMinutes(figure.minutes)}
    </CaseFigure>
  )
  return (
    <Sheet
      title="What it cost"
      sub="Minutes and parts of all cases that ended in this time, in whatever way."
    >
      {cases === 0 ? (
        <p>No case ended in this time.</p>
      ) : (
        <>
          <p>
            {figureOf(whole, all)} of work on {cases === 1 ? 'one case' : `${cases} cases`}, of which{' '}
            {figureOf(again, callbacks)} on callbacks.
            {all.medianMinutes !== undefined &&
              ` Half of the cases took ${sayMinutes(all.medianMinutes)} or less.`}
            {all.notSaidIds.length > 0 &&
              ` Of ${all.notSaidIds.length} nobody said the minutes; they are not in the sum.`}
          </p>
          <Fold summary="Minutes by cause" open={printing}>
            {() => (
              <DataTable
                caption="Minutes by main cause"
                rowKey={({ key }) => key}
                rows={byCause}
                columns={[
                  { key: 'cause', words: 'Cause', cell: ({ key }) => causeWords(key) },
                  {
                    key: 'minutes',
                    words: 'Work',
                    cell: (figure) => figureOf(behindCause.get(figure.key)!, figure),
                  },
                  {
                    key: 'cases',
                    words: 'Cases',
                    numeric: true,
                    cell: ({ saidIds, notSaidIds }) => saidIds.length + notSaidIds.length,
                  },
                  {
                    key: 'median',
                    words: 'Half took at most',
                    cell: ({ medianMinutes }) =>
                      medianMinutes === undefined ? 'not said' : sayMinutes(medianMinutes),
                  },
                ]}
                empty={null}
              />
            )}
          </Fold>
          <Fold summary="Parts" open={printing}>
            {() => (
              <DataTable
                caption="Parts and material, most cases first"
                rowKey={({ key }) => key}
                rows={parts}
                columns={[
                  { key: 'part', words: 'Part', cell: ({ words }) => words },
                  { key: 'cases', words: 'Cases', numeric: true, cell: ({ callbacks: { of } }) => of },
                  {
                    key: 'again',
                    words: 'Of them callbacks',
                    cell: ({ key, callbacks: share }) => (
                      <CaseFigure of={behindPart.get(key)!} opening={opening} says={outOf(share)}>
                        {outOf(share)}
                      </CaseFigure>
                    ),
                  },
                ]}
                empty={<p>No part is on record in this time.</p>}
              />
            )}
          </Fold>
          <Quiet>
            Prices are not on record here. Factory parts are named by their number, material as it was typed.
          </Quiet>
        </>
      )}
      <OpenedCases
        of={[whole, again, ...behindCause.values(), ...behindPart.values()]}
        open={opening.open}
        file={file}
        callbacks={figures.callbacks}
      />
    </Sheet>
  )
}
