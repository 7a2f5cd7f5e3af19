'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { counting } from '@/lib/records/fold/teamFile'
import { partClasses } from '@/lib/records/kinds/part'
import { partsByPosition } from '@/lib/records/view/findEntries'
import { useDeviceState } from '../device/deviceContext'
import { askedFor } from '../device/openDrafts'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { candidatesOf } from './candidates'
import { Explained } from './form/Explained'
import { isNearOpen, type Near, NearQuestion, nearGap } from './form/NearQuestion'
import { nearNames } from './form/nearNames'
import { PositionsPicker } from './form/PositionsPicker'
import { RecordForm } from './form/RecordForm'
import { namesOf, readsTheSame } from './form/readsTheSame'
import { returnTo } from './form/returnTo'
import { isTwinOpen, joinHref, type Twin, TwinQuestion, twinGap, twinNamed } from './form/TwinQuestion'
import { useRecordForm } from './form/useRecordForm'
import { GeneralPurposeNote } from './GeneralPurposeNote'
import { partClassLines, partClassNames } from './partClassWords'
import { freshPart, isGeneralPurpose, type PartForm, readPartForm } from './partForm'

/** Adds a switch by its part number: what it is, who lists it and where, and for which positions. */
export function AddPartScreen() {
  const router = useRouter()
  const query = useSearchParams()
  const { file } = useDeviceState()
  const position = file.positions.get(file.keptId(query.get('position') ?? ''))
  const range = position && file.ranges.get(file.keptId(position.body.rangeId))
  const [fresh] = useState(() =>
    freshPart({
      partNumber: query.get('number') ?? '',
      makerId: range === undefined ? '' : file.keptId(range.body.makerId),
      positionIds: position === undefined ? [] : [position.id],
    }),
  )
  const names = useMemo(
    () => namesOf(counting(file.parts).map(({ id, body }) => ({ id, text: body.partNumber }))),
    [file],
  )
  const positions = useMemo(() => candidatesOf(file, 'position'), [file])
  const twinsOf = (form: PartForm): Twin[] =>
    readsTheSame(names, form.partNumber).flatMap((id) => {
      const part = file.parts.get(id)
      const words = part && `${part.body.partNumber} (${partClassNames[part.body.class].toLowerCase()})`
      return words === undefined ? [] : [{ id, words, href: `/record?id=${id}` }]
    })
  // A number near that of another part of the same position; elsewhere neighbours are the rule.
  const nearTo = (form: PartForm): Near[] => {
    if (form.class === 'general-purpose' || twinsOf(form).length > 0) return []
    const parts = partsByPosition(file)
    const listed = new Map(
      form.positionIds.flatMap((id) => parts.get(file.keptId(id)) ?? []).map((part) => [part.id, part]),
    )
    const numbers = namesOf([...listed.values()].map(({ id, body }) => ({ id, text: body.partNumber })))
    return nearNames(numbers, form.partNumber).map((id) => ({
      id,
      words: listed.get(id)?.body.partNumber ?? '',
    }))
  }
  const record = useRecordForm({
    draft: `add part ${askedFor(query)}`,
    fresh,
    kind: 'part',
    read: (form) => {
      const answer = readPartForm(form)
      if (!('body' in answer)) return answer
      if (isTwinOpen(form.twin, twinsOf(form))) return { gaps: { twin: twinGap } }
      return isNearOpen(form.another, nearTo(form)) ? { gaps: { another: nearGap('part') } } : answer
    },
  })
  const { form, change, errorAt } = record
  const twins = twinsOf(form)

  const next = returnTo(query, range === undefined ? '/equipment' : `/equipment/range?id=${range.id}`)

  function use() {
    record.startAfresh()
    router.push(next)
  }

  function saved(id: string) {
    const again = twinNamed('again', form.twin, twins)
    router.push(again === undefined ? next : joinHref('part', id, again))
  }

  return (
    <Stack>
      <PageHeader
        above={<a href="/equipment">Equipment</a>}
        title="Add a part"
        lead="A switch by its part number. Old numbers are worth adding too: they are what is read off a dead part."
      />
      <RecordForm
        record={record}
        submit="Add this part"
        refused={{
          title: 'This part was not added',
          instead: <a href="/equipment">See the parts on file</a>,
        }}
        onSaved={saved}
      >
        <TextField
          exact
          label="Part number"
          name="partNumber"
          hint="Every character, as it is printed or listed."
          value={form.partNumber}
          onChange={(event) => change({ partNumber: event.target.value })}
          error={errorAt('partNumber')}
        />
        <TwinQuestion
          what="part"
          twins={twins}
          answer={form.twin}
          onAnswer={(twin) => change({ twin })}
          error={errorAt('twin')}
        />
        <Explained
          legend="Can its setting be changed in the field?"
          name="fieldAdjustable"
          value={form.fieldAdjustable}
          onChoose={(fieldAdjustable) => change({ fieldAdjustable })}
          error={errorAt('fieldAdjustable')}
          answers={[
            ['no', 'No, it is fixed'],
            ['yes', 'Yes, it is adjustable', 'A screw, a dial, or a span of settings on its label.'],
          ]}
        />
        <Explained
          legend="What is it?"
          name="class"
          value={form.class}
          onChoose={(partClass) => change({ class: partClass })}
          error={errorAt('class')}
          answers={partClasses.map((each) => [each, partClassNames[each], partClassLines[each]] as const)}
        />
        {isGeneralPurpose(form) && <GeneralPurposeNote />}
        {form.class !== 'general-purpose' && (
          <>
            <Select
              label="The furnace maker who lists it"
              name="makerId"
              none={form.class === 'factory' ? 'Choose the maker' : 'None known'}
              options={candidatesOf(file, 'maker').map(({ id, words }) => ({ value: id, words }))}
              value={form.makerId}
              onChange={(event) => change({ makerId: event.target.value })}
              error={errorAt('makerId')}
            />
            <TextField
              label="Where it is listed"
              name="listedIn"
              hint="So that somebody else finds it: the document and its page, or the call and its reference."
              value={form.listedIn}
              onChange={(event) => change({ listedIn: event.target.value })}
              error={errorAt('listedIn')}
            />
            <PositionsPicker
              legend="For which switch positions?"
              hint="Only those that the maker lists it for. It is never taken over to a sister switch."
              candidates={positions}
              typed={form.positionTyped}
              onType={(positionTyped) => change({ positionTyped })}
              picked={form.positionIds}
              onPick={(positionIds) => change({ positionIds })}
              error={errorAt('positionIds')}
            />
            <NearQuestion
              what="part"
              near={nearTo(form)}
              answer={form.another}
              onAnswer={(another) => change({ another })}
              onUse={use}
              error={errorAt('another')}
            />
          </>
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
