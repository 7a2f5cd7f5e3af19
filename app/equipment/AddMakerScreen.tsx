'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo } from 'react'
import { counting } from '@/lib/records/fold/teamFile'
import { useDeviceState } from '../device/deviceContext'
import { ForRequest } from '../phoneDesk/ForRequest'
import { carrying, requestIn } from '../phoneDesk/requestAddress'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { isNearOpen, type Near, NearQuestion, nearGap } from './form/NearQuestion'
import { nearNames } from './form/nearNames'
import { RecordForm } from './form/RecordForm'
import { namesOf, readsTheSame } from './form/readsTheSame'
import { isTwinOpen, joinHref, type Twin, TwinQuestion, twinGap, twinNamed } from './form/TwinQuestion'
import { type FormAnswer, useRecordForm } from './form/useRecordForm'

/** Adds a maker of furnaces. */
export function AddMakerScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const model = query.get('model') ?? ''
  const { file } = useDeviceState()
  const request = requestIn(file, query)
  const names = useMemo(
    () => namesOf(counting(file.makers).map(({ id, body }) => ({ id, text: body.name }))),
    [file],
  )
  const twinsOf = (name: string): Twin[] =>
    readsTheSame(names, name).map((id) => ({
      id,
      words: file.makers.get(id)?.body.name ?? '',
      href: `/record?id=${id}`,
    }))
  const nearTo = (name: string): Near[] =>
    twinsOf(name).length > 0
      ? []
      : nearNames(names, name).map((id) => ({ id, words: file.makers.get(id)?.body.name ?? '' }))
  const record = useRecordForm({
    draft: 'add maker',
    fresh: { name: '', note: '', twin: '', another: '' },
    kind: 'maker',
    read: ({ name, note, twin, another }): FormAnswer => {
      if (name.trim() === '') return { gaps: { name: 'Type the maker’s name.' } }
      if (isNearOpen(another, nearTo(name))) return { gaps: { another: nearGap('maker') } }
      return isTwinOpen(twin, twinsOf(name)) ? { gaps: { twin: twinGap } } : { body: { name, note } }
    },
  })
  const { form, change, errorAt } = record
  const twins = twinsOf(form.name)

  const rangeHref = (maker: string) =>
    carrying(
      `/equipment/add-range?${new URLSearchParams({ maker, ...(model === '' ? {} : { model }) })}`,
      request,
    )

  function use(id: string) {
    record.startAfresh()
    router.push(rangeHref(id))
  }

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    router.push(again === undefined ? rangeHref(id) : joinHref('maker', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="Add a maker"
        lead="The maker of the furnace, as its data plate names it. Its furnace ranges come next."
      />
      <ForRequest request={request} />
      <RecordForm
        record={record}
        submit="Add this maker"
        refused={{
          title: 'This maker was not added',
          instead: <a href="/equipment">See the makers on file</a>,
        }}
        onSaved={saved}
      >
        <TextField
          label="The maker’s name"
          name="name"
          value={form.name}
          onChange={(event) => change({ name: event.target.value })}
          error={errorAt('name')}
        />
        <TwinQuestion
          what="maker"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
        />
        <NearQuestion
          what="maker"
          near={nearTo(form.name)}
          answer={form.another}
          onAnswer={(another) => change({ another })}
          onUse={use}
          error={errorAt('another')}
        />
        <TextArea
          label="Note"
          name="note"
          hint="For instance how its revisions or serials are to be read."
          value={form.note}
          onChange={(event) => change({ note: event.target.value })}
          error={errorAt('note')}
        />
      </RecordForm>
    </Stack>
  )
}
