import type { ReactNode } from 'react'
import styles from './paper.module.css'

type Props = {
  /** A WaterColumn. */
  picture: ReactNode
  /** What the picture illustrates, in words and figures. */
  children: ReactNode
  /** What follows below both, over the whole width. */
  below?: ReactNode
}

/**
 * A picture with its words beside it. Words that are taller than the picture go on below it, over the whole width;
 * where it is too narrow for both, they begin there.
 */
export function Beside({ picture, children, below }: Props) {
  return (
    <div className={styles.besideRoom}>
      <div className={styles.beside}>
        <div className={styles.picture}>{picture}</div>
        <div className={styles.besideWords}>{children}</div>
      </div>
      {below}
    </div>
  )
}
