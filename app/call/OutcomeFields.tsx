'use client'

import { callOutcomes } from '@/lib/records/kinds/callAttempt'
import { Choice } from '../ui/form/Choice'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { Stack } from '../ui/paper/Stack'
import { RefusedPart } from './AnswerFields'
import type { CallForm } from './callForm'

type Props = {
  form: CallForm
  change: (part: Partial<CallForm>) => void
  errorOf: (field: 'outcome' | 'ringBackAt') => string | undefined
}

const words: Readonly<Record<(typeof callOutcomes)[number], string>> = {
  answered: 'They answered',
  'no answer': 'Nobody answered',
  'ring back': 'Ring back later',
  'doesn’t know': 'They don’t know',
  'refuses to say': 'They refuse to say',
  'offered a general-purpose part': 'They offer a universal or adjustable switch',
}

/** What became of the call. A refusal is kept as well as an answer, so that nobody repeats the call. */
export function OutcomeFields({ form, change, errorOf }: Props) {
  return (
    <Stack>
      <Choice
        legend="What became of the call?"
        name="outcome"
        options={callOutcomes.map((value) => ({ value, words: words[value] }))}
        value={form.outcome === '' ? null : form.outcome}
        onChoose={(outcome) => change({ outcome })}
        error={errorOf('outcome')}
      />
      {form.outcome === 'ring back' && (
        <TextField
          type="datetime-local"
          name="ringBackAt"
          label="Ring back when?"
          value={form.ringBackAt}
          onChange={(event) => change({ ringBackAt: event.target.value })}
          error={errorOf('ringBackAt')}
        />
      )}
      {form.outcome === 'offered a general-purpose part' && (
        <>
          <RefusedPart />
          <TextField
            name="offered"
            label="What do they offer?"
            value={form.offered}
            onChange={(event) => change({ offered: event.target.value })}
          />
        </>
      )}
      <TextArea
        name="note"
        label="What else they said"
        hint="Running readings, bulletins, who will send the page."
        value={form.note}
        onChange={(event) => change({ note: event.target.value })}
      />
    </Stack>
  )
}
