import { DateWords } from './DateWords'
import styles from './words.module.css'

/** One report behind a number: what it rests on, who says so, and when. */
export type SourceLine = {
  key: string
  /** For instance `Label on the factory switch, photo`. */
  words: string
  /** A person's name. */
  who?: string
  /** ISO 8601 date or moment. */
  date: string
  /** Where the record itself can be read. */
  href?: string
  /** What else must be known, for instance `withdrawn: misread digit`. */
  note?: string
}

type Props = { sources: readonly SourceLine[]; label?: string }

/** The sources of a number with their dates. Says so when there are none. */
export function SourceList({ sources, label = 'Sources' }: Props) {
  if (sources.length === 0) return <p className={styles.quiet}>No source on file.</p>
  return (
    <ul className={styles.sources} aria-label={label}>
      {sources.map((source) => (
        <li key={source.key}>
          <span>
            {source.href ? <a href={source.href}>{source.words}</a> : source.words}
            {source.note && <span className={styles.note}>{source.note}</span>}
          </span>
          <span className={styles.by}>
            {source.who && `${source.who}, `}
            <DateWords at={source.date} />
          </span>
        </li>
      ))}
    </ul>
  )
}
