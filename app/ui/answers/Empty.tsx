import type { ReactNode } from 'react'
import styles from './answers.module.css'

type Props = {
  /** What is not here. */
  what: ReactNode
  /** Why that is so. */
  why: ReactNode
  /** What to do now: words, a link or a button. */
  todo: ReactNode
}

/** In place of a list that has nothing to show. */
export function Empty({ what, why, todo }: Props) {
  return (
    <div className={styles.empty}>
      <p className={styles.what}>{what}</p>
      <p>{why}</p>
      <div className={styles.todo}>{todo}</div>
    </div>
  )
}
