'use client'

import { type KeyboardEvent, type ReactNode, useMemo } from 'react'
import { buildFindIndex, find } from '@/lib/core/find'
import { Choice } from '../../ui/form/Choice'
import { TextField } from '../../ui/form/TextField'
import { Quiet } from '../../ui/words/Quiet'
import type { Candidate } from '../candidates'

type Props = {
  /** The question. */
  legend: string
  name: string
  /** What can be typed to find one, for instance `Part number`. */
  findBy: string
  candidates: readonly Candidate[]
  typed: string
  onType: (typed: string) => void
  picked: string
  onPick: (id: string) => void
  /** The only ones that are offered before anything is typed; the others have to be looked for. */
  offered?: readonly string[]
  /** Looked for while nothing is typed here. */
  like?: string
  /** Words of the answer that picks none; without them one has to be picked. */
  none?: string
  hint?: string
  error?: string
  /** What to do where the list is empty or holds none of it. */
  missing?: ReactNode
}

/** How many are listed at once. A longer list has a field to look in. */
const listed = 7

/** Picks one record of many by any part of its number or name, with a thumb or with the keyboard alone. */
export function RecordPicker(props: Props) {
  const {
    legend,
    name,
    findBy,
    candidates,
    typed,
    onType,
    picked,
    onPick,
    offered,
    like = '',
    none,
    hint,
    error,
  } = props
  const index = useMemo(
    () => buildFindIndex(candidates.map(({ id, texts }) => ({ key: id, texts }))),
    [candidates],
  )
  const looked = typed.trim() === '' ? like.trim() : typed.trim()
  const matches = useMemo(() => {
    if (looked !== '') return find(index, looked, listed).map(({ key }) => key)
    return (offered ?? candidates.map(({ id }) => id)).slice(0, listed)
  }, [index, looked, candidates, offered])
  const few = offered === undefined && candidates.length <= listed
  const found = few && typed.trim() === '' ? candidates.map(({ id }) => id) : matches
  const shown = picked === '' || found.includes(picked) ? found : [picked, ...found]
  const options = shown.flatMap((id) => {
    const candidate = candidates.find((each) => each.id === id)
    return candidate === undefined
      ? []
      : [{ value: id, words: candidate.words, ...(candidate.hint ? { hint: candidate.hint } : {}) }]
  })

  // Enter in the field picks what it found alone; it never sends a half-filled form.
  function pickOnly(event: KeyboardEvent) {
    if (event.key !== 'Enter') return
    event.preventDefault()
    if (found.length === 1 && found[0] !== undefined) onPick(found[0])
  }

  return (
    <div>
      {!few && (
        <TextField
          exact
          label={`${legend.replace(/\?$/, '')}: look for it by ${findBy}`}
          name={`${name}-find`}
          value={typed}
          onChange={(event) => onType(event.target.value)}
          onKeyDown={pickOnly}
        />
      )}
      <Choice
        legend={legend}
        name={name}
        hint={hint}
        error={error}
        options={[...(none === undefined ? [] : [{ value: '', words: none }]), ...options]}
        value={picked === '' && none === undefined ? null : picked}
        onChoose={onPick}
      />
      {candidates.length === 0 && <Quiet>None is on file yet.</Quiet>}
      {candidates.length > 0 && options.length === 0 && looked !== '' && (
        <Quiet>Nothing on file matches “{looked}”.</Quiet>
      )}
      {props.missing}
    </div>
  )
}
