import type { ReactNode } from 'react'
import { Navigation } from './Navigation'
import styles from './shell.module.css'

/** What surrounds every page: a way past the navigation, the navigation, and the page itself. */
export function Shell({ children }: { children: ReactNode }) {
  return (
    <div className={styles.shell}>
      <a href="#content" className={styles.skip}>
        Skip to the content
      </a>
      <Navigation />
      <main id="content" tabIndex={-1} className={styles.content}>
        {children}
      </main>
    </div>
  )
}
