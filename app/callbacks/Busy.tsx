import styles from './busy.module.css'
import type { Progress } from './useWorked'

/** In place of what is being worked out: that it is, and how far it is. */
export function Busy({ through, of }: Progress) {
  return (
    <div className={styles.busy}>
      <p role="status">Going through your team’s records …</p>
      <progress aria-label="How far it is" value={through} max={Math.max(1, of)} />
    </div>
  )
}
