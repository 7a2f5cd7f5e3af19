'use client'

import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { EndingWay } from '@/lib/records/kinds/ending'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { ButtonLink } from '../../ui/form/Button'
import { TextField } from '../../ui/form/TextField'
import { sayDate } from '../../ui/words/sayDate'
import { CauseFields } from './CauseFields'
import { ConfirmingTest } from './ConfirmingTest'
import type { EndForm } from './endForm'
import { PartFields } from './PartFields'
import { PutBackFields } from './PutBackFields'
import { ReadingsOfCase } from './ReadingsOfCase'
import { RepairsOfCase } from './RepairsOfCase'
import { shutDownHref } from './StillMissing'

type Props = {
  form: EndForm & { how: EndingWay }
  change: (part: Partial<EndForm>) => void
  errorAt: (...fields: string[]) => string | undefined
  view: CaseView
  visitId: string
  file: TeamFile
  /** The visit goes on, so that repairs can still be recorded in it. */
  goesOn: boolean
}

/** The fields that the chosen way of ending needs, and no others. */
export function WayFields(props: Props) {
  const { form, change, errorAt, view, file } = props
  switch (form.how) {
    case 'repaired and proven':
      return (
        <>
          <Repaired {...props} test />
          <TextField
            id="end-thermostatCycles"
            label="Cycles from the thermostat that you watched"
            name="thermostatCycles"
            inputMode="numeric"
            hint="Three at the least, one of them from cold if that is possible."
            value={form.thermostatCycles}
            onChange={(event) => change({ thermostatCycles: event.target.value })}
            error={errorAt('thermostatCycles')}
          />
          <PutBackFields putBack={form.putBack} change={change} />
        </>
      )
    case 'repaired, not proven':
      return <Repaired {...props} />
    case 'waiting for part':
      return <PartFields {...{ form, change, errorAt, file }} />
    case 'no fault found':
      return (
        <>
          <ReadingsOfCase view={view} file={file} />
          <TextField
            type="date"
            id="end-followUpOn"
            label="Day of the follow-up"
            name="followUpOn"
            hint="In the same weather, if it comes and goes."
            value={form.followUpOn}
            onChange={(event) => change({ followUpOn: event.target.value })}
            error={errorAt('followUpOn')}
          />
        </>
      )
    case 'repair declined':
      return (
        <TextField
          id="end-declinedBecause"
          label="Why it was declined"
          name="declinedBecause"
          hint="In the words of whoever declined. What was offered goes into the note."
          value={form.declinedBecause}
          onChange={(event) => change({ declinedBecause: event.target.value })}
          error={errorAt('declinedBecause')}
        />
      )
    case 'left off':
      return <Notice view={view} visitId={props.visitId} />
  }
}

/** Cause, repairs and minutes, which both ways of having repaired ask for. */
function Repaired({ form, change, errorAt, view, visitId, file, goesOn, test }: Props & { test?: true }) {
  return (
    <>
      <div id="end-mainCause">
        <CauseFields which="main" form={form} change={change} error={errorAt('mainCause')} />
      </div>
      {test && (
        <div id="end-confirmingTest">
          <ConfirmingTest form={form} change={change} error={errorAt('confirmingTest')} />
        </div>
      )}
      <CauseFields which="contributing" form={form} change={change} error={errorAt('contributingCause')} />
      <RepairsOfCase ofCase={view.file} visitId={visitId} file={file} mayAdd={goesOn} />
      <TextField
        id="end-minutes"
        label="Minutes of work on this visit"
        name="minutes"
        inputMode="numeric"
        value={form.minutes}
        onChange={(event) => change({ minutes: event.target.value })}
        error={errorAt('minutes')}
      />
    </>
  )
}

/** The notice under which the furnace is left off, or the way to write it, which ends the visit too. */
function Notice({ view, visitId }: { view: CaseView; visitId: string }) {
  const { entry, furnace, notices } = view.file
  const standing = notices.findLast(({ lifting }) => lifting === undefined)
  return standing === undefined ? (
    <div>
      <p>A furnace is left off with a notice: gas and power, tag, who was told, heat and frost meanwhile.</p>
      <ButtonLink kind="main" href={shutDownHref(furnace.id, entry.id, visitId)}>
        Write the shut-down notice; it ends the visit
      </ButtonLink>
    </div>
  ) : (
    <p>
      The notice of {sayDate(standing.entry.body.on)} stands:{' '}
      <a href={`/notice?id=${standing.entry.id}`}>{standing.entry.body.found}</a> The visit ends with it.
    </p>
  )
}
