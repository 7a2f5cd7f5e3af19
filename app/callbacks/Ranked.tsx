import { fewestForShare } from '@/lib/records/view/callbacks/caseShare'
import type { RankedGroup } from '@/lib/records/view/callbacks/rankedGroups'
import { IntervalMark } from '../ui/charts/IntervalMark'
import { DataTable } from '../ui/paper/DataTable'
import { Fold } from '../ui/paper/Fold'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { behindShare } from './behind'
import { CaseFigure } from './CaseFigure'
import { outOf, shareWithInterval } from './figureWords'
import { OpenedCases } from './OpenedCases'
import type { SectionProps } from './section'
import { usePrinting } from './usePrinting'

type Props = SectionProps & {
  name: string
  title: string
  sub: string
  /** What a row is. */
  rowWords: string
  groups: readonly RankedGroup[]
  groupWords: (key: string) => string
}

/** Groups of jobs, those with most callbacks first, each with how far chance alone could move its share. */
export function Ranked({ name, title, sub, rowWords, groups, groupWords, figures, file, opening }: Props) {
  const behind = new Map(
    groups.map(({ key, cameBack }) => [
      key,
      behindShare(`${name}-${key}`, `Jobs: ${groupWords(key)}`, cameBack),
    ]),
  )
  const { settled } = figures
  const printing = usePrinting()
  const [cameBack, never] = [
    groups.filter((group) => group.cameBack.count > 0),
    groups.filter((group) => group.cameBack.count === 0),
  ]
  const centre = settled.of === 0 ? undefined : settled.count / settled.of
  const upTo = Math.max(
    0.1,
    ...groups.flatMap(({ cameBack: { of, interval95 } }) =>
      of < fewestForShare || interval95 === undefined ? [] : [interval95[1]],
    ),
  )
  const table = (caption: string, rows: readonly RankedGroup[]) => (
    <DataTable
      caption={caption}
      rowKey={({ key }) => key}
      rows={rows}
      columns={[
        { key: 'group', words: rowWords, cell: ({ key }) => groupWords(key) },
        {
          key: 'back',
          words: 'Came back',
          cell: ({ key, cameBack }) => (
            <>
              <CaseFigure of={behind.get(key)!} opening={opening} says={outOf(cameBack)}>
                {outOf(cameBack)}
              </CaseFigure>
              <Quiet>{shareWithInterval(cameBack)}</Quiet>
            </>
          ),
        },
        {
          key: 'picture',
          words: 'Against all jobs together',
          cell: ({ key, cameBack: { count, of, interval95 } }) =>
            of < fewestForShare || interval95 === undefined ? null : (
              <CaseFigure
                of={behind.get(key)!}
                opening={opening}
                says={shareWithInterval({ count, of, interval95 })}
              >
                <IntervalMark
                  share={count / of}
                  interval={interval95}
                  upTo={upTo}
                  {...(centre === undefined ? {} : { centre })}
                />
              </CaseFigure>
            ),
        },
      ]}
      empty={null}
    />
  )
  return (
    <Sheet title={title} sub={sub}>
      {groups.length === 0 && <p>No job of a settled month in this time, so there is nothing to rank yet.</p>}
      {cameBack.length > 0 && table(`${title}, most callbacks first`, cameBack)}
      {never.length > 0 && (
        <Fold summary={`${never.length} without a callback`} open={printing}>
          {() => table(`${title} without a callback`, never)}
        </Fold>
      )}
      {groups.length > 0 && (
        <Quiet>
          The line through all rows is the share of all jobs together. A bar that reaches over it differs from
          it by no more than chance easily makes. Where a group has fewer than ten jobs, only the count is
          said.
        </Quiet>
      )}
      <OpenedCases of={[...behind.values()]} open={opening.open} file={file} callbacks={figures.callbacks} />
    </Sheet>
  )
}
