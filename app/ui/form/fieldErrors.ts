'use client'

import { createContext, type ReactNode, useCallback, useContext, useEffect, useRef, useState } from 'react'

/** A field at which something is wrong: the id of its control, or of the group of its controls, and its label. */
export type FieldTrouble = { controlId: string; label: ReactNode }

/** Tells the form around a field what is wrong there. The answer takes it back. */
type Report = (trouble: FieldTrouble) => () => void

/** The form around a field; a field on its own has none to tell. */
export const FieldErrorsContext = createContext<Report>(() => () => {})

/** What is wrong at the fields of a form at this moment, in the order of the page, and where they report it. */
export function useFieldErrors(): {
  errors: readonly FieldTrouble[]
  report: Report
  first(): string | undefined
} {
  const held = useRef<readonly FieldTrouble[]>([])
  const [errors, setErrors] = useState(held.current)
  const report = useCallback<Report>((trouble) => {
    const set = (next: readonly FieldTrouble[]) => {
      held.current = next
      setErrors(next)
    }
    set([...held.current, trouble].sort(byPlace))
    return () => set(held.current.filter((each) => each !== trouble))
  }, [])
  const first = useCallback(() => held.current[0]?.controlId, [])
  return { errors, report, first }
}

/** Tells the form around it that something is wrong at a field, for as long as it is. */
export function useReportError(controlId: string, label: ReactNode, wrong: boolean): void {
  const report = useContext(FieldErrorsContext)
  useEffect(() => (wrong ? report({ controlId, label }) : undefined), [report, controlId, label, wrong])
}

function byPlace(one: FieldTrouble, other: FieldTrouble): number {
  const [first, second] = [one, other].map(({ controlId }) => document.getElementById(controlId))
  if (!first || !second || first === second) return 0
  return first.compareDocumentPosition(second) & Node.DOCUMENT_POSITION_FOLLOWING ? -1 : 1
}

/**
 * Puts the focus on the control with this id; of a group, on the answer that is chosen, else on its first. What is
 * folded away around it is unfolded.
 */
export function focusControl(id: string): void {
  const named = document.getElementById(id)
  const control =
    named instanceof HTMLFieldSetElement
      ? (named.querySelector<HTMLElement>('input:checked') ??
        named.querySelector<HTMLElement>('input:enabled, select:enabled, textarea:enabled, button:enabled'))
      : named
  for (let around = control?.closest('details'); around; around = around.parentElement?.closest('details'))
    around.open = true
  control?.focus()
}
