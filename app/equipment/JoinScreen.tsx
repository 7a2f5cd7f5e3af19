'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { useDeviceState } from '../device/deviceContext'
import { askedFor } from '../device/openDrafts'
import { Choice } from '../ui/form/Choice'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { candidatesOf, type JoinableKind, joinableKinds } from './candidates'
import { RecordForm } from './form/RecordForm'
import { RecordPicker } from './form/RecordPicker'
import { type FormAnswer, useRecordForm } from './form/useRecordForm'

type JoinForm = {
  kind: JoinableKind | ''
  kept: string
  keptTyped: string
  duplicate: string
  duplicateTyped: string
  reason: string
}

function readJoinForm({ kind, kept, duplicate, reason }: JoinForm): FormAnswer {
  const gaps: Record<string, string> = {}
  if (kind === '') gaps.kind = 'Choose what the two are.'
  if (kept === '') gaps.kept = 'Choose the one to keep.'
  if (duplicate === '') gaps.duplicate = 'Choose the duplicate.'
  if (reason.trim() === '') gaps.reason = 'Say how you know that they are the same thing.'
  return Object.keys(gaps).length > 0 ? { gaps } : { body: { kept, duplicate, reason } }
}

/** Joins two records that name one thing. Both stay readable; what was said of either is read as said of one. */
export function JoinScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const { file } = useDeviceState()
  const [fresh] = useState<JoinForm>(() => ({
    kind: joinableKinds.find((each) => each === query.get('kind')) ?? '',
    kept: query.get('kept') ?? '',
    keptTyped: '',
    duplicate: query.get('duplicate') ?? '',
    duplicateTyped: '',
    reason: '',
  }))
  const record = useRecordForm({
    draft: `join ${askedFor(query)}`,
    fresh,
    kind: 'same as',
    read: readJoinForm,
  })
  const { form, change, errorAt } = record
  const { kind } = form
  const candidates = useMemo(() => (kind === '' ? [] : candidatesOf(file, kind)), [file, kind])
  const kept = candidates.find(({ id }) => id === form.kept)

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="Join duplicates"
        lead="Two records of one thing become one. Everything said of the duplicate is read as said of the one that is kept."
      />
      <RecordForm
        record={record}
        submit="Join the two"
        refused={{
          title: 'These two cannot be joined',
          instead: (
            <>
              Is one of them a mistake? Withdraw it, with a reason:{' '}
              <a href={`/withdraw?record=${form.duplicate}`}>withdraw the duplicate</a>
            </>
          ),
        }}
        onSaved={() => router.push(`/record?id=${form.kept}`)}
      >
        <Choice
          legend="What are they?"
          name="kind"
          options={joinableKinds.map((value) => ({ value, words: `Two ${value}s` }))}
          value={form.kind === '' ? null : form.kind}
          onChoose={(chosen) =>
            change({ kind: chosen, kept: '', keptTyped: '', duplicate: '', duplicateTyped: '' })
          }
          error={errorAt('kind')}
        />
        {form.kind !== '' && (
          <>
            <RecordPicker
              legend="Which one is kept?"
              name="kept"
              findBy="any part of its name or number"
              candidates={candidates}
              typed={form.keptTyped}
              onType={(keptTyped) => change({ keptTyped })}
              picked={form.kept}
              onPick={(id) => change({ kept: id })}
              error={errorAt('kept')}
            />
            <RecordPicker
              legend="Which one is its duplicate?"
              name="duplicate"
              findBy="any part of its name or number"
              candidates={candidates}
              like={kept?.texts[0] ?? ''}
              typed={form.duplicateTyped}
              onType={(duplicateTyped) => change({ duplicateTyped })}
              picked={form.duplicate}
              onPick={(id) => change({ duplicate: id })}
              error={errorAt('duplicate')}
            />
          </>
        )}
        <TextField
          label="How do you know?"
          name="reason"
          hint="For instance: entered twice, or the same switch in hand."
          value={form.reason}
          onChange={(event) => change({ reason: event.target.value })}
          error={errorAt('reason')}
        />
      </RecordForm>
    </Stack>
  )
}
