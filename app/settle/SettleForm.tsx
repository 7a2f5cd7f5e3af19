'use client'

import { useRouter, useSearchParams } from 'next/navigation'
import { useMemo, useState } from 'react'
import { formatPressure } from '@/lib/core/pressure'
import type { Action } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { ReportBody } from '@/lib/records/kinds/report'
import { ratingSettings, type Setpoint } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { usePreference } from '../device/usePreference'
import { Question } from '../equipment/form/Question'
import { RecordForm } from '../equipment/form/RecordForm'
import { type FormAnswer, useRecordForm } from '../equipment/form/useRecordForm'
import { type SetpointAddress, setpointHref, setpointQuery } from '../setpoint/setpointAddress'
import { sourceLine } from '../setpoint/sourceLines'
import { Empty } from '../ui/answers/Empty'
import { Check } from '../ui/form/Check'
import { Choice } from '../ui/form/Choice'
import { TextField } from '../ui/form/TextField'
import { sayDate } from '../ui/words/sayDate'
import { evidenceOnFile, sidesOf, standAgainst, standingAfter, standingOf } from './dispute'

type Form = { evidenceId: string; overruled: string[]; reason: string }
const fresh: Form = { evidenceId: '', overruled: [], reason: '' }

/** Settling with a piece of evidence begins with what stands against it; the reason is for a person to give. */
const beginWith = (evidence: Entry<ReportBody> | undefined, inDispute: readonly Entry<ReportBody>[]): Form =>
  evidence === undefined
    ? fresh
    : {
        ...fresh,
        evidenceId: evidence.id,
        overruled: standAgainst(evidence.body, inDispute).map(({ id }) => id),
      }

type Props = { address: SetpointAddress; setpoint: Setpoint; action: Action; now: string }

/** Chooses the report that settles a dispute, the reports it overrules, and says why. */
export function SettleForm({ address, setpoint, action, now }: Props) {
  const router = useRouter()
  const { file, me, names } = useDeviceState()
  const { unit } = usePreference()
  const { position, reports } = setpoint
  const evidence = useMemo(
    () => evidenceOnFile(file, position.id, action, { ...me, saidAt: now }),
    [file, position, action, me, now],
  )
  const inDispute = useMemo(() => {
    const ids = new Set(sidesOf(standingOf(setpoint, action)).flatMap(({ reportIds }) => reportIds))
    return [...ids].flatMap((id) => reports.get(id) ?? [])
  }, [setpoint, action, reports])
  const settling = (id: string) => evidence.find((report) => report.id === id)

  const read = (form: Form): FormAnswer => {
    const gaps: Record<string, string> = {}
    const chosen = settling(form.evidenceId)
    if (chosen === undefined) gaps.evidenceReportId = 'Choose the report that settles it.'
    if (form.overruled.length === 0) gaps.overruledReportIds = 'Tick the reports that it overrules.'
    if (form.reason.trim() === '') gaps.reason = 'Say why it settles the dispute.'
    if (chosen === undefined || Object.keys(gaps).length > 0) return { gaps }
    return {
      body: {
        positionId: position.id,
        action,
        pascals: chosen.body.pascals,
        limit: chosen.body.limit,
        evidenceReportId: chosen.id,
        overruledReportIds: form.overruled,
        reason: form.reason,
      },
    }
  }
  const led = useSearchParams().get('evidence') ?? ''
  const [start] = useState<Form>(() => beginWith(settling(led), inDispute))
  const record = useRecordForm<Form>({
    draft: ['settle', position.id, action, start.evidenceId].filter(Boolean).join(' '),
    fresh: start,
    kind: 'settlement',
    read,
  })
  const { form, change, errorAt } = record
  const chosen = settling(form.evidenceId)
  const overrulable = inDispute.filter(({ id }) => id !== form.evidenceId)
  const after = useMemo(
    () =>
      form.evidenceId === '' || form.overruled.length === 0
        ? undefined
        : standingAfter(file, address, ratingSettings(file, now), {
            action,
            evidenceReportId: form.evidenceId,
            overruledReportIds: form.overruled,
          }),
    [file, address, now, action, form.evidenceId, form.overruled],
  )

  const words = ({ body }: Entry<ReportBody>): string =>
    `${formatPressure(body.pascals, unit)}, “${body.asWritten}”`
  const line = (report: Entry<ReportBody>): string => {
    const source = sourceLine(report, file, names)
    return `${source.words}; ${source.who}, ${sayDate(source.date)}`
  }

  if (evidence.length === 0) {
    return (
      <Empty
        what="No report on file can settle it yet"
        why="None for this number is factory technical support with a reference, or a page of the maker’s current literature."
        todo={<a href={`/report?${setpointQuery(address)}`}>Add that report first, then settle with it</a>}
      />
    )
  }
  return (
    <RecordForm
      record={record}
      submit="Settle the dispute"
      refused={{
        title: 'This does not settle the dispute',
        instead: <a href={`/report?${setpointQuery(address)}`}>Add the report that would settle it</a>,
      }}
      onSaved={() => router.push(setpointHref(address))}
    >
      <Choice
        legend="Which report settles it?"
        name="evidence"
        options={evidence.map((report) => ({ value: report.id, words: words(report), hint: line(report) }))}
        value={form.evidenceId === '' ? null : form.evidenceId}
        onChoose={(id) => {
          const { evidenceId, overruled } = beginWith(settling(id), inDispute)
          change({ evidenceId, overruled })
        }}
        error={errorAt('evidenceReportId')}
      />
      {chosen !== undefined && (
        <Question
          legend="Which reports does it overrule?"
          hint="They stay readable, and each keeps saying what it said."
          error={errorAt('overruledReportIds')}
        >
          {overrulable.map((report) => (
            <Check
              key={report.id}
              name={`overruled-${report.id}`}
              label={words(report)}
              hint={line(report)}
              checked={form.overruled.includes(report.id)}
              onChange={(event) =>
                change({
                  overruled: event.target.checked
                    ? [...form.overruled, report.id]
                    : form.overruled.filter((id) => id !== report.id),
                })
              }
            />
          ))}
        </Question>
      )}
      <div role="status">
        {after !== undefined &&
          after.level !== 'Not on file' &&
          (after.level === 'In dispute' ? (
            <>
              <p>It would still be in dispute:</p>
              <ul>
                {after.reasons.map((reason) => (
                  <li key={reason}>{reason}</li>
                ))}
              </ul>
            </>
          ) : (
            <p>
              It would then stand as {formatPressure(after.pascals, unit)}, {after.level}, by the report of{' '}
              {sayDate(chosen?.body.saidOn ?? chosen?.at ?? '')}.
            </p>
          ))}
      </div>
      <TextField
        label="Why does it settle the dispute?"
        name="reason"
        hint="For instance: read back digit by digit; the other number is the break point."
        value={form.reason}
        onChange={(event) => change({ reason: event.target.value })}
        error={errorAt('reason')}
      />
    </RecordForm>
  )
}
