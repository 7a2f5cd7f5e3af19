'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { fuels } from '@/lib/records/kinds/equipmentRange'
import { useDeviceState } from '../device/deviceContext'
import { askedFor } from '../device/openDrafts'
import { candidatesOf } from '../equipment/candidates'
import { RecordForm } from '../equipment/form/RecordForm'
import { RecordPicker } from '../equipment/form/RecordPicker'
import { isTwinOpen, joinHref, TwinQuestion, twinGap, twinNamed } from '../equipment/form/TwinQuestion'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { rangesThatFit } from '../equipment/modelPatterns'
import { Choice } from '../ui/form/Choice'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { freshFor, whereNext } from './addFurnaceAddress'
import { type FurnaceForm, metresTyped, readFurnaceForm } from './furnaceForm'
import { furnaceNamesOf, furnaceTwins } from './furnaceTwins'
import { heightWords } from './heightWords'

/** Adds one furnace at one site, as its data plate names it. */
export function AddFurnaceScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const { file } = useDeviceState()
  const [fresh] = useState<FurnaceForm>(() => freshFor(file, query))
  const names = useMemo(() => furnaceNamesOf(file), [file])
  const record = useRecordForm<FurnaceForm>({
    draft: `add furnace ${askedFor(query)}`,
    fresh,
    kind: 'furnace',
    read: (form) => {
      const twins = furnaceTwins(file, names, form)
      const answer = readFurnaceForm(form, twinNamed('replaces', form.twin, twins))
      return 'body' in answer && isTwinOpen(form.twin, twins) ? { gaps: { twin: twinGap } } : answer
    },
  })
  const { form, change, errorAt } = record
  const twins = furnaceTwins(file, names, form)
  const mayBeReplaced = new Set(twins.filter((twin) => twin.mayBeReplaced).map(({ id }) => id))
  const ranges = useMemo(() => {
    const fitting = new Set(rangesThatFit(file, form.model).map(({ id }) => id))
    return candidatesOf(file, 'equipment range').map((range) =>
      fitting.has(range.id)
        ? { ...range, hint: `${range.hint ?? ''}: stands for ${form.model.trim()}` }
        : range,
    )
  }, [file, form.model])
  const metres = metresTyped(form.elevationFeet, 'the elevation', '4800')

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    router.push(again === undefined ? whereNext(query, id) : joinHref('furnace', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="Add a furnace"
        lead="One furnace at one site. Take model, revision and serial off the furnace’s own data plate, not the coil’s."
      />
      <RecordForm
        record={record}
        submit="Add this furnace"
        refused={{ title: 'This furnace was not added', instead: <a href="/">Find it on file</a> }}
        onSaved={saved}
      >
        <TextField
          label="Site label"
          name="siteLabel"
          hint="What your team calls the site. No household’s name is needed."
          value={form.siteLabel}
          onChange={(event) => change({ siteLabel: event.target.value })}
          error={errorAt('siteLabel')}
        />
        <TextField
          label="Branch"
          name="branch"
          value={form.branch}
          onChange={(event) => change({ branch: event.target.value })}
          error={errorAt('branch')}
        />
        <TextField
          exact
          label="Model number, as the data plate prints it"
          name="model"
          value={form.model}
          onChange={(event) => change({ model: event.target.value })}
          error={errorAt('model')}
        />
        <TextField
          exact
          label="Revision or series"
          name="revision"
          hint="Ratings can differ by it within one model."
          value={form.revision}
          onChange={(event) => change({ revision: event.target.value })}
          error={errorAt('revision')}
        />
        <TextField
          exact
          label="Serial number"
          name="serial"
          value={form.serial}
          onChange={(event) => change({ serial: event.target.value })}
          error={errorAt('serial')}
        />
        <TwinQuestion
          what="furnace"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
          replaces={(twin) =>
            mayBeReplaced.has(twin.id)
              ? {
                  words: `It replaces ${twin.words}`,
                  hint: 'A replaced furnace starts its own history. The old one stays readable.',
                }
              : undefined
          }
        />
        <RecordPicker
          legend="Which furnace range is it of?"
          name="rangeId"
          findBy="model, maker or name"
          hint="Offered by the model number. Check it on the data plate before you choose."
          candidates={ranges}
          like={form.model}
          none="None of these, or not known yet"
          typed={form.rangeTyped}
          onType={(rangeTyped) => change({ rangeTyped })}
          picked={form.rangeId}
          onPick={(rangeId) => change({ rangeId })}
          error={errorAt('rangeId')}
        />
        <TextField
          label="Elevation of the site, in feet"
          name="elevationFeet"
          inputMode="numeric"
          hint={
            metres.ok && metres.value !== undefined
              ? heightWords(metres.value)
              : 'It is on maps and in phone compasses. Thinner air wants another switch.'
          }
          value={form.elevationFeet}
          onChange={(event) => change({ elevationFeet: event.target.value })}
          error={errorAt('elevationMetres')}
        />
        <Choice
          legend="Fuel"
          name="fuel"
          options={fuels.filter((fuel) => fuel !== 'either').map((value) => ({ value, words: value }))}
          value={form.fuel}
          onChoose={(fuel) => change({ fuel })}
          error={errorAt('fuel')}
        />
        <TextField
          label="Length of the vent, in feet"
          name="ventFeet"
          inputMode="decimal"
          value={form.ventFeet}
          onChange={(event) => change({ ventFeet: event.target.value })}
          error={errorAt('ventLengthMetres')}
        />
        <TextField
          label="What the vent is made of"
          name="ventMaterial"
          hint="With its size, for instance plastic, 2 in."
          value={form.ventMaterial}
          onChange={(event) => change({ ventMaterial: event.target.value })}
          error={errorAt('ventMaterial')}
        />
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
