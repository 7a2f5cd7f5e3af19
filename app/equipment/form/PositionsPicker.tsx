'use client'

import { useMemo } from 'react'
import { buildFindIndex, find } from '@/lib/core/find'
import { Check } from '../../ui/form/Check'
import { TextField } from '../../ui/form/TextField'
import { Quiet } from '../../ui/words/Quiet'
import type { Candidate } from '../candidates'
import { Question } from './Question'

type Props = {
  legend: string
  hint: string
  candidates: readonly Candidate[]
  typed: string
  onType: (typed: string) => void
  picked: readonly string[]
  onPick: (ids: string[]) => void
  error?: string
}

/** How many positions that are not picked are listed at once. */
const listed = 8

/** Ticks any number of switch positions; those that are ticked stay in sight whatever is looked for next. */
export function PositionsPicker({ legend, hint, candidates, typed, onType, picked, onPick, error }: Props) {
  const index = useMemo(
    () => buildFindIndex(candidates.map(({ id, texts }) => ({ key: id, texts }))),
    [candidates],
  )
  const found =
    typed.trim() === ''
      ? candidates.slice(0, listed).map(({ id }) => id)
      : find(index, typed, listed).map(({ key }) => key)
  const shown = [...picked, ...found.filter((id) => !picked.includes(id))]
  return (
    <Question legend={legend} hint={hint} error={error}>
      {candidates.length > listed && (
        <TextField
          exact
          label="Look for a position by model, maker, range or part number"
          name="position-find"
          value={typed}
          onChange={(event) => onType(event.target.value)}
          onKeyDown={(event) => {
            // Enter looks no further and sends nothing: the list below is there already.
            if (event.key === 'Enter') event.preventDefault()
          }}
        />
      )}
      {candidates.length === 0 && <Quiet>No switch position is on file yet.</Quiet>}
      {shown.map((id) => {
        const candidate = candidates.find((each) => each.id === id)
        return candidate === undefined ? null : (
          <Check
            key={id}
            name={`position-${id}`}
            label={candidate.words}
            checked={picked.includes(id)}
            onChange={(event) =>
              onPick(event.target.checked ? [...picked, id] : picked.filter((each) => each !== id))
            }
          />
        )
      })}
    </Question>
  )
}
