'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { positionTemplates } from '@/lib/catalogue/positions'
import {
  betweenWords,
  senseWords,
  stageWords,
  switchKindEntries,
  tapWords,
} from '@/lib/catalogue/switchKinds'
import { betweens, senses, stages, switchKinds, taps } from '@/lib/core/vocabulary'
import { counting } from '@/lib/records/fold/teamFile'
import { useDeviceState } from '../device/deviceContext'
import { ForRequest } from '../phoneDesk/ForRequest'
import { answerHref, carrying, requestIn } from '../phoneDesk/requestAddress'
import { ButtonLink } from '../ui/form/Button'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { candidatesOf, rangeWords } from './candidates'
import { Explained } from './form/Explained'
import { RecordForm } from './form/RecordForm'
import { RecordPicker } from './form/RecordPicker'
import { namesOf, readsTheSame } from './form/readsTheSame'
import { isTwinOpen, joinHref, type Twin, TwinQuestion, twinGap, twinNamed } from './form/TwinQuestion'
import { useRecordForm } from './form/useRecordForm'
import { filledFrom, freshPosition, noTemplate, type PositionForm, readPositionForm } from './positionForm'
import { betweenLines, senseLines, stageLines, tapLines } from './positionLines'

const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1)

/** Adds a switch position to a furnace range, every question explained. */
export function AddPositionScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const asked = query.get('range') ?? ''
  const { file } = useDeviceState()
  const request = requestIn(file, query)
  const range = file.ranges.get(file.keptId(asked))
  const [fresh] = useState(() => freshPosition(range?.id ?? '', request?.body.positionName))
  const positions = useMemo(() => counting(file.positions), [file])
  const inRange = (rangeId: string) =>
    positions.filter(({ body }) => rangeId !== '' && file.keptId(body.rangeId) === file.keptId(rangeId))
  const twinsOf = (form: PositionForm): Twin[] => {
    const siblings = inRange(form.rangeId)
    const names = namesOf(siblings.map(({ id, body }) => ({ id, text: body.name })))
    return readsTheSame(names, form.name).map((id) => ({
      id,
      words: siblings.find((each) => each.id === id)?.body.name ?? '',
      href: `/setpoint?position=${id}`,
    }))
  }
  const record = useRecordForm({
    draft: `add position ${asked}`,
    fresh,
    kind: 'position',
    read: (form) => {
      const answer = readPositionForm(form)
      return 'body' in answer && isTwinOpen(form.twin, twinsOf(form)) ? { gaps: { twin: twinGap } } : answer
    },
  })
  const { form, change, errorAt } = record
  const twins = twinsOf(form)

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    const next = request === undefined ? `/equipment/range?id=${form.rangeId}` : answerHref(request, id)
    router.push(again === undefined ? next : joinHref('position', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={
          range === undefined ? (
            <a href="/equipment">Equipment</a>
          ) : (
            <a href={`/equipment/range?id=${range.id}`}>{rangeWords(file, range)}</a>
          )
        }
        title="Add a switch position"
        lead="Where in the proving circuit a switch sits. A rating belongs to one position and is never carried over to another."
      />
      <ForRequest request={request} />
      <RecordForm
        record={record}
        submit="Add this position"
        refused={{
          title: 'This position was not added',
          instead: <a href="/equipment">See the equipment on file</a>,
        }}
        onSaved={saved}
      >
        {range === undefined && (
          <RecordPicker
            legend="Which furnace range?"
            name="rangeId"
            findBy="model, maker or name"
            candidates={candidatesOf(file, 'equipment range')}
            typed={form.rangeTyped}
            onType={(rangeTyped) => change({ rangeTyped })}
            picked={form.rangeId}
            onPick={(rangeId) => change({ rangeId, sisterId: '' })}
            error={errorAt('rangeId')}
            missing={
              <ButtonLink kind="quiet" href={carrying('/equipment/add-range', request)}>
                Not on file? Add the furnace range
              </ButtonLink>
            }
          />
        )}
        <Explained
          legend="Start from a usual position"
          name="template"
          hint="It fills in the answers below. Check each of them on this furnace."
          value={form.template}
          onChoose={(template) => change(filledFrom(template))}
          answers={[
            ...positionTemplates.map(({ name, about }) => [name, name, about] as const),
            [noTemplate, 'Another one', 'Fills in nothing.'] as const,
          ]}
        />
        <TextField
          label="What the position is called"
          name="name"
          value={form.name}
          onChange={(event) => change({ name: event.target.value })}
          error={errorAt('name')}
        />
        <TwinQuestion
          what="position"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
        />
        <Explained
          legend="Stage"
          name="stage"
          value={form.stage}
          onChoose={(stage) => change({ stage })}
          error={errorAt('stage')}
          answers={stages.map((each) => [each, capital(stageWords[each]), stageLines[each]] as const)}
        />
        <Explained
          legend="Kind of switch"
          name="kind"
          value={form.kind}
          onChoose={(kind) => change({ kind })}
          error={errorAt('kind')}
          answers={switchKinds.map(
            (each) => [each, switchKindEntries[each].words, switchKindEntries[each].hint] as const,
          )}
        />
        {form.kind !== '' && <Quiet>{switchKindEntries[form.kind].careful}</Quiet>}
        <Explained
          legend="Between which points does its pressure act?"
          name="between"
          value={form.between}
          onChoose={(between) => change({ between })}
          error={errorAt('between')}
          answers={betweens.map((each) => [each, capital(betweenWords[each]), betweenLines[each]] as const)}
        />
        <Explained
          legend="Where does its hose end?"
          name="tap"
          value={form.tap}
          onChoose={(tap) => change({ tap })}
          error={errorAt('tap')}
          answers={taps.map((each) => [each, capital(tapWords[each]), tapLines[each]] as const)}
        />
        <Explained
          legend="Suction or positive pressure?"
          name="sense"
          value={form.sense}
          onChoose={(sense) => change({ sense })}
          error={errorAt('sense')}
          answers={senses.map((each) => [each, capital(senseWords[each]), senseLines[each]] as const)}
        />
        <Select
          label="Its sister"
          name="sisterId"
          hint="The other switch of a pair, whose number is most easily taken for this one’s."
          none="None, or not on file yet"
          options={inRange(form.rangeId).map(({ id, body }) => ({ value: id, words: body.name }))}
          value={form.sisterId}
          onChange={(event) => change({ sisterId: event.target.value })}
          error={errorAt('sisterId')}
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
