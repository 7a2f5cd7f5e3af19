'use client'

import { type ReactNode, useState } from 'react'
import styles from './paper.module.css'

type Props = {
  summary: ReactNode
  /** Open at first, for instance because something typed there was found again. */
  open?: boolean
  /** Drawn only while it is open: a long page of folded lists stays quick on a phone. */
  children: () => ReactNode
}

/** What is folded away until somebody asks for it. */
export function Fold({ summary, open = false, children }: Props) {
  const [shown, setShown] = useState(open)
  const [wasOpen, setWasOpen] = useState(open)
  if (open !== wasOpen) {
    setWasOpen(open)
    if (open) setShown(true)
  }
  return (
    <details className={styles.fold} open={shown} onToggle={(event) => setShown(event.currentTarget.open)}>
      <summary>{summary}</summary>
      {shown && children()}
    </details>
  )
}
