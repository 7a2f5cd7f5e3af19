'use client'

import { useMemo } from 'react'
import { type CauseGroup, causeById, causeGroups, causes } from '@/lib/catalogue/causes'
import { unlistedCause } from '@/lib/core/diagnosis'
import type { Candidate } from '../../equipment/candidates'
import { RecordPicker } from '../../equipment/form/RecordPicker'
import { Select } from '../../ui/form/Select'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { capitalised } from '../work/capitalised'
import type { EndForm } from './endForm'

type Which = 'main' | 'contributing'

type Props = {
  which: Which
  form: EndForm
  change: (part: Partial<EndForm>) => void
  error: string | undefined
}

const asked: Readonly<Record<Which, { legend: string; where: string; none: string }>> = {
  main: { legend: 'Main cause', where: 'Where the main cause lies', none: 'Not named' },
  contributing: {
    legend: 'Contributing cause',
    where: 'Where a contributing cause lies',
    none: 'None, or not named',
  },
}

/** The causes of one group, or all of them, which are then told apart by their groups as well. */
const candidatesIn = (within: EndForm['mainGroup']): Candidate[] =>
  causes
    .filter(({ group }) => within === '' || group === within)
    .map(({ id, name, group, mechanism }) => ({
      id,
      words: name,
      hint: within === '' ? `${capitalised(group)}. ${mechanism}` : mechanism,
      texts: [name, group],
    }))

/** Picks a cause of the catalogue, by its group or by any part of its name, or says that it is not on the list. */
export function CauseFields({ which, form, change, error }: Props) {
  const picked = form[`${which}Cause`]
  const group = form[`${which}Group`] || groupOf(picked)
  const set = (part: { group?: EndForm['mainGroup']; typed?: string; cause?: string }) =>
    change({
      ...(part.group === undefined ? {} : { [`${which}Group`]: part.group }),
      ...(part.typed === undefined ? {} : { [`${which}Typed`]: part.typed }),
      ...(part.cause === undefined ? {} : { [`${which}Cause`]: part.cause }),
    })
  const candidates = useMemo(() => candidatesIn(group), [group])
  const { legend, where, none } = asked[which]

  function chooseGroup(next: EndForm['mainGroup']) {
    const stays = next === '' || causeById(picked)?.group === next
    set({ group: next, typed: '', cause: next === unlistedCause ? unlistedCause : stays ? picked : '' })
  }

  return (
    <Stack>
      <Select
        label={where}
        name={`${which}Group`}
        none="Anywhere: look for it by name"
        options={[
          ...causeGroups.map((value) => ({ value, words: capitalised(value) })),
          { value: unlistedCause, words: 'It is not on the list' },
        ]}
        value={group}
        onChange={(event) => chooseGroup(event.target.value as EndForm['mainGroup'])}
      />
      {group === unlistedCause ? (
        <Quiet>Describe it in the note, so that the next person can look for it.</Quiet>
      ) : (
        <RecordPicker
          legend={legend}
          name={`${which}Cause`}
          findBy="name"
          candidates={candidates}
          {...(group === '' ? { offered: [] } : {})}
          none={none}
          typed={form[`${which}Typed`]}
          onType={(typed) => set({ typed })}
          picked={picked}
          onPick={(cause) => set({ cause })}
          error={error}
        />
      )}
    </Stack>
  )
}

/** The group that a picked cause belongs to, so that an ending that is written anew shows it. */
const groupOf = (cause: string): CauseGroup | typeof unlistedCause | '' =>
  cause === unlistedCause ? unlistedCause : (causeById(cause)?.group ?? '')
