import { type ReactNode, useId } from 'react'
import styles from './paper.module.css'

type Props = {
  children: ReactNode
  /** The sheet is named by it; without a title it is a plain group. */
  title?: ReactNode
  /** One line below the title. */
  sub?: ReactNode
  /** Level of the title in the page's outline. */
  heading?: 2 | 3
  /** What can be done with it, at its foot. */
  foot?: ReactNode
}

/** A sheet of paper on the desk: one thing, whole. */
export function Sheet({ children, title, sub, heading = 2, foot }: Props) {
  const titleId = useId()
  const Heading = heading === 2 ? 'h2' : 'h3'
  return (
    <article className={styles.sheet} aria-labelledby={title ? titleId : undefined}>
      {title && (
        <header className={styles.head}>
          <Heading id={titleId}>{title}</Heading>
          {sub && <p className={styles.sub}>{sub}</p>}
        </header>
      )}
      <div className={styles.body}>{children}</div>
      {foot && <footer className={styles.foot}>{foot}</footer>}
    </article>
  )
}
