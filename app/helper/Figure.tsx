import { Button } from '../ui/form/Button'
import { countOf } from './figureWords'
import styles from './helper.module.css'
import type { Opened } from './openedCases'

type Props = { of: Opened; isOpen: boolean; onOpen: (opened: Opened | undefined) => void }

/** A figure that opens the cases behind it, and closes them again. */
export function Figure({ of, isOpen, onOpen }: Props) {
  const hits = of.counted.length
  const cases = hits + of.others.length
  return (
    <Button
      kind="quiet"
      className={styles.figure}
      aria-expanded={isOpen}
      aria-label={`${of.title}: ${countOf({ hits, cases })}`}
      onClick={() => onOpen(isOpen ? undefined : of)}
    >
      {countOf({ hits, cases })}
    </Button>
  )
}
