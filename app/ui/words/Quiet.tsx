import type { ReactNode } from 'react'
import styles from './words.module.css'

/** Text that supports and doesn't speak first. A paragraph, unless it stands inside a line. */
export function Quiet({ children, inline = false }: { children: ReactNode; inline?: boolean }) {
  return inline ? (
    <span className={styles.quiet}>{children}</span>
  ) : (
    <p className={styles.quiet}>{children}</p>
  )
}
