import type { ReactNode } from 'react'
import styles from './answers.module.css'

type Props = {
  /** What is not here. */
  what: ReactNode
  /** Why that is so. */
  why: ReactNode
  /** What to do now: words, a link or a button. */
  todo: ReactNode
  /** It stands in place of a whole page: what is missing is then the page’s heading. */
  page?: boolean
}

/** In place of a list, or a page, that has nothing to show. */
export function Empty({ what, why, todo, page = false }: Props) {
  const What = page ? 'h1' : 'p'
  return (
    <div className={styles.empty}>
      <What className={styles.what}>{what}</What>
      <p>{why}</p>
      <div className={styles.todo}>{todo}</div>
    </div>
  )
}
