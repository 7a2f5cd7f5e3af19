'use client'

import { type FormEvent, type MouseEvent, type ReactNode, useEffect, useRef, useState } from 'react'
import { FieldErrorsContext, type FieldTrouble, focusControl, useFieldErrors } from './fieldErrors'
import styles from './form.module.css'

type Props = {
  /** Saves what was typed. @returns whether it is saved */
  save: () => Promise<boolean> | boolean
  children: ReactNode
}

/**
 * The form of a screen. After a try that fails, it says above how many answers are missing, with a link to each,
 * and the first field to put right has the focus. A second press while it saves does nothing.
 */
export function Form({ save, children }: Props) {
  const { errors, report, first } = useFieldErrors()
  const [failed, setFailed] = useState(0)
  const saving = useRef(false)
  useEffect(() => {
    const id = failed > 0 ? first() : undefined
    if (id !== undefined) focusControl(id)
  }, [failed, first])

  async function submit(event: FormEvent) {
    event.preventDefault()
    if (saving.current) return
    saving.current = true
    try {
      const saved = await save()
      setFailed((times) => (saved ? 0 : times + 1))
    } finally {
      saving.current = false
    }
  }

  return (
    <FieldErrorsContext value={report}>
      <form onSubmit={submit} noValidate>
        {failed > 0 && errors.length > 0 && <Missing errors={errors} />}
        {children}
      </form>
    </FieldErrorsContext>
  )
}

/** How many answers are missing, read out when it appears, and where each of them is. */
function Missing({ errors }: { errors: readonly FieldTrouble[] }) {
  function go(event: MouseEvent, controlId: string) {
    event.preventDefault()
    focusControl(controlId)
  }
  return (
    <nav aria-label="Answers to put right" className={styles.missing}>
      <p role="alert">
        {errors.length === 1
          ? '1 answer is missing or not clear'
          : `${errors.length} answers are missing or not clear`}
      </p>
      <ul>
        {errors.map(({ controlId, label }) => (
          <li key={controlId}>
            <a href={`#${controlId}`} onClick={(event) => go(event, controlId)}>
              {label}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
