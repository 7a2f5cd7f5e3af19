'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { unsuitableIn } from '@/lib/records/view/unsuitable'
import { useDeviceState } from '../device/deviceContext'
import { furnaceWords } from '../equipment/candidates'
import { RecordForm } from '../equipment/form/RecordForm'
import { returnTo } from '../equipment/form/returnTo'
import { dayOf } from '../equipment/form/today'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { whatWords } from '../foundFitted/fittedWords'
import { InsteadOfFitting } from '../foundFitted/InsteadOfFitting'
import { Empty } from '../ui/answers/Empty'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { sayDate } from '../ui/words/sayDate'
import { FittedSwitchPicker } from './FittedSwitchPicker'
import { type RepairForm, type RepairOf, readRepairForm } from './repairForm'

/**
 * Records what was done to a furnace, on its own or in a visit of a case. Only the factory part that is listed for
 * the position can be fitted.
 */
export function RepairScreen() {
  const query = useSearchParams()
  const { file } = useDeviceState()
  const furnace = file.furnaces.get(file.keptId(query.get('furnace') ?? ''))
  if (furnace === undefined) {
    return (
      <Stack>
        <PageHeader above={<a href="/">Find</a>} title="Record a repair" />
        <Empty
          what="Which furnace was repaired?"
          why="The address names no furnace that is on this device."
          todo={<a href="/">Find the furnace by site, model or serial</a>}
        />
      </Stack>
    )
  }
  return <Repair furnace={furnace} file={file} query={query} />
}

type Props = { furnace: Entry<FurnaceBody>; file: TeamFile; query: URLSearchParams }

function Repair({ furnace, file, query }: Props) {
  const asked = query.get('position') ?? ''
  const caseId = query.get('case') ?? undefined
  const visitId = query.get('visit') ?? undefined
  const of: RepairOf = { furnaceId: furnace.id, caseId, visitId }
  const home = caseId === undefined ? `/furnace?id=${furnace.id}` : `/case?id=${caseId}`
  const router = useRouter()
  const [fresh] = useState<RepairForm>(() => ({
    positionId: file.positions.get(file.keptId(asked))?.id ?? '',
    done: '',
    switchReplaced: '',
    fittedPart: '',
    partTyped: '',
    partFrom: '',
    parts: '',
    putsRight: '',
    minutes: '',
    on: dayOf(new Date()),
    note: '',
  }))
  const record = useRecordForm<RepairForm>({
    draft: `repair ${furnace.id} ${[asked, visitId].filter(Boolean).join(' ')}`,
    fresh,
    kind: 'repair',
    read: (form) => readRepairForm(form, of, file),
  })
  const { form, change, errorAt } = record
  const { rangeId } = furnace.body
  const positions = counting(file.positions).filter(
    ({ id, body }) =>
      id === form.positionId || (rangeId !== undefined && file.keptId(body.rangeId) === file.keptId(rangeId)),
  )
  const known = { positionId: form.positionId, furnaceId: furnace.id, partId: form.fittedPart }

  const found = unsuitableIn(file, furnace.id)
  const isAboutThePart =
    record.refusal?.rule === 'no general-purpose switch' ||
    record.refusal?.rule === 'no bypass' ||
    record.refusal?.rule === 'only the exact factory part'

  return (
    <Stack>
      <PageHeader
        above={
          <a href={home}>
            {caseId === undefined ? furnaceWords(furnace) : `The case at ${furnace.body.siteLabel}`}
          </a>
        }
        title="Record a repair"
        lead="What was done. It counts as a fix only once readings taken afterwards prove it."
      />
      <RecordForm
        record={record}
        submit="Record the repair"
        refused={
          isAboutThePart
            ? {
                title: 'This cannot be recorded as a repair',
                instead: <InsteadOfFitting known={known} />,
              }
            : {
                title: 'The repair cannot be recorded here',
                instead: (
                  <a href={home}>
                    {caseId === undefined ? 'Go to the furnace' : 'Go to the case; what is typed here stays'}
                  </a>
                ),
              }
        }
        onSaved={() => router.push(returnTo(query, home))}
      >
        <TextField
          label="What was done"
          name="done"
          value={form.done}
          onChange={(event) => change({ done: event.target.value })}
          error={errorAt('done')}
        />
        <Select
          label="Switch position"
          name="positionId"
          none="None, or another part of the furnace"
          options={positions.map(({ id, body }) => ({ value: id, words: body.name }))}
          value={form.positionId}
          onChange={(event) => change({ positionId: event.target.value })}
          error={errorAt('positionId')}
        />
        <Choice
          legend="Was a pressure switch replaced?"
          name="switchReplaced"
          hint="Say it as it was. A switch that need not have been replaced is recorded like any other."
          options={[
            { value: 'no', words: 'No' },
            { value: 'yes', words: 'Yes' },
          ]}
          value={form.switchReplaced === '' ? null : form.switchReplaced}
          onChoose={(switchReplaced) => change({ switchReplaced })}
          error={errorAt('switchReplaced')}
        />
        {form.switchReplaced === 'yes' && (
          <>
            <FittedSwitchPicker
              file={file}
              form={form}
              change={change}
              error={errorAt('fittedPart')}
              here={`/furnace/repair?${query}`}
            />
            <TextField
              label="Where the switch came from"
              name="partFrom"
              hint="The van, a counter, an order with its number. Whoever checks the case asks for it."
              value={form.partFrom}
              onChange={(event) => change({ partFrom: event.target.value })}
              error={errorAt('partFrom')}
            />
          </>
        )}
        {found.length > 0 && (
          <Select
            label="Does it put right what was found fitted?"
            name="putsRight"
            hint="A jumper counts as out only once a repair says so, or somebody rules it out."
            none="No, or nothing of it"
            options={found.map(({ id, body }) => ({
              value: id,
              words: `${whatWords[body.what][0]}, found ${sayDate(body.foundOn)}`,
            }))}
            value={form.putsRight}
            onChange={(event) => change({ putsRight: event.target.value })}
            error={errorAt('putsRight')}
          />
        )}
        <TextField
          label="Other parts and material"
          name="parts"
          hint="With part numbers where they have one, and where they came from."
          value={form.parts}
          onChange={(event) => change({ parts: event.target.value })}
          error={errorAt('parts')}
        />
        <TextField
          label="Minutes of work"
          name="minutes"
          inputMode="numeric"
          value={form.minutes}
          onChange={(event) => change({ minutes: event.target.value })}
          error={errorAt('minutes')}
        />
        <TextField
          type="date"
          label="On which day"
          name="on"
          value={form.on}
          onChange={(event) => change({ on: event.target.value })}
          error={errorAt('on')}
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
