'use client'

import { useRouter } from 'next/navigation'
import { useMemo, useState } from 'react'
import { accuracyForms } from '@/lib/catalogue/accuracyForms'
import { pressureUnits, unitLabel } from '@/lib/core/pressure'
import { counting } from '@/lib/records/fold/teamFile'
import { gaugeBody } from '@/lib/records/kinds/gauge'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { Explained } from '../equipment/form/Explained'
import { RecordForm } from '../equipment/form/RecordForm'
import { namesOf, readsTheSame } from '../equipment/form/readsTheSame'
import {
  isTwinOpen,
  joinHref,
  type Twin,
  TwinQuestion,
  twinGap,
  twinNamed,
} from '../equipment/form/TwinQuestion'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { type AccuracyField, freshGauge, type GaugeForm, readGaugeForm } from './gaugeForm'
import { exampleWords } from './gaugeWords'

const figureLabels: Readonly<Record<AccuracyField, string>> = {
  percentOfReading: 'Per cent of the reading',
  counts: 'Counts (digits)',
  percentOfSpan: 'Per cent of full scale',
}

/** Adds a gauge to the register, and shows what its accuracy comes to before it is saved. */
export function AddGaugeScreen() {
  const router = useRouter()
  const { file } = useDeviceState()
  const { unit } = usePreference()
  const [fresh] = useState(() => freshGauge(unit))
  const names = useMemo(
    () => namesOf(counting(file.gauges).map(({ id, body }) => ({ id, text: body.name }))),
    [file],
  )
  const twinsOf = (name: string): Twin[] =>
    readsTheSame(names, name).map((id) => ({
      id,
      words: file.gauges.get(id)?.body.name ?? '',
      href: `/record?id=${id}`,
    }))
  const record = useRecordForm<GaugeForm>({
    draft: 'add gauge',
    fresh,
    kind: 'gauge',
    read: (form) => {
      const answer = readGaugeForm(form)
      return 'body' in answer && isTwinOpen(form.twin, twinsOf(form.name))
        ? { gaps: { twin: twinGap } }
        : answer
    },
  })
  const { form, change, errorAt } = record
  const twins = twinsOf(form.name)
  const fields = accuracyForms.find(({ key }) => key === form.accuracy)?.fields ?? []
  const example = exampleOf(form)

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    router.push(again === undefined ? '/gauges' : joinHref('gauge', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/gauges">Gauges</a>}
        title="Add a gauge"
        lead="A manometer with the accuracy that its own sheet prints. Every verdict takes it into account."
      />
      <RecordForm
        record={record}
        submit="Add this gauge"
        refused={{ title: 'This gauge was not added', instead: <a href="/gauges">See the register</a> }}
        onSaved={saved}
      >
        <TextField
          exact
          label="The gauge’s name"
          name="name"
          hint="What is written on it, or what your team calls it."
          value={form.name}
          onChange={(event) => change({ name: event.target.value })}
          error={errorAt('name')}
        />
        <TwinQuestion
          what="gauge"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
        />
        <Select
          label="Unit it displays"
          name="unit"
          options={pressureUnits.map((value) => ({ value, words: unitLabel[value] }))}
          value={form.unit}
          onChange={(event) => {
            const chosen = pressureUnits.find((each) => each === event.target.value)
            if (chosen !== undefined) change({ unit: chosen })
          }}
          error={errorAt('unit')}
        />
        <Explained
          legend="How does its sheet state the accuracy?"
          name="accuracy"
          value={form.accuracy}
          onChoose={(accuracy) => change({ accuracy })}
          error={errorAt('accuracy')}
          answers={accuracyForms.map(({ key, words, example: line }) => [key, words, line] as const)}
        />
        {fields.map((field) => (
          <TextField
            key={field}
            label={figureLabels[field]}
            name={field}
            inputMode="decimal"
            value={form[field]}
            onChange={(event) => change({ [field]: event.target.value })}
            error={errorAt(field)}
          />
        ))}
        <TextField
          label={`Full scale, in ${unitLabel[form.unit]}`}
          name="span"
          inputMode="decimal"
          value={form.span}
          onChange={(event) => change({ span: event.target.value })}
          error={errorAt('spanPascals')}
        />
        <TextField
          label={`Smallest step it shows, in ${unitLabel[form.unit]}`}
          name="resolution"
          inputMode="decimal"
          hint="The last digit, or the distance between two marks."
          value={form.resolution}
          onChange={(event) => change({ resolution: event.target.value })}
          error={errorAt('resolutionPascals')}
        />
        <div role="status">
          {example.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        <TextField
          type="date"
          label="Calibration due"
          name="calibrationDue"
          hint="The last day on which it counts as calibrated."
          value={form.calibrationDue}
          onChange={(event) => change({ calibrationDue: event.target.value })}
          error={errorAt('calibrationDue')}
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

/** What the accuracy comes to, as soon as enough of it is typed; its name is not needed for that. */
function exampleOf(form: GaugeForm): string[] {
  const answer = readGaugeForm({ ...form, name: form.name || 'gauge' })
  const read =
    'body' in answer ? gaugeBody.safeParse({ ...answer.body, calibrationDue: undefined }) : undefined
  return read?.success ? exampleWords(read.data) : []
}
