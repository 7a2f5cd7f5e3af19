import { sayAge } from '../words/sayAge'
import styles from './shell.module.css'

type Props = {
  /** When the team's file was last fetched, ISO 8601; left out when this device has none yet. */
  fetchedAt?: string
  /** ISO 8601. */
  now: string
  /** Records made here that have not been sent. */
  waiting: number
  /** Records that the server refused and that a person must deal with. */
  refused?: number
  /** Where those can be dealt with. */
  refusedHref?: string
}

/** How fresh the file on this device is, and what has not left it yet. */
export function FreshnessLine({ fetchedAt, now, waiting, refused = 0, refusedHref }: Props) {
  const refusedWords = `${counted(refused)} refused, and waiting for you`
  return (
    <div className={styles.freshness}>
      <p>{fetchedAt ? `Team file from ${sayAge(fetchedAt, now)}` : 'No team file on this device yet'}</p>
      <p role="status">
        {waiting === 0 ? 'Everything is sent' : `${counted(waiting)} waiting to be sent`}
        {refused > 0 && (
          <>
            {'. '}
            {refusedHref ? <a href={refusedHref}>{refusedWords}</a> : refusedWords}
          </>
        )}
      </p>
    </div>
  )
}

const counted = (records: number) => (records === 1 ? '1 record' : `${records} records`)
