import type { SelectHTMLAttributes } from 'react'
import { Field, type FieldWords } from './Field'
import styles from './form.module.css'
import type { Option } from './option'

type Props<Value extends string> = FieldWords &
  Omit<SelectHTMLAttributes<HTMLSelectElement>, 'style' | 'className' | 'children' | 'multiple'> & {
    name: string
    options: readonly Option<Value>[]
    /** Words of the first, empty choice; without them the first option is chosen. */
    none?: string
  }

/** One of many, from a list. For up to seven, Choice shows them all and needs one tap less. */
export function Select<Value extends string>({
  label,
  hint,
  error,
  id,
  options,
  none,
  ...rest
}: Props<Value>) {
  return (
    <Field label={label} hint={hint} error={error} id={id}>
      {(ties) => (
        <select {...rest} {...ties} className={styles.control}>
          {none !== undefined && <option value="">{none}</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value} disabled={option.disabled}>
              {option.words}
            </option>
          ))}
        </select>
      )}
    </Field>
  )
}
