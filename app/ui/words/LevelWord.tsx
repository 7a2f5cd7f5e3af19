import type { Level } from '@/lib/core/vocabulary'
import { DateWords } from './DateWords'
import styles from './words.module.css'

/** How far a number can be trusted, and since when. Nothing is shown with the one but not the other. */
export type DatedLevel = { level: Exclude<Level, 'Not on file'>; asOf: string }

type Props = DatedLevel | { level: 'Not on file'; asOf?: string }

/** The level of a standing: a word with a date, in the ink of everything else. */
export function LevelWord({ level, asOf }: Props) {
  return (
    <span className={styles.level}>
      <b>{level}</b>
      {asOf && (
        <>
          {' '}
          <DateWords at={asOf} />
        </>
      )}
    </span>
  )
}
