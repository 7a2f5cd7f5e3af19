import type { ReactNode } from 'react'
import type { Behind, Opening } from './behind'
import styles from './callbacks.module.css'
import { openInPlace } from './openInPlace'

type Props = { of: Behind; opening: Opening; children: ReactNode; says: string }

/** A figure that opens the cases behind it, and closes them again. It has an address, and it prints as its words. */
export function CaseFigure({ of, opening, children, says }: Props) {
  return (
    <a
      className={styles.figure}
      href={opening.hrefOf(of.key)}
      aria-expanded={opening.open === of.key}
      aria-label={`${of.title}: ${says}`}
      onClick={(event) => openInPlace(event, of.key, opening)}
    >
      {children}
    </a>
  )
}
