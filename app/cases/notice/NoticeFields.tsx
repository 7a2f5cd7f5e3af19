'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { FurnaceBody } from '@/lib/records/kinds/furnace'
import type { ShutDownNoticeBody } from '@/lib/records/kinds/shutDownNotice'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { noticeNeeds } from '@/lib/records/view/case/notices'
import { useAdd } from '../../device/useAdd'
import { RecordForm } from '../../equipment/form/RecordForm'
import { dayOf } from '../../equipment/form/today'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { Problem } from '../../ui/answers/Problem'
import { Check } from '../../ui/form/Check'
import { Choice } from '../../ui/form/Choice'
import { asOptions } from '../../ui/form/option'
import { TextArea } from '../../ui/form/TextArea'
import { TextField } from '../../ui/form/TextField'
import { replacedNotice } from './anew'
import { freshNotice, type NoticeForm, noticeAgain, noticeSoFar, readNoticeForm } from './noticeForm'
import { authorityWords, stateWords } from './noticeWords'

type Props = {
  furnace: Entry<FurnaceBody>
  file: TeamFile
  /** The notice whose place this one takes. */
  older: Entry<ShutDownNoticeBody> | undefined
  view: CaseView | undefined
  /** The visit that could end with it. */
  openVisitId: string | undefined
  /** It was opened to end that visit. */
  endsVisit: boolean
}

/** The form of a shut-down notice, in the order of the work. What it does not say yet is listed while it is written. */
export function NoticeFields({ furnace, file, older, view, openVisitId, endsVisit }: Props) {
  const router = useRouter()
  const { add, trouble } = useAdd()
  const caseId = view?.file.entry.id ?? older?.body.caseId
  const mayEndVisit = caseId !== undefined && openVisitId !== undefined && older === undefined
  const [fresh] = useState<NoticeForm>(() =>
    older === undefined
      ? freshNotice({
          found: view?.dangers.open.map(({ sentence }) => sentence).join(' ') ?? '',
          on: dayOf(new Date()),
          endsVisit: endsVisit ? 'yes' : '',
        })
      : noticeAgain(older.body),
  )
  const record = useRecordForm<NoticeForm>({
    draft: `shut-down ${furnace.id} ${[caseId, older?.id].filter(Boolean).join(' ')}`,
    fresh,
    kind: 'shut-down notice',
    read: (form) =>
      readNoticeForm(
        form,
        { furnaceId: furnace.id, ...(caseId === undefined ? {} : { caseId }) },
        mayEndVisit,
      ),
  })
  const { form, change, errorAt } = record
  const unsaid = noticeNeeds(noticeSoFar(form))

  async function saved(noticeId: string) {
    const together =
      older !== undefined
        ? replacedNotice(file, older.id, noticeId)
        : mayEndVisit && form.endsVisit === 'yes'
          ? [{ kind: 'ending', body: { caseId, visitId: openVisitId, how: 'left off', noticeId } }]
          : []
    if ((await add(together)) !== undefined) router.push(`/notice?id=${noticeId}`)
  }

  return (
    <RecordForm
      record={record}
      submit="Record the notice"
      refused={{
        title: 'The notice was not recorded',
        instead: <a href={`/furnace?id=${furnace.id}`}>Write it from the furnace</a>,
      }}
      onSaved={(id) => void saved(id)}
    >
      <Choice
        legend="The gas to the furnace"
        name="gas"
        options={asOptions(['off', 'on', 'not known'], stateWords)}
        value={form.gas === '' ? null : form.gas}
        onChoose={(gas) => change({ gas })}
        error={errorAt('gas')}
      />
      <Choice
        legend="The power to the furnace"
        name="power"
        options={asOptions(['off', 'on', 'not known'], stateWords)}
        value={form.power === '' ? null : form.power}
        onChoose={(power) => change({ power })}
        error={errorAt('power')}
      />
      <Check
        name="tagged"
        label="A tag is on the furnace"
        checked={form.tagged}
        onChange={(event) => change({ tagged: event.target.checked })}
        error={errorAt('tagged')}
      />
      <TextArea
        label="What was found"
        name="found"
        hint={
          older === undefined && (view?.dangers.open.length ?? 0) > 0
            ? 'Taken from the dangers that are open in the case. Add where it was seen.'
            : 'In words that the household understands.'
        }
        value={form.found}
        onChange={(event) => change({ found: event.target.value })}
        error={errorAt('found')}
      />
      <TextArea
        label="Do not relight until"
        name="doNotRelightUntil"
        hint="What has to be done, and shown to be done, before anybody lights it."
        value={form.doNotRelightUntil}
        onChange={(event) => change({ doNotRelightUntil: event.target.value })}
        error={errorAt('doNotRelightUntil')}
      />
      <TextField
        label="Who was told"
        name="told"
        hint="By what they are to the house: owner, tenant, caretaker. No name is needed."
        value={form.told}
        onChange={(event) => change({ told: event.target.value })}
        error={errorAt('told')}
      />
      <TextField
        type="datetime-local"
        label="When they were told"
        name="toldAt"
        hint="By the clock of this device; its time zone is kept with it."
        value={form.toldAt}
        onChange={(event) => change({ toldAt: event.target.value })}
        error={errorAt('toldAt')}
      />
      <Check
        name="writtenNotice"
        label="They have a written notice"
        hint="This notice, printed, is one."
        checked={form.writtenNotice}
        onChange={(event) => change({ writtenNotice: event.target.checked })}
        error={errorAt('writtenNotice')}
      />
      <Choice
        legend="The authority or the gas supplier"
        name="authority"
        hint="Whoever your local rules name. Many ask to be told at once, and in writing."
        options={asOptions(['told', 'not asked for here', 'not yet told'], authorityWords)}
        value={form.authority === '' ? null : form.authority}
        onChoose={(authority) => change({ authority })}
        error={errorAt('authority')}
      />
      {form.authority === 'told' && (
        <TextField
          label="Which of them was told"
          name="authorityWho"
          hint="The office, with its reference where it gave one. No name is needed."
          value={form.authorityWho}
          onChange={(event) => change({ authorityWho: event.target.value })}
          error={errorAt('authorityWho')}
        />
      )}
      <TextField
        label="How the house stays warm and free of frost"
        name="heatAndFrost"
        hint="Other heat, water shut off and drained, who looks after it."
        value={form.heatAndFrost}
        onChange={(event) => change({ heatAndFrost: event.target.value })}
        error={errorAt('heatAndFrost')}
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
      {mayEndVisit && (
        <Choice
          legend="Does your visit end with it?"
          name="endsVisit"
          options={[
            {
              value: 'yes',
              words: 'Yes: left off',
              hint: 'Nothing more is recorded in this visit. It counts as open until the notice is lifted.',
            },
            { value: 'no', words: 'No, I go on looking', hint: 'The furnace is left off all the same.' },
          ]}
          value={form.endsVisit === '' ? null : form.endsVisit}
          onChoose={(answer) => change({ endsVisit: answer })}
          error={errorAt('endsVisit')}
        />
      )}
      {trouble?.refusal && (
        <Problem>The notice is recorded, but the visit is not ended. {trouble.refusal.sentence}</Problem>
      )}
      {unsaid.length > 0 && (
        <section aria-label="Not said yet">
          <p>
            <b>Not said yet.</b> It is kept without, and said to be unfinished:
          </p>
          <ul>
            {unsaid.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        </section>
      )}
    </RecordForm>
  )
}
