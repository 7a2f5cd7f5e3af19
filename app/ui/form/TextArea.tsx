import type { TextareaHTMLAttributes } from 'react'
import { classNames } from '../classNames'
import { Field, type FieldWords } from './Field'
import styles from './form.module.css'
import { letterForLetter } from './letterForLetter'

type Props = FieldWords &
  Omit<TextareaHTMLAttributes<HTMLTextAreaElement>, 'style' | 'className' | 'children'> & {
    name: string
    /** As in TextField. */
    exact?: boolean
  }

/** Several lines of text. It grows with what is typed where the browser can. */
export function TextArea({ label, hint, error, exact, id, rows = 3, ...rest }: Props) {
  return (
    <Field label={label} hint={hint} error={error} id={id}>
      {(ties) => (
        <textarea
          {...(exact ? letterForLetter : {})}
          {...rest}
          {...ties}
          rows={rows}
          className={classNames(styles.control, styles.area, exact && styles.exact)}
        />
      )}
    </Field>
  )
}
