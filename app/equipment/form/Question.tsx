import { type ReactNode, useId } from 'react'
import { errorIdOf, FieldError } from '../../ui/form/Field'
import { Quiet } from '../../ui/words/Quiet'
import styles from '../equipment.module.css'

type Props = { legend: string; hint?: string; error?: string; children: ReactNode }

/** A question whose answers are statements to tick, with its hint and what is wrong with the answer. */
export function Question({ legend, hint, error, children }: Props) {
  const id = useId()
  const described = [hint && `${id}-hint`, error && errorIdOf(id)].filter(Boolean).join(' ') || undefined
  return (
    <fieldset id={id} aria-describedby={described}>
      <legend className={styles.legend}>{legend}</legend>
      {hint && (
        <span id={`${id}-hint`}>
          <Quiet inline>{hint}</Quiet>
        </span>
      )}
      {children}
      <FieldError of={id} label={legend}>
        {error}
      </FieldError>
    </fieldset>
  )
}
