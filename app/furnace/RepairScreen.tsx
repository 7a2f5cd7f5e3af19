'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { foundFittedOffer } from '@/lib/core/guard'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { useDeviceState } from '../device/deviceContext'
import { candidatesOf, furnaceWords } from '../equipment/candidates'
import { RecordForm } from '../equipment/form/RecordForm'
import { RecordPicker } from '../equipment/form/RecordPicker'
import { leadingBack } from '../equipment/form/returnTo'
import { dayOf } from '../equipment/form/today'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { type RepairForm, readRepairForm } from './repairForm'

/** Records what was done to a furnace. Only the factory part that is listed for the position can be fitted. */
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
  const router = useRouter()
  const [fresh] = useState<RepairForm>(() => ({
    positionId: file.positions.get(file.keptId(asked))?.id ?? '',
    done: '',
    fittedPart: '',
    partTyped: '',
    on: dayOf(new Date()),
    note: '',
  }))
  const record = useRecordForm<RepairForm>({
    draft: `repair ${furnace.id} ${asked}`,
    fresh,
    kind: 'repair',
    read: (form) => readRepairForm(form, furnace.id, file),
  })
  const { form, change, errorAt } = record
  const { rangeId } = furnace.body
  const positions = counting(file.positions).filter(
    ({ id, body }) =>
      id === form.positionId || (rangeId !== undefined && file.keptId(body.rangeId) === file.keptId(rangeId)),
  )
  const parts = useMemo(() => candidatesOf(file, 'part'), [file])
  // Only the factory parts of the position are offered. Whatever else was fitted is looked for, and then refused.
  const offered = useMemo(
    () =>
      (partsByPosition(file).get(form.positionId) ?? [])
        .filter(({ body }) => body.class === 'factory')
        .map(({ id }) => id),
    [file, form.positionId],
  )
  const foundFitted = new URLSearchParams({
    ...(form.positionId === '' ? {} : { position: form.positionId }),
    furnace: furnace.id,
  })

  return (
    <Stack>
      <PageHeader
        above={<a href={`/furnace?id=${furnace.id}`}>{furnaceWords(furnace)}</a>}
        title="Record a repair"
        lead="What was done. It counts as a fix only once readings taken afterwards prove it."
      />
      <RecordForm
        record={record}
        submit="Record the repair"
        refused={{
          title: 'This part cannot be recorded as a repair',
          instead: <a href={`/found-fitted?${foundFitted}`}>{foundFittedOffer}</a>,
        }}
        onSaved={() => router.push(`/furnace?id=${furnace.id}`)}
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
        <RecordPicker
          legend="Which switch was fitted?"
          name="fittedPart"
          findBy="part number"
          candidates={parts}
          offered={offered}
          none="No switch was fitted"
          typed={form.partTyped}
          onType={(partTyped) => change({ partTyped })}
          picked={form.fittedPart}
          onPick={(fittedPart) => change({ fittedPart })}
          error={errorAt('fittedPart')}
          missing={
            <ButtonLink
              kind="quiet"
              href={leadingBack(
                `/equipment/add-part${form.positionId === '' ? '' : `?position=${form.positionId}`}`,
                `/furnace/repair?${query}`,
              )}
            >
              Not on file? Add the part first, with where the maker lists it; what is typed here stays
            </ButtonLink>
          }
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
