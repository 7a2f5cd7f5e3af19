import { DangerSheet } from './DangerSheet'
import styles from './danger.module.css'

/** The standing caution: it stands above anything that ranks, compares or advises. */
export function Caution() {
  return (
    <aside className={styles.caution} aria-label="Caution">
      <p>
        <b>Room CO meter on?</b> Anything smelling, scorched, leaking or anyone unwell? Then stop here.
      </p>
      <DangerSheet />
      <p className={styles.defers}>
        The maker’s instructions, local codes and a licensed person’s judgement come before anything shown
        here.
      </p>
    </aside>
  )
}
