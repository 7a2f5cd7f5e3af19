'use client'

import { Choice } from '../../ui/form/Choice'

type Props<Value extends string> = {
  legend: string
  name: string
  hint?: string
  error?: string
  value: Value | ''
  onChoose: (value: Value) => void
  /** Every answer in the order of the list, with its line of explanation where it needs one. */
  answers: readonly (readonly [value: Value, words: string, line?: string])[]
}

/** A question whose every answer is explained in a line. Nothing is chosen until somebody chooses. */
export const Explained = <Value extends string>({ answers, value, ...question }: Props<Value>) => (
  <Choice
    {...question}
    value={value === '' ? null : value}
    options={answers.map(([answer, words, line]) => ({
      value: answer,
      words,
      ...(line ? { hint: line } : {}),
    }))}
  />
)
