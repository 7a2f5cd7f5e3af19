'use client'

import { type MouseEvent, type ReactNode, useId, useRef } from 'react'
import { Button } from '../form/Button'
import { DangerSteps } from './DangerSteps'
import styles from './danger.module.css'

type Props = {
  /** Words of the link. */
  children?: ReactNode
  look?: 'button' | 'words'
}

/**
 * A link to the danger sheet that opens it in place. Where the script has not arrived it leads to the page /danger,
 * which says the same.
 */
export function DangerSheet({ children = 'Open the danger sheet', look = 'button' }: Props) {
  const dialog = useRef<HTMLDialogElement>(null)
  const titleId = useId()

  function open(event: MouseEvent) {
    if (!dialog.current?.showModal) return
    event.preventDefault()
    dialog.current.showModal()
  }

  return (
    <>
      <a href="/danger" className={look === 'button' ? styles.button : styles.words} onClick={open}>
        {children}
      </a>
      <dialog ref={dialog} className={styles.dialog} aria-labelledby={titleId}>
        <header className={styles.bar}>
          <h2 id={titleId}>Danger sheet</h2>
          <form method="dialog">
            <Button type="submit">Close</Button>
          </form>
        </header>
        <DangerSteps heading={3} />
      </dialog>
    </>
  )
}
