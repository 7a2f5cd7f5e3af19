import type { ReactNode } from 'react'
import styles from './answers.module.css'

/** A line of trouble for the person who must act. It is read out when it appears; nothing shows without words. */
export function Problem({ children, id }: { children?: ReactNode; id?: string }) {
  if (!children) return null
  return (
    <p role="alert" id={id} className={styles.problem}>
      {children}
    </p>
  )
}
