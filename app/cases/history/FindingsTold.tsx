import type { Entry } from '@/lib/records/fold/entry'
import type { FindingBody } from '@/lib/records/kinds/finding'
import { findingWords } from '../work/findingWords'
import styles from './history.module.css'
import { Withdrawn } from './LineTold'
import { onTheClock } from './momentWords'

type Props = { entries: readonly Entry<FindingBody>[]; who: (person: string) => string }

/** Findings that one person tapped one after another: one line, in which each has its own time and record. */
export function FindingsTold({ entries, who }: Props) {
  const times = entries.map(({ at }) => onTheClock(at).time)
  const [first, last] = [times[0], times.at(-1)]
  return (
    <li className={styles.line}>
      <p className={styles.said}>
        {first === last ? first : `${first} to ${last}`} {who(entries[0]!.by)}
      </p>
      <ul className={styles.findings} aria-label="Findings">
        {entries.map((entry) => (
          <li key={entry.id}>
            <a href={`/record?id=${entry.id}`} className={entry.withdrawn && styles.struck}>
              {findingWords(entry.body.finding, entry.body.value)}
            </a>{' '}
            <time dateTime={entry.at}>{onTheClock(entry.at).time}</time>
            {entry.body.note !== undefined && `. Note: ${entry.body.note}`}
            {entry.waiting && '. On this device only until it is sent.'}
            <Withdrawn entry={entry} who={who} />
          </li>
        ))}
      </ul>
    </li>
  )
}
