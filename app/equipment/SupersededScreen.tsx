'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { useDeviceState } from '../device/deviceContext'
import { ButtonLink } from '../ui/form/Button'
import { Check } from '../ui/form/Check'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { candidatesOf } from './candidates'
import { Explained } from './form/Explained'
import { RecordForm } from './form/RecordForm'
import { RecordPicker } from './form/RecordPicker'
import { leadingBack } from './form/returnTo'
import { useRecordForm } from './form/useRecordForm'
import { freshSuperseded, onFileAlready, readSupersededForm } from './supersededForm'

/** Says that the maker replaced one part number by another. The rating never goes with it. */
export function SupersededScreen() {
  const router = useRouter()
  const old = useSearchParams().get('old') ?? ''
  const { file } = useDeviceState()
  const [fresh] = useState(() => freshSuperseded(file.parts.get(file.keptId(old))?.id ?? ''))
  const parts = useMemo(() => candidatesOf(file, 'part'), [file])
  // A factory part is what replaces a factory part, so nothing else is offered.
  const offered = useMemo(
    () => parts.filter(({ id }) => file.parts.get(id)?.body.class === 'factory').map(({ id }) => id),
    [file, parts],
  )
  const record = useRecordForm({
    draft: `superseded ${old}`,
    fresh,
    kind: 'supersession',
    read: readSupersededForm,
  })
  const { form, change, errorAt } = record
  const known = onFileAlready(file, form.oldPartId, form.newPartId)
  const missing = (
    <ButtonLink
      kind="quiet"
      href={leadingBack('/equipment/add-part', `/equipment/superseded${old === '' ? '' : `?old=${old}`}`)}
    >
      Not on file? Add the part first; what is chosen here stays
    </ButtonLink>
  )

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="A part is superseded"
        lead="The maker replaced one part number by another. The old number stays findable; its rating is not carried over."
      />
      <RecordForm
        record={record}
        submit="Record the supersession"
        refused={{
          title: 'This supersession was not recorded',
          instead: (
            <a href="/found-fitted">Is the general-purpose switch in a furnace? Record it as found fitted</a>
          ),
        }}
        onSaved={() => router.push('/equipment')}
      >
        <RecordPicker
          legend="Old part number"
          name="oldPartId"
          findBy="any part of the number"
          candidates={parts}
          typed={form.oldTyped}
          onType={(oldTyped) => change({ oldTyped })}
          picked={form.oldPartId}
          onPick={(oldPartId) => change({ oldPartId })}
          error={errorAt('oldPartId')}
        />
        <RecordPicker
          legend="New part number"
          name="newPartId"
          findBy="any part of the number"
          candidates={parts}
          offered={offered}
          typed={form.newTyped}
          onType={(newTyped) => change({ newTyped })}
          picked={form.newPartId}
          onPick={(newPartId) => change({ newPartId })}
          error={errorAt('newPartId')}
          missing={missing}
        />
        {known !== undefined && (
          <p role="status">
            {known.words} <a href={known.href}>See that record</a>
          </p>
        )}
        <Explained
          legend="Its setting"
          name="setting"
          value={form.setting}
          onChoose={(setting) => change({ setting })}
          error={errorAt('setting')}
          answers={[
            ['same', 'Stated as the same', 'Even then the new number needs a report of its own.'],
            ['changed', 'Stated as changed', 'For instance after a history of needless trips.'],
            ['not stated', 'Not stated', 'Ask: did the setting change?'],
          ]}
        />
        <Check
          name="kit"
          label="The new number is a kit"
          hint="A switch together with hose, orifice or label. Fit the whole kit."
          checked={form.kit}
          onChange={(event) => change({ kit: event.target.checked })}
        />
        <TextField
          label="Where it is stated"
          name="statedIn"
          hint="The document and its page, or the call and its reference."
          value={form.statedIn}
          onChange={(event) => change({ statedIn: event.target.value })}
          error={errorAt('statedIn')}
        />
        <TextField
          type="date"
          label="Since when, if it is stated"
          name="on"
          value={form.on}
          onChange={(event) => change({ on: event.target.value })}
          error={errorAt('on')}
        />
      </RecordForm>
    </Stack>
  )
}
