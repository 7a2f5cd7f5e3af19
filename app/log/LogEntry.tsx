import type { Role } from '@/lib/records/envelope'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { recordTitle } from '../record/recordTitle'
import { fieldOf } from '../record/recordWords'
import { type About, person } from '../record/shown'
import { maybeWithheld } from '../record/withheldFields'
import { DateWords } from '../ui/words/DateWords'
import styles from './log.module.css'
import type { LogRow } from './logRows'
import { levelWords, whatItChanged } from './whatItChanged'

type Props = { row: LogRow; file: TeamFile; about: About; role: Role }

/** An entry of the log: its number, what was said, by whom and when, what it changed, and what became of it since. */
export function LogEntry({ row: { kind, entry, seq }, file, about, role }: Props) {
  const { id, body, by, at, withdrawn, withheld } = entry
  const levels = levelWords(file, id)
  return (
    <div className={styles.entry}>
      <p className={styles.head}>
        <span className={styles.number}>{seq === undefined ? 'Not sent yet' : seq}</span>{' '}
        <a href={`/record?id=${id}`}>{recordTitle(kind, body)}</a>
      </p>
      <p className={styles.by}>
        {person(by, about)}, <DateWords at={at} withTime />
      </p>
      <p>{whatItChanged(kind, body, about)}</p>
      {levels !== undefined && <p>{levels}</p>}
      {withdrawn !== undefined && (
        <p>
          Withdrawn since by <a href={`/record?id=${withdrawn.id}`}>{entryWords(file, withdrawn.id)}</a>:{' '}
          {withdrawn.reason}
        </p>
      )}
      {withheld !== undefined && (
        <p>
          Withheld by <a href={`/record?id=${withheld.by}`}>{entryWords(file, withheld.by)}</a>:{' '}
          {withheld.fields.map((field) => fieldOf(kind, field).name).join(', ')}
        </p>
      )}
      {maybeWithheld(kind, entry, role).length > 0 && (
        <p className={styles.act}>
          <a href={`/withhold?record=${id}`}>Withhold personal data</a>
        </p>
      )}
    </div>
  )
}

/** A record by its number in the log; by nothing but that while it has none. */
function entryWords(file: TeamFile, id: string): string {
  const seq = file.records.get(id)?.seq
  return seq === undefined ? 'a record that waits to be sent' : `record ${seq}`
}
