'use client'

import { useRouter } from 'next/navigation'
import { useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { type EndingBody, endingWays } from '@/lib/records/kinds/ending'
import type { VisitFile } from '@/lib/records/view/case/caseFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { type EndingFacts, endingNeedsByPlace } from '@/lib/records/view/case/endingNeeds'
import { useDeviceState } from '../../device/deviceContext'
import { useAdd } from '../../device/useAdd'
import { Explained } from '../../equipment/form/Explained'
import { RecordForm } from '../../equipment/form/RecordForm'
import { useRecordForm } from '../../equipment/form/useRecordForm'
import { InsteadOfFitting } from '../../foundFitted/InsteadOfFitting'
import { Problem } from '../../ui/answers/Problem'
import { TextArea } from '../../ui/form/TextArea'
import { withdrawn } from '../notice/anew'
import { endAgain, endingSoFar, type EndForm as Form, freshEnd, type OnRecord, readEndForm } from './endForm'
import { wayWords } from './endingWords'
import { StillMissing } from './StillMissing'
import { WayFields } from './WayFields'

type Props = {
  view: CaseView
  visit: VisitFile
  facts: EndingFacts
  /** The ending whose place this one takes. */
  older: Entry<EndingBody> | undefined
  onSaved: () => void
}

/** The form that ends a visit: the way first, then what that way needs, and all along what it still lacks. */
export function EndForm({ view, visit, facts, older, onSaved }: Props) {
  const router = useRouter()
  const { file, me, names } = useDeviceState()
  const { add, trouble } = useAdd()
  const visitId = visit.entry.id
  const here = `/case/end?id=${view.file.entry.id}&visit=${visitId}`
  const onRecord: OnRecord = {
    caseId: view.file.entry.id,
    visitId,
    repairIds: view.file.repairs.map(({ id }) => id),
    noticeId: view.file.notices.findLast(({ lifting }) => lifting === undefined)?.entry.id,
  }
  const [fresh] = useState<Form>(() => (older === undefined ? freshEnd : endAgain(older.body)))
  const record = useRecordForm<Form>({
    draft: `end ${[visitId, older?.id].filter(Boolean).join(' ')}`,
    fresh,
    kind: 'ending',
    read: (form) => readEndForm(form, onRecord, file),
  })
  const { form, change, errorAt } = record
  const chosen = form.how === '' ? undefined : { ...form, how: form.how }
  const needs = chosen === undefined ? [] : endingNeedsByPlace(endingSoFar(chosen, onRecord), facts)
  const others = visit.endings.filter(({ id, by }) => id !== older?.id && by !== me.id)

  async function saved(id: string) {
    if (older !== undefined && (await add([withdrawn(older.id, id)])) === undefined) return
    onSaved()
    router.replace(here)
  }

  return (
    <RecordForm
      record={record}
      submit={needs.length === 0 ? 'End the visit' : 'End the visit as not finished'}
      refused={{
        title: 'The visit was not ended',
        instead: <InsteadOfFitting known={{ furnaceId: view.file.furnace.id, printed: form.partNumber }} />,
      }}
      onSaved={(id) => void saved(id)}
    >
      {others.map((other) => (
        <p key={other.id} role="status">
          <b>
            {names.get(other.by) ?? 'Somebody else'} has ended this visit: {wayWords[other.body.how][0]}.
          </b>{' '}
          If you record yours too, the two stand side by side until one is withdrawn.{' '}
          <a href={`/record?id=${other.id}`}>See what was recorded</a>
        </p>
      ))}
      <Explained
        legend="How did the visit end?"
        name="how"
        value={form.how}
        onChoose={(how) => change({ how })}
        error={errorAt('how')}
        answers={endingWays.map((way) => [way, ...wayWords[way]] as const)}
      />
      {chosen !== undefined && (
        <>
          <WayFields
            form={chosen}
            {...{ change, errorAt, view, visitId, file }}
            goesOn={visit.endings.length === 0}
          />
          <TextArea
            id="end-note"
            label="Note"
            name="note"
            value={form.note}
            onChange={(event) => change({ note: event.target.value })}
            error={errorAt('note')}
          />
          <StillMissing
            title={
              form.how === 'repaired and proven'
                ? 'Still missing before this counts as proven'
                : 'Still missing before this ending is finished'
            }
            needs={needs}
            ofCase={view.file}
            visitId={visitId}
          />
          <p role="status">
            {needs.length === 0
              ? 'Nothing is missing.'
              : `It can be kept with ${needs.length === 1 ? 'one thing' : `${needs.length} things`} missing, and is then kept as not finished.`}
          </p>
        </>
      )}
      {trouble?.refusal && (
        <Problem>
          Yours is recorded, but the older one still stands beside it. {trouble.refusal.sentence}
        </Problem>
      )}
    </RecordForm>
  )
}
