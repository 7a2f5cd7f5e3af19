import type { ReactNode } from 'react'
import styles from './paper.module.css'

/** One named fact. `key` need only differ from the others of its list. */
export type Fact = { key: string; name: ReactNode; value: ReactNode }

/** Named facts one below the other, or side by side where there is room. */
export function Facts({ facts }: { facts: readonly Fact[] }) {
  return (
    <dl className={styles.facts}>
      {facts.map((fact) => (
        <div key={fact.key}>
          <dt>{fact.name}</dt>
          <dd>{fact.value}</dd>
        </div>
      ))}
    </dl>
  )
}
