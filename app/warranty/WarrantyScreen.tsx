'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useState } from 'react'
import type { Entry } from '@/lib/records/fold/entry'
import { counting, type TeamFile } from '@/lib/records/fold/teamFile'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import { answersOfRepair } from '@/lib/records/view/answersOfRepair'
import { mayRecordWarranty, warrantyOutcomes } from '@/lib/records/warrantyTerms'
import { useDeviceState } from '../device/deviceContext'
import { RecordForm } from '../equipment/form/RecordForm'
import { returnTo } from '../equipment/form/returnTo'
import { dayOf } from '../equipment/form/today'
import { useRecordForm } from '../equipment/form/useRecordForm'
import { Empty } from '../ui/answers/Empty'
import { Choice } from '../ui/form/Choice'
import { Select } from '../ui/form/Select'
import { TextArea } from '../ui/form/TextArea'
import { TextField } from '../ui/form/TextField'
import { PageHeader } from '../ui/paper/PageHeader'
import { Stack } from '../ui/paper/Stack'
import { sayDate } from '../ui/words/sayDate'
import { fittedAPart, WarrantyAnswers } from './WarrantyAnswers'
import { outcomeWords, readWarrantyForm, type WarrantyForm } from './warrantyForm'

const title = 'Record a warranty answer'

/** Records what a distributor or maker answered about a part that went back. */
export function WarrantyScreen() {
  const query = useSearchParams()
  const { file, me } = useDeviceState()
  const repair = file.repairs.get(query.get('repair') ?? '')
  if (repair === undefined || repair.withdrawn !== undefined || !fittedAPart(repair.body)) {
    return (
      <Stack>
        <PageHeader title={title} />
        <Empty
          what="Which repair did the part come out in?"
          why="The address names no repair on this device that stands and fitted a part."
          todo={<a href="/cases">Open its case, and record the answer from the repair in its history</a>}
        />
      </Stack>
    )
  }
  if (!mayRecordWarranty.includes(me.role)) {
    return (
      <Stack>
        <PageHeader title={title} />
        <Empty
          what={`A ${me.role} may not record a warranty answer`}
          why="Whoever deals with the distributor keeps these answers together."
          todo="Tell a dispatcher or a manager what was answered."
        />
      </Stack>
    )
  }
  return <Answer key={repair.id} repair={repair} file={file} query={query} />
}

type Props = { repair: Entry<AnyRepairBody>; file: TeamFile; query: URLSearchParams }

function Answer({ repair, file, query }: Props) {
  const router = useRouter()
  const { caseId, furnaceId, done, on } = repair.body
  const home = caseId === undefined ? `/record?id=${repair.id}` : `/case/history?id=${caseId}`
  const site = file.furnaces.get(file.keptId(furnaceId))?.body.siteLabel
  const [fresh] = useState<WarrantyForm>(() => freshForm(file, repair.id))
  const record = useRecordForm<WarrantyForm>({
    draft: `warranty ${repair.id}`,
    fresh,
    kind: 'warranty answer',
    read: (form) => readWarrantyForm(form, repair),
  })
  const { form, change, errorAt } = record
  const text = (name: keyof WarrantyForm) => ({
    name,
    value: form[name],
    onChange: (event: { target: { value: string } }) => change({ [name]: event.target.value }),
  })
  return (
    <Stack>
      <PageHeader
        above={<a href={home}>{site ?? 'The repair'}</a>}
        title={title}
        lead={`About a part that came out on ${sayDate(on)}: ${done}.`}
      />
      <WarrantyAnswers repairId={repair.id} />
      <RecordForm
        record={record}
        submit="Record the answer"
        refused={{
          title: 'This answer was not recorded',
          instead: <a href={home}>Go back; what is typed here stays</a>,
        }}
        onSaved={() => router.push(returnTo(query, home))}
      >
        <TextField
          {...text('partReturned')}
          exact
          label="Part number that went back"
          hint="As it is printed on the part that came out. A later answer about the same number counts instead of this one."
          error={errorAt('partReturned')}
        />
        <Choice
          legend="What became of it?"
          name="outcome"
          options={warrantyOutcomes.map((value) => ({ value, words: outcomeWords[value] }))}
          value={form.outcome === '' ? null : form.outcome}
          onChoose={(outcome) => change({ outcome })}
          error={errorAt('outcome')}
        />
        <TextField
          {...text('amount')}
          inputMode="decimal"
          label="Amount"
          hint="What was credited; if denied or waiting, what was asked for. Leave it out where nobody knows."
          error={errorAt('amountMinorUnits')}
        />
        <TextField
          {...text('currency')}
          exact
          label="Currency"
          hint="Its three letters, USD for instance. Only with an amount."
          error={errorAt('currency')}
        />
        <Select
          {...text('organisationId')}
          label="Whose answer is it?"
          none="None of these"
          options={counting(file.organisations).map(({ id, body }) => ({ value: id, words: body.name }))}
          error={errorAt('organisationId')}
        />
        <TextField
          {...text('answeredBy')}
          label="Who answered"
          hint="The company, where it is none of these; or the desk or person there."
          error={errorAt('answeredBy')}
        />
        <TextField
          {...text('reasonGiven')}
          label="Reason given"
          hint="In their words."
          error={errorAt('reasonGiven')}
        />
        <TextField
          {...text('on')}
          type="date"
          label="Day of the answer"
          hint="While it is waiting: the day the part went back."
          error={errorAt('on')}
        />
        <TextField {...text('reference')} exact label="Their reference" error={errorAt('reference')} />
        <TextArea {...text('note')} label="Note" error={errorAt('note')} />
      </RecordForm>
    </Stack>
  )
}

/** The part, whom and the currency as they were in the repair's newest answer; the currency else as it was last. */
function freshForm(file: TeamFile, repairId: string): WarrantyForm {
  const before = answersOfRepair(file, repairId).at(-1)?.at(-1)?.body
  const last = counting(file.warrantyAnswers).findLast(({ body }) => body.currency !== undefined)
  return {
    partReturned: before?.partReturned ?? '',
    outcome: '',
    amount: '',
    currency: before?.currency ?? last?.body.currency ?? '',
    organisationId: before?.organisationId ?? '',
    answeredBy: '',
    reasonGiven: '',
    on: dayOf(new Date()),
    reference: '',
    note: '',
  }
}
