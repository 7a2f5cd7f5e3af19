'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { counting } from '@/lib/records/fold/teamFile'
import { fuels, heatKinds } from '@/lib/records/kinds/equipmentRange'
import { useDeviceState } from '../device/deviceContext'
import { ForRequest } from '../phoneDesk/ForRequest'
import { carrying, requestIn } from '../phoneDesk/requestAddress'
import { ButtonLink } from '../ui/form/Button'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { SideBySide, Stack } from '../ui/paper/Stack'
import { candidatesOf, rangeWords } from './candidates'
import { isNearOpen, type Near, NearQuestion, nearGap } from './form/NearQuestion'
import { nearNames } from './form/nearNames'
import { RecordForm } from './form/RecordForm'
import { namesOf, readsTheSame } from './form/readsTheSame'
import { isTwinOpen, joinHref, type Twin, TwinQuestion, twinGap, twinNamed } from './form/TwinQuestion'
import { useRecordForm } from './form/useRecordForm'
import { patternsIn } from './modelPatterns'
import { freshRange, type RangeForm, readRangeForm } from './rangeForm'

/** Adds a range of furnaces that share their switches. */
export function AddRangeScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const model = query.get('model')?.trim() ?? ''
  const { file } = useDeviceState()
  const request = requestIn(file, query)
  const [fresh] = useState(() => freshRange(model))
  // Ranges by their names and by each of their patterns; a pattern's key carries its range.
  const names = useMemo(
    () =>
      namesOf(
        counting(file.ranges).flatMap(({ id, body }) =>
          [body.name, ...body.modelPatterns].map((text, at) => ({ id: `${id} ${at}`, text })),
        ),
      ),
    [file],
  )
  const twinsOf = (form: RangeForm): Twin[] => {
    const ids = [form.name, ...patternsIn(form.patterns)]
      .flatMap((text) => readsTheSame(names, text))
      .map((key) => key.split(' ')[0]!)
    return [...new Set(ids)].flatMap((id) => {
      const range = file.ranges.get(id)
      return range === undefined
        ? []
        : [{ id, words: rangeWords(file, range), href: `/equipment/range?id=${id}` }]
    })
  }
  // A name near that of another range of the same maker; of another maker's it says nothing.
  const nearTo = ({ makerId, name }: RangeForm): Near[] => {
    const ofMaker = counting(file.ranges).filter(({ body }) => file.keptId(body.makerId) === makerId)
    const near = nearNames(namesOf(ofMaker.map(({ id, body }) => ({ id, text: body.name }))), name)
    return near
      .flatMap((id) => ofMaker.find((range) => range.id === id) ?? [])
      .map((range) => ({
        id: range.id,
        words: rangeWords(file, range),
      }))
  }
  // A maker that was just added is taken from the address, until another is chosen.
  const withMaker = (form: RangeForm): RangeForm => ({
    ...form,
    makerId: form.makerId || (file.makers.get(file.keptId(query.get('maker') ?? ''))?.id ?? ''),
  })
  const nearAsked = (form: RangeForm): Near[] => (twinsOf(form).length > 0 ? [] : nearTo(form))
  const record = useRecordForm({
    draft: `add range ${model}`,
    fresh,
    kind: 'equipment range',
    read: (typed) => {
      const form = withMaker(typed)
      const answer = readRangeForm(form)
      if (!('body' in answer)) return answer
      if (isTwinOpen(form.twin, twinsOf(form))) return { gaps: { twin: twinGap } }
      return isNearOpen(form.another, nearAsked(form)) ? { gaps: { another: nearGap('range') } } : answer
    },
  })
  const { change, errorAt } = record
  const form = withMaker(record.form)
  const twins = twinsOf(form)

  function use(id: string) {
    record.startAfresh()
    router.push(carrying(`/equipment/range?id=${id}`, request))
  }

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    const next =
      request === undefined
        ? `/equipment/range?id=${id}`
        : carrying(`/equipment/add-position?range=${id}`, request)
    router.push(again === undefined ? next : joinHref('equipment range', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="Add a furnace range"
        lead="One maker, one family, one size or a pattern of sizes: furnaces that share their switches."
      />
      <ForRequest request={request} />
      <RecordForm
        record={record}
        submit="Add this range"
        refused={{
          title: 'This range was not added',
          instead: <a href="/equipment">See the ranges on file</a>,
        }}
        onSaved={saved}
      >
        <Select
          label="Maker"
          name="makerId"
          none="Choose the maker"
          options={candidatesOf(file, 'maker').map(({ id, words }) => ({ value: id, words }))}
          value={form.makerId}
          onChange={(event) => change({ makerId: event.target.value })}
          error={errorAt('makerId')}
        />
        <ButtonLink
          kind="quiet"
          href={carrying(
            `/equipment/add-maker${model === '' ? '' : `?${new URLSearchParams({ model })}`}`,
            request,
          )}
        >
          Not in the list? Add the maker; what is typed here stays
        </ButtonLink>
        <TextField
          label="Name of the range"
          name="name"
          hint="As its literature calls it."
          value={form.name}
          onChange={(event) => change({ name: event.target.value })}
          error={errorAt('name')}
        />
        <TextArea
          exact
          label="Model numbers, one a line"
          name="patterns"
          hint="Every character as printed. * stands for any characters, ? for one."
          value={form.patterns}
          onChange={(event) => change({ patterns: event.target.value })}
          error={errorAt('modelPatterns')}
        />
        <TwinQuestion
          what="range"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
        />
        <NearQuestion
          what="range"
          near={nearAsked(form)}
          answer={form.another}
          onAnswer={(another) => change({ another })}
          onUse={use}
          error={errorAt('another')}
        />
        <Choice
          legend="Fuel"
          name="fuel"
          options={fuels.map((value) => ({ value, words: value }))}
          value={form.fuel}
          onChoose={(fuel) => change({ fuel })}
          error={errorAt('fuel')}
        />
        <Choice
          legend="Condensing?"
          name="heat"
          options={heatKinds.map((value) => ({ value, words: value }))}
          value={form.heat}
          onChoose={(heat) => change({ heat })}
          error={errorAt('heat')}
        />
        <SideBySide>
          <TextField
            exact
            label="First revision"
            name="revisionFrom"
            hint="Only where its switches differ by revision."
            value={form.revisionFrom}
            onChange={(event) => change({ revisionFrom: event.target.value })}
            error={errorAt('revisions.from')}
          />
          <TextField
            exact
            label="Last revision"
            name="revisionTo"
            hint="Empty: no last one."
            value={form.revisionTo}
            onChange={(event) => change({ revisionTo: event.target.value })}
            error={errorAt('revisions.to')}
          />
          <TextField
            exact
            label="First serial"
            name="serialFrom"
            hint="Only where a change came within a revision."
            value={form.serialFrom}
            onChange={(event) => change({ serialFrom: event.target.value })}
            error={errorAt('serials.from')}
          />
          <TextField
            exact
            label="Last serial"
            name="serialTo"
            hint="Empty: no last one."
            value={form.serialTo}
            onChange={(event) => change({ serialTo: event.target.value })}
            error={errorAt('serials.to')}
          />
        </SideBySide>
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
