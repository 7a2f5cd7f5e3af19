import { type ReactNode, useId } from 'react'
import styles from './form.module.css'

/** What every control of a form is given beside its own attributes. */
export type FieldWords = {
  label: ReactNode
  /** How to fill it in, below the label and before the control. */
  hint?: ReactNode
  /** What is wrong with it and how to put it right. */
  error?: ReactNode
}

/** The attributes that tie a control to its label, hint and error. */
export type FieldTies = {
  id: string
  'aria-describedby': string | undefined
  'aria-invalid': true | undefined
}

type Props = FieldWords & { children: (ties: FieldTies) => ReactNode; id?: string }

/** Label, hint, control and error, tied together. TextField, TextArea, Select and NumberPad are built on it. */
export function Field({ label, hint, error, children, id: givenId }: Props) {
  const ownId = useId()
  const id = givenId ?? ownId
  const hintId = `${id}-hint`
  const errorId = `${id}-error`
  const describedBy = [hint && hintId, error && errorId].filter(Boolean).join(' ') || undefined
  return (
    <div className={styles.field}>
      <label htmlFor={id} className={styles.label}>
        {label}
      </label>
      {hint && (
        <p className={styles.hint} id={hintId}>
          {hint}
        </p>
      )}
      {children({ id, 'aria-describedby': describedBy, 'aria-invalid': error ? true : undefined })}
      <FieldError id={errorId}>{error}</FieldError>
    </div>
  )
}

/** The error line of a control. It is read out when it appears. */
export function FieldError({ id, children }: { id: string; children?: ReactNode }) {
  if (!children) return null
  return (
    <p role="alert" id={id} className={styles.error}>
      {children}
    </p>
  )
}
