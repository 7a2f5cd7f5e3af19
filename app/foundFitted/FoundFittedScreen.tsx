'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import { foundFittedBody } from '@/lib/records/kinds/foundFitted'
import { partNamed } from '@/lib/records/view/partNamed'
import { useDeviceState } from '../device/deviceContext'
import { candidatesOf, furnaceWords } from '../equipment/candidates'
import { Explained } from '../equipment/form/Explained'
import { RecordForm } from '../equipment/form/RecordForm'
import { RecordPicker } from '../equipment/form/RecordPicker'
import { dayOf } from '../equipment/form/today'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { DangerSheet } from '../ui/danger/DangerSheet'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { whatWords } from './fittedWords'
import { type FoundFittedForm, freshFoundFitted, readFoundFittedForm } from './foundFittedForm'
import { WhatNow } from './WhatNow'

/** Records a switch that is in although it should not be. It is always accepted, and says at once what to do now. */
export function FoundFittedScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const saved = file.foundFitted.get(query.get('saved') ?? '')
  return saved === undefined ? <Record /> : <WhatNow found={saved} file={file} />
}

function Record() {
  const router = useRouter()
  const query = useSearchParams()
  const { file } = useDeviceState()
  const furnaceAsked = file.furnaces.get(file.keptId(query.get('furnace') ?? ''))
  const positionAsked = file.positions.get(file.keptId(query.get('position') ?? ''))
  const [fresh] = useState(() =>
    freshFoundFitted({
      furnaceId: furnaceAsked?.id ?? '',
      positionId: positionAsked?.id ?? '',
      foundOn: dayOf(new Date()),
      ...refusedSwitch(file, query),
    }),
  )
  const record = useRecordForm<FoundFittedForm>({
    draft: [
      'found fitted',
      positionAsked?.id,
      furnaceAsked?.id,
      query.get('fitted') ?? query.get('printed'),
    ].join(' '),
    fresh,
    kind: 'found fitted',
    read: readFoundFittedForm,
  })
  const { form, change, errorAt } = record
  const furnaces = useMemo(() => candidatesOf(file, 'furnace'), [file])
  const parts = useMemo(() => candidatesOf(file, 'part'), [file])
  const rangeId = positionAsked?.body.rangeId ?? file.furnaces.get(file.keptId(form.furnaceId))?.body.rangeId
  const positions = counting(file.positions).filter(
    ({ id, body }) =>
      id === form.positionId || (rangeId !== undefined && file.keptId(body.rangeId) === file.keptId(rangeId)),
  )

  function showWhatNow(id: string) {
    const next = new URLSearchParams(query.toString())
    next.set('saved', id)
    router.replace(`/found-fitted?${next}`)
  }

  return (
    <Stack>
      <PageHeader
        above={
          furnaceAsked === undefined ? (
            <a href="/">Find</a>
          ) : (
            <a href={`/furnace?id=${furnaceAsked.id}`}>{furnaceWords(furnaceAsked)}</a>
          )
        }
        title="Found fitted"
        lead="A switch is in that should not be, or something defeats it. Whatever is true is accepted here, also when it was us."
      />
      <div>
        <p>Is the furnace running now? Gas and power off first, if that is safe; then write.</p>
        <DangerSheet look="words" />
      </div>
      <RecordForm
        record={record}
        submit="Record what was found"
        refused={{ title: 'This could not be recorded', instead: <a href="/waiting">See what waits here</a> }}
        onSaved={showWhatNow}
      >
        <Explained
          legend="What is in?"
          name="what"
          value={form.what}
          onChoose={(what) => change({ what })}
          error={errorAt('what')}
          answers={foundFittedBody.shape.what.options.map((each) => [each, ...whatWords[each]] as const)}
        />
        <TextField
          exact
          label="What is printed on it"
          name="printed"
          hint="Letter for letter, every sign. Type nothing where nothing is printed."
          value={form.printed}
          onChange={(event) => change({ printed: event.target.value })}
          error={errorAt('printed')}
        />
        {form.printed.trim() !== '' && parts.length > 0 && (
          <RecordPicker
            legend="Is it one of the parts on file?"
            name="partId"
            findBy="part number"
            candidates={parts}
            like={form.printed}
            none="None of these"
            typed={form.partTyped}
            onType={(partTyped) => change({ partTyped })}
            picked={form.partId}
            onPick={(partId) => change({ partId })}
            error={errorAt('partId')}
          />
        )}
        <TextField
          label="When was it fitted?"
          name="fittedWhen"
          hint="A day, a month or a year as far as somebody knows, or not known."
          value={form.fittedWhen}
          onChange={(event) => change({ fittedWhen: event.target.value })}
          error={errorAt('fittedWhen')}
        />
        <Explained
          legend="Who fitted it?"
          name="fittedBy"
          value={form.fittedBy}
          onChoose={(fittedBy) => change({ fittedBy })}
          error={errorAt('fittedBy')}
          answers={[
            ['us', 'Us', 'Nobody is asked to explain. Knowing it helps the next household.'],
            ['somebody else', 'Somebody else'],
            ['not known', 'Not known'],
          ]}
        />
        {form.fittedBy === 'somebody else' && (
          <TextField
            label="Who, as far as it matters"
            name="who"
            hint="A company or a trade rather than a person’s name. It may stay empty."
            value={form.who}
            onChange={(event) => change({ who: event.target.value })}
          />
        )}
        <TextField
          type="date"
          label="Found on"
          name="foundOn"
          value={form.foundOn}
          onChange={(event) => change({ foundOn: event.target.value })}
          error={errorAt('foundOn')}
        />
        {furnaceAsked === undefined && (
          <RecordPicker
            legend="In which furnace?"
            name="furnaceId"
            findBy="site, model or serial"
            candidates={furnaces}
            none="It is not on file"
            typed={form.furnaceTyped}
            onType={(furnaceTyped) => change({ furnaceTyped })}
            picked={form.furnaceId}
            onPick={(furnaceId) => change({ furnaceId })}
            error={errorAt('furnaceId')}
          />
        )}
        {form.furnaceId === '' && (
          <TextField
            exact
            label="Model number, as the data plate prints it"
            name="model"
            value={form.model}
            onChange={(event) => change({ model: event.target.value })}
            error={errorAt('model')}
          />
        )}
        {positions.length > 0 && (
          <Select
            label="At which switch position?"
            name="positionId"
            none="Not known"
            options={positions.map(({ id, body }) => ({ value: id, words: body.name }))}
            value={form.positionId}
            onChange={(event) => change({ positionId: event.target.value })}
            error={errorAt('positionId')}
          />
        )}
        <TextArea
          label="Note"
          name="note"
          value={form.note}
          onChange={(event) => change({ note: event.target.value })}
          error={errorAt('note')}
        />
      </RecordForm>
    </Stack>
  )
}

/**
 * What is known of the switch already, where another form has refused it: which part it is, what it is, and what is
 * printed on it. All of it can be changed.
 */
function refusedSwitch(file: TeamFile, query: URLSearchParams): Partial<FoundFittedForm> {
  const printed = query.get('printed') ?? ''
  const part = file.parts.get(query.get('fitted') ?? '') ?? partNamed(file, printed)
  const isGeneric = part?.body.class === 'general-purpose' || part?.body.fieldAdjustable === true
  return {
    partId: part?.id ?? '',
    printed: printed || (part?.body.partNumber ?? ''),
    ...(isGeneric ? { what: 'adjustable or general-purpose switch' as const } : {}),
  }
}
