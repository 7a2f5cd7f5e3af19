import type { FindingEntry } from '@/lib/catalogue/findings'
import type { Entry } from '@/lib/records/fold/entry'
import type { FindingBody } from '@/lib/records/kinds/finding'
import { sayDate } from '../../ui/words/sayDate'
import { capitalised } from './capitalised'
import styles from './work.module.css'

type Props = {
  finding: FindingEntry
  /** The record that counts. */
  said: Entry<FindingBody> | undefined
  mayAdd: boolean
  /** What was said may be taken back here: on this visit, by the same person, and no danger. */
  mayTakeBack: boolean
  /** It was ruled out, and something else on record shows it. */
  contradicted: boolean
  /** Says a value; undefined takes back what was said. */
  say: (value: string | undefined) => void
}

/**
 * One finding with its values to tap. Buttons, because in a group of radio buttons every arrow key would record
 * something.
 */
export function FindingRow({ finding, said, mayAdd, mayTakeBack, contradicted, say }: Props) {
  const value = said?.body.value
  return (
    <li className={styles.finding}>
      <fieldset className={styles.findingRow}>
        <legend>{finding.name}</legend>
        <p className={styles.hints}>
          {finding.hint} {said?.waiting && 'Waiting to be sent.'}{' '}
          {said !== undefined && !mayTakeBack && `Said ${sayDate(said.at)}: say what it is now.`}
        </p>
        {contradicted && (
          <p className={styles.dangerWords}>
            Something else on record shows it: see the danger above. So it is left out of what speaks for or
            against a cause.
          </p>
        )}
        <div className={styles.values}>
          {finding.values.map((each) => (
            <button
              key={each}
              type="button"
              className={styles.value}
              aria-pressed={each === value}
              disabled={!mayAdd}
              onClick={() => each !== value && say(each)}
            >
              {capitalised(each)}
            </button>
          ))}
          {(value === undefined || mayTakeBack) && (
            <button
              type="button"
              className={styles.value}
              aria-pressed={value === undefined}
              disabled={!mayAdd}
              onClick={() => value !== undefined && say(undefined)}
            >
              Not checked
            </button>
          )}
        </div>
      </fieldset>
    </li>
  )
}
