import type { InputHTMLAttributes } from 'react'
import { classNames } from '../classNames'
import { Field, type FieldWords } from './Field'
import styles from './form.module.css'
import { letterForLetter } from './letterForLetter'

type Props = FieldWords &
  Omit<InputHTMLAttributes<HTMLInputElement>, 'style' | 'className' | 'children'> & {
    name: string
    /** For part numbers and labels: nothing is corrected, capitalised or completed, and 0 differs from O. */
    exact?: boolean
  }

/** A line of text. */
export function TextField({ label, hint, error, exact, id, type = 'text', ...rest }: Props) {
  return (
    <Field label={label} hint={hint} error={error} id={id}>
      {(ties) => (
        <input
          {...(exact ? letterForLetter : {})}
          {...rest}
          {...ties}
          type={type}
          className={classNames(styles.control, exact && styles.exact)}
        />
      )}
    </Field>
  )
}
