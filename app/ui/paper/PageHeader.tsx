import type { ReactNode } from 'react'
import styles from './paper.module.css'

type Props = {
  title: ReactNode
  /** What this page is for, in a sentence. */
  lead?: ReactNode
  /** Where it lies, for instance a link back to the list. */
  above?: ReactNode
  /** What can be done from here. */
  actions?: ReactNode
}

/** The head of a page; its title is the only first-level heading. */
export function PageHeader({ title, lead, above, actions }: Props) {
  return (
    <header className={styles.pageHeader}>
      {above && <div className={styles.above}>{above}</div>}
      <h1>{title}</h1>
      {lead && <p className={styles.lead}>{lead}</p>}
      {actions && <div className={styles.actions}>{actions}</div>}
    </header>
  )
}
