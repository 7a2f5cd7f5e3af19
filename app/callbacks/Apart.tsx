import { Sheet } from '../ui/paper/Sheet'
import type { Behind } from './behind'
import { CaseFigure } from './CaseFigure'
import styles from './callbacks.module.css'
import { OpenedCases } from './OpenedCases'
import type { SectionProps } from './section'

/** Cases that are in no figure, or not as they were said, so that nobody has to wonder. */
export function Apart({ figures, file, opening }: SectionProps) {
  const { endingsDisagree, proofLacksSomething, notEnded } = figures.apart
  const rows: Behind[] = [
    {
      key: 'apart-proof',
      title: 'Said to be proven, but the proof lacks something: counted as not proven',
      groups: [{ words: 'Cases', ids: proofLacksSomething }],
    },
    {
      key: 'apart-disagree',
      title: 'Two endings of one visit stand side by side: in no figure until one is withdrawn',
      groups: [{ words: 'Cases', ids: endingsDisagree }],
    },
    {
      key: 'apart-open',
      title: 'Opened in this time and not ended yet: in no figure but as a callback',
      groups: [{ words: 'Cases', ids: notEnded }],
    },
  ]
  return (
    <Sheet title="Not in these figures, or not as it was said">
      <ul className={styles.key}>
        {rows.map((row) => {
          const count = `${row.groups[0]!.ids.length}`
          return (
            <li key={row.key}>
              <CaseFigure of={row} opening={opening} says={count}>
                {count}
              </CaseFigure>
              <span>{row.title}</span>
            </li>
          )
        })}
      </ul>
      <OpenedCases of={rows} open={opening.open} file={file} callbacks={figures.callbacks} />
    </Sheet>
  )
}
