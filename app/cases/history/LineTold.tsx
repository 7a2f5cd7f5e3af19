import type { ReactNode } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { classNames } from '../../ui/classNames'
import { sayDate } from '../../ui/words/sayDate'
import styles from './history.module.css'
import { dayWords, isAfter, isBefore, momentWords, onTheClock } from './momentWords'

type Props = {
  entry: Entry<unknown>
  /** The day that it speaks of, where it names one: year-month-day. */
  on: string | undefined
  who: (person: string) => string
  children: ReactNode
}

/**
 * One thing said, with its time, which leads to its record, and who said it. What was withdrawn is struck through and
 * stays readable; who took it back, when and why stands below it.
 */
export function LineTold({ entry, on, who, children }: Props) {
  const { id, at, by, withdrawn } = entry
  const { time, zone } = onTheClock(at)
  return (
    <li className={styles.line}>
      <p className={styles.said}>
        <a href={`/record?id=${id}`}>
          <time dateTime={at} title={zone}>
            {time}
          </time>
        </a>{' '}
        {who(by)}
      </p>
      <div className={classNames(styles.what, withdrawn !== undefined && styles.struck)}>{children}</div>
      {on !== undefined && (isBefore(on, at) || isAfter(on, at)) && (
        <p className={styles.aside}>
          It is said of {sayDate(on)}, and was recorded {dayWords(at)}.
        </p>
      )}
      {entry.waiting && <p className={styles.aside}>On this device only until it is sent.</p>}
      <Withdrawn entry={entry} who={who} />
    </li>
  )
}

/** Who took a record back, when and why; nothing where it still counts. */
export function Withdrawn({ entry: { withdrawn }, who }: Pick<Props, 'who'> & { entry: Entry<unknown> }) {
  if (withdrawn === undefined) return null
  return (
    <p className={styles.aside}>
      <a href={`/record?id=${withdrawn.id}`}>Withdrawn</a> {momentWords(withdrawn.at)}, by {who(withdrawn.by)}
      : {withdrawn.reason}
      {withdrawn.replacedBy !== undefined && (
        <>
          {' '}
          <a href={`/record?id=${withdrawn.replacedBy}`}>What takes its place</a>
        </>
      )}
    </p>
  )
}
