import { sayAge } from '../words/sayAge'
import styles from './shell.module.css'

type Props = {
  /** When the team's file was last fetched, ISO 8601; left out when this device has none yet. */
  fetchedAt?: string
  /** ISO 8601. */
  now: string
  /** Records made here that have not been sent. */
  waiting: number
  /** Pictures made here that have not been sent. */
  pictures?: number
  /** Records that the server refused and that a person must deal with. */
  refused?: number
  /** Where those can be dealt with. */
  refusedHref?: string
}

/** How fresh the file on this device is, and what has not left it yet. */
export function FreshnessLine({ fetchedAt, now, waiting, pictures = 0, refused = 0, refusedHref }: Props) {
  const refusedWords = `${counted(refused)} refused, and waiting for you`
  return (
    <div className={styles.freshness}>
      <p>{fetchedAt ? `Team file from ${sayAge(fetchedAt, now)}` : 'No team file on this device yet'}</p>
      <p role="status">
        {waitingWords(waiting, pictures)}
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

function waitingWords(records: number, pictures: number): string {
  const words = [
    ...(records === 0 ? [] : [counted(records)]),
    ...(pictures === 0 ? [] : [pictures === 1 ? '1 picture' : `${pictures} pictures`]),
  ]
  return words.length === 0 ? 'Everything is sent' : `${words.join(' and ')} waiting to be sent`
}

const counted = (records: number) => (records === 1 ? '1 record' : `${records} records`)
