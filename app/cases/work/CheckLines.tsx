import type { CheckEntry } from '@/lib/catalogue/checks'
import styles from './work.module.css'

/** How a check is done: minutes, state, tool, what to do, what to beware of, and what to put back. */
export function CheckLines({ check }: { check: CheckEntry }) {
  return (
    <>
      <p>
        {check.minutes} min, <b>{check.state}</b>
        {check.tool !== 'none' && `, ${check.tool}`}
      </p>
      <p>{check.what}</p>
      {check.caution && <p className={styles.dangerWords}>{check.caution}</p>}
      {check.putBack && <p>Put back: {check.putBack}</p>}
    </>
  )
}
