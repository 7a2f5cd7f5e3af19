'use client'

import { useLayoutEffect, useRef } from 'react'
import { type PressureUnit, unitLabel } from '@/lib/core/pressure'
import { Choice } from './Choice'
import { Field, type FieldWords } from './Field'
import { letterForLetter } from './letterForLetter'
import styles from './numberPad.module.css'
import { type PadKey, pressKey } from './pressKey'

type Props = FieldWords & {
  name: string
  /** The text as typed. It stays text: reading it is the caller's business. */
  value: string
  onType: (text: string) => void
  unit: PressureUnit
  /** The units to switch between; with fewer than two there is no switch. */
  units: readonly PressureUnit[]
  /** Only the unit changes: what was typed is never converted behind anybody's back. */
  onUnit: (unit: PressureUnit) => void
  required?: boolean
}

const keys: readonly { key: PadKey; face: string; words?: string }[] = [
  ...(['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const).map((digit) => ({ key: digit, face: digit })),
  { key: 'minus', face: '−', words: 'Minus' },
  { key: '0', face: '0' },
  { key: 'point', face: '.', words: 'Decimal point' },
]

/**
 * Keys for a gloved thumb that type into a text field. The field takes the keyboard of a desk as well; a phone's own
 * keyboard stays away, because the keys are already there.
 */
export function NumberPad(props: Props) {
  const { label, hint, error, name, value, onType, unit, units, onUnit, required } = props
  const field = useRef<HTMLInputElement>(null)
  const caret = useRef<{ start: number; end: number } | undefined>(undefined)

  // React puts the caret of a controlled field at the end; the pad puts it back where typing goes on.
  useLayoutEffect(() => {
    if (!caret.current) return
    field.current?.setSelectionRange(caret.current.start, caret.current.end)
    caret.current = undefined
  })

  function press(key: PadKey) {
    const typed = pressKey({ text: value, ...selection(field.current, value) }, key)
    caret.current = { start: typed.start, end: typed.end }
    onType(typed.text)
  }

  return (
    <div className={styles.pad}>
      <Field label={label} hint={hint} error={error}>
        {(ties) => (
          <div className={styles.line}>
            <input
              {...letterForLetter}
              {...ties}
              ref={field}
              name={name}
              value={value}
              required={required}
              inputMode="none"
              onChange={(event) => onType(event.target.value)}
              className={styles.figures}
            />
            <span className={styles.unit}>{unitLabel[unit]}</span>
          </div>
        )}
      </Field>
      <fieldset className={styles.keys}>
        <legend>Keys</legend>
        {keys.map(({ key, face, words }) => (
          <button
            key={key}
            type="button"
            aria-label={words}
            onPointerDown={keepFocus}
            onClick={() => press(key)}
          >
            {face}
          </button>
        ))}
        <button type="button" className={styles.back} onPointerDown={keepFocus} onClick={() => press('back')}>
          Delete last
        </button>
      </fieldset>
      {units.length > 1 && (
        <Choice
          legend="Unit"
          name={`${name}-unit`}
          options={units.map((each) => ({ value: each, words: unitLabel[each] }))}
          value={unit}
          onChoose={onUnit}
        />
      )}
    </div>
  )
}

// A field without the focus may have its caret anywhere: the pad then types at the end.
function selection(field: HTMLInputElement | null, value: string): { start: number; end: number } {
  const end = value.length
  if (!field || document.activeElement !== field) return { start: end, end }
  return { start: field.selectionStart ?? end, end: field.selectionEnd ?? end }
}

// A press must not take the caret out of the field.
function keepFocus(event: { preventDefault: () => void }) {
  event.preventDefault()
}
