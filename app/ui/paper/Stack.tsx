import type { ReactNode } from 'react'
import styles from './paper.module.css'

/** Things one below the other, at the distance that the pages keep. */
export function Stack({ children }: { children: ReactNode }) {
  return <div className={styles.stack}>{children}</div>
}

/** Things side by side where there is room for 20 rem each, else one below the other. */
export function SideBySide({ children }: { children: ReactNode }) {
  return <div className={styles.sideBySide}>{children}</div>
}

/** Buttons in a row that wraps. */
export function Row({ children }: { children: ReactNode }) {
  return <div className={styles.row}>{children}</div>
}
