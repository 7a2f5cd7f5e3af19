import styles from './words.module.css'

/** What a label or a plate says, letter for letter, blanks included. */
export function AsPrinted({ text }: { text: string }) {
  return (
    <q className={styles.asPrinted} translate="no">
      {text}
    </q>
  )
}
