import { type ReactNode, useId } from 'react'
import { errorIdOf, FieldError } from './Field'
import styles from './form.module.css'
import type { Option } from './option'

type Props<Value extends string> = {
  /** The question. */
  legend: ReactNode
  name: string
  options: readonly Option<Value>[]
  hint?: ReactNode
  error?: ReactNode
  /** Controlled: the chosen value, or null for none yet; with `onChoose`. */
  value?: Value | null
  onChoose?: (value: Value) => void
  /** Uncontrolled: what is chosen at first. */
  defaultValue?: Value
  required?: boolean
}

/** One of a few, all in sight. Arrow keys move within it; nothing is chosen until somebody chooses. */
export function Choice<Value extends string>(props: Props<Value>) {
  const { legend, name, options, hint, error, value, onChoose, defaultValue, required } = props
  const id = useId()
  const described = [hint && `${id}-hint`, error && errorIdOf(id)].filter(Boolean).join(' ') || undefined
  return (
    <fieldset id={id} className={styles.field} aria-describedby={described}>
      <legend className={styles.label}>{legend}</legend>
      {hint && (
        <p className={styles.hint} id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <div className={styles.chips}>
        {options.map((option) => (
          <label key={option.value} className={styles.chip}>
            <input
              type="radio"
              name={name}
              value={option.value}
              required={required}
              disabled={option.disabled}
              {...(value === undefined
                ? { defaultChecked: option.value === defaultValue }
                : { checked: option.value === value })}
              onChange={onChoose && (() => onChoose(option.value))}
            />
            <span>
              {option.words}
              {option.hint && <small>{option.hint}</small>}
            </span>
          </label>
        ))}
      </div>
      <FieldError of={id} label={legend}>
        {error}
      </FieldError>
    </fieldset>
  )
}
