import { type InputHTMLAttributes, type ReactNode, useId } from 'react'
import { errorIdOf, FieldError } from './Field'
import styles from './form.module.css'

type Props = Omit<InputHTMLAttributes<HTMLInputElement>, 'style' | 'className' | 'type' | 'children'> & {
  name: string
  /** A statement that is true when it is ticked. */
  label: ReactNode
  hint?: ReactNode
  error?: ReactNode
}

/** A statement to tick. */
export function Check({ label, hint, error, id: givenId, ...rest }: Props) {
  const ownId = useId()
  const id = givenId ?? ownId
  const described = [hint && `${id}-hint`, error && errorIdOf(id)].filter(Boolean).join(' ') || undefined
  return (
    <div className={styles.field}>
      <label className={styles.chip} htmlFor={id}>
        <input
          {...rest}
          id={id}
          type="checkbox"
          aria-describedby={described}
          aria-invalid={error ? true : undefined}
        />
        <span>{label}</span>
      </label>
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <FieldError of={id} label={label}>
        {error}
      </FieldError>
    </div>
  )
}
