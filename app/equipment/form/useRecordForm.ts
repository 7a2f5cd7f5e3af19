'use client'

import { useRef, useState } from 'react'
import type { Refusal } from '@/lib/records/envelope'
import { useAdd } from '../../device/useAdd'
import { useDraft } from '../../device/useDraft'
import { trimmed } from './trimmed'

/** What is still missing or cannot be read, by field: a sentence for the person who types. */
type Gaps = Readonly<Record<string, string>>

/** What a form amounts to: a body to record, its gaps, or the refusal of a rule. */
export type FormAnswer = { body: Record<string, unknown> } | { gaps: Gaps } | { refusal: Refusal }

type Options<Form> = {
  /** Names the draft: the form, and what it is about. */
  draft: string
  fresh: Form
  kind: string
  read: (form: Form) => FormAnswer
}

/**
 * A form that becomes one record. It keeps its draft as it is typed, says what is wrong at the field, and lets go of
 * the draft only when the record is in the outbox. Until the first try to save, nothing is held against it.
 */
export function useRecordForm<Form extends object>({ draft, fresh, kind, read }: Options<Form>) {
  const { add, trouble } = useAdd()
  const { value: form, change, done, restored } = useDraft<Form>(draft, fresh)
  const [tried, setTried] = useState(false)
  const saving = useRef(false)
  const answer = tried ? read(form) : undefined
  const said: Gaps = {
    ...trouble?.fields,
    ...(answer !== undefined && 'gaps' in answer ? answer.gaps : {}),
  }
  const shown = new Set<string>()

  /** What is wrong with a field, the fields inside it included. */
  function errorAt(...fields: string[]): string | undefined {
    const paths = Object.keys(said).filter((path) =>
      fields.some((field) => path === field || path.startsWith(`${field}.`)),
    )
    for (const path of paths) shown.add(path)
    return paths[0] === undefined ? undefined : said[paths[0]]
  }

  /** @returns the id of the record, or undefined when it was not added and everything typed is still there */
  async function save(): Promise<string | undefined> {
    setTried(true)
    const now = read(form)
    if (saving.current || !('body' in now)) return undefined
    saving.current = true
    try {
      const ids = await add([{ kind, body: trimmed(now.body) }])
      if (ids === undefined) return undefined
      await done()
      return ids[0]
    } finally {
      saving.current = false
    }
  }

  return {
    form,
    change,
    errorAt,
    save,
    refusal: answer !== undefined && 'refusal' in answer ? answer.refusal : trouble?.refusal,
    /** What is wrong at no field of this form: asked after the fields have asked for their own. */
    otherTrouble: () => Object.keys(said).flatMap((path) => (shown.has(path) ? [] : [said[path]!])),
    /** The form holds what was typed on this device before. */
    resumed: restored && JSON.stringify(form) !== JSON.stringify(fresh),
    startAfresh: () => {
      change(fresh)
      setTried(false)
      void done()
    },
  }
}

export type RecordFormState<Form extends object> = ReturnType<typeof useRecordForm<Form>>
