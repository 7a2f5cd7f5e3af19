import type { ReactNode } from 'react'
import styles from './answers.module.css'

type Props = {
  /** What can't be done, in a sentence. */
  title: ReactNode
  /** The rule that forbids it, in its own words. */
  rule: ReactNode
  why: ReactNode
  /** What to do instead: words, links or buttons. */
  instead: ReactNode
}

/** A refusal: it names the rule, says why, and says what to do instead. It is read out when it appears. */
export function Refusal({ title, rule, why, instead }: Props) {
  return (
    <div className={styles.refusal} role="alert">
      <p className={styles.what}>{title}</p>
      <dl>
        <dt>The rule</dt>
        <dd>{rule}</dd>
        <dt>Why</dt>
        <dd>{why}</dd>
        <dt>Instead</dt>
        <dd>{instead}</dd>
      </dl>
    </div>
  )
}
