import { type ReactNode, useId } from 'react'
import styles from './reports.module.css'

type Props = { title: string; means: ReactNode; children: ReactNode }

/** One report, with its definition above it: what is counted, of what, and what is left out. */
export function Report({ title, means, children }: Props) {
  const id = useId()
  return (
    <section aria-labelledby={id} className={styles.report}>
      <h2 id={id}>{title}</h2>
      <p className={styles.means}>{means}</p>
      {children}
    </section>
  )
}
