import { Sheet } from '../ui/paper/Sheet'
import type { Behind } from './behind'
import { CaseFigure } from './CaseFigure'
import styles from './callbacks.module.css'
import { OpenedCases } from './OpenedCases'
import type { SectionProps } from './section'

const apart = (key: string, title: string, ids: readonly string[]): Behind & { count: string } => ({
  key: `apart-${key}`,
  title,
  groups: () => [{ words: 'Cases', ids }],
  count: `${ids.length}`,
})

/** Cases that are in no figure, or not as they were said, so that nobody has to wonder. */
export function Apart({ figures, file, opening }: SectionProps) {
  const { endingsDisagree, proofLacksSomething, notEnded } = figures.apart
  const rows: (Behind & { count: string })[] = [
    apart(
      'proof',
      'Said to be proven, but the proof lacks something: counted as not proven',
      proofLacksSomething,
    ),
    apart(
      'disagree',
      'Two endings of one visit stand side by side: in no figure until one is withdrawn',
      endingsDisagree,
    ),
    apart('open', 'Opened in this time and not ended yet: in no figure but as a callback', notEnded),
  ]
  return (
    <Sheet title="Not in these figures, or not as it was said">
      <ul className={styles.key}>
        {rows.map((row) => (
          <li key={row.key}>
            <CaseFigure of={row} opening={opening} says={row.count}>
              {row.count}
            </CaseFigure>
            <span>{row.title}</span>
          </li>
        ))}
      </ul>
      <OpenedCases of={rows} open={opening.open} file={file} callbacks={figures.callbacks} />
    </Sheet>
  )
}
