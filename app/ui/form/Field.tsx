import { type ReactNode, useId } from 'react'
import { useReportError } from './fieldErrors'
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

/** The id of a control's error line, for its description. */
export const errorIdOf = (controlId: string): string => `${controlId}-error`

type Props = FieldWords & { children: (ties: FieldTies) => ReactNode; id?: string }

/** Label, hint, control and error, tied together. TextField, TextArea, Select and NumberPad are built on it. */
export function Field({ label, hint, error, children, id: givenId }: Props) {
  const ownId = useId()
  const id = givenId ?? ownId
  const hintId = `${id}-hint`
  const describedBy = [hint && hintId, error && errorIdOf(id)].filter(Boolean).join(' ') || undefined
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
      <FieldError of={id} label={label}>
        {error}
      </FieldError>
    </div>
  )
}

type ErrorProps = {
  /** Id of the control, or of the group of controls. */
  of: string
  /** Names it in the list above the form. */
  label: ReactNode
  children?: ReactNode
}

/** The error line of a control, or of a group of controls. It is read out when it appears, and told to the form. */
export function FieldError({ of: controlId, label, children }: ErrorProps) {
  useReportError(controlId, label, Boolean(children))
  if (!children) return null
  return (
    <p role="alert" id={errorIdOf(controlId)} className={styles.error}>
      {children}
    </p>
  )
}
