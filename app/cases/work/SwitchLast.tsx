'use client'

import { useState } from 'react'
import { type Complaint, type Requirement, requirementText } from '@/lib/core/guard'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { furnaceOfCase } from '@/lib/records/view/case/furnaceSeen'
import { positionsOf } from '@/lib/records/view/case/positionsToProve'
import { everyRequirement, replacementFor } from '@/lib/records/view/case/switchCase'
import { ratingSettings, type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { Choice } from '../../ui/form/Choice'
import { Fold } from '../../ui/paper/Fold'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { AsPrinted } from '../../ui/words/AsPrinted'
import { FittedPartForm } from './FittedPartForm'
import { SwitchCheckForm } from './SwitchCheckForm'
import styles from './work.module.css'

type Props = { view: CaseView; file: TeamFile; now: string; visitId: string | undefined }

const complaints: { value: Complaint; words: string }[] = [
  { value: 'will not close', words: 'Will not close' },
  { value: 'opens early', words: 'Opens early' },
  { value: 'will not open', words: 'Will not open' },
  { value: 'drops voltage when closed', words: 'Drops voltage when closed' },
  { value: 'wrong part fitted', words: 'Wrong part fitted' },
]

/** The switch is the last suspect: what must be on record before one may be called faulty, ticking itself off. */
export function SwitchLast({ view, file, now, visitId }: Props) {
  const caseId = view.file.entry.id
  const furnaceId = view.file.furnace.id
  const positions = positionsOf(file, view.file)
  const [positionId, setPosition] = useState<string>()
  const [complaint, setComplaint] = useState<Complaint>('will not close')
  const chosen = positions.find(({ id }) => id === positionId) ?? positions[0]
  const setpoint = chosen && setpointOf(file, chosen.id, furnaceOfCase(view.file), ratingSettings(file, now))
  return (
    <Sheet
      title="The switch comes last"
      sub="It is mostly a witness. Before it is called faulty, all of this must be on record."
    >
      {setpoint === undefined ? (
        <p>The furnace’s model range is not on record, so no switch of it can be judged.</p>
      ) : (
        <Stack>
          {positions.length > 1 && (
            <Choice
              legend="Which switch?"
              name="suspect"
              options={positions.map(({ id, body }) => ({ value: id, words: body.name }))}
              value={setpoint.position.id}
              onChoose={setPosition}
            />
          )}
          <Choice
            legend="What it is blamed for"
            name="complaint"
            options={complaints}
            value={complaint}
            onChoose={setComplaint}
          />
          <Ladder {...{ view, file, setpoint, complaint }} />
          {visitId !== undefined && (
            <>
              <Fold
                key={`part ${setpoint.position.id} ${view.file.fittedParts.length}`}
                summary="Record the part number on the switch"
              >
                {() => <FittedPartForm {...{ caseId, furnaceId, setpoint }} />}
              </Fold>
              <Fold
                key={`check ${setpoint.position.id} ${view.file.switchChecks.length}`}
                summary="Record a check of the switch itself"
              >
                {() => (
                  <SwitchCheckForm key={complaint} {...{ caseId, furnaceId, visitId, setpoint, complaint }} />
                )}
              </Fold>
            </>
          )}
        </Stack>
      )}
    </Sheet>
  )
}

type LadderProps = { view: CaseView; file: TeamFile; setpoint: Setpoint; complaint: Complaint }

function Ladder({ view, file, setpoint, complaint }: LadderProps) {
  const { advised, missing, faultsFound, orderPart, through, setting } = replacementFor(
    file,
    view,
    setpoint,
    complaint,
  )
  const every = everyRequirement(setpoint, complaint, missing)
  const done = every.length - missing.length
  return (
    <>
      <p role="status">
        {advised
          ? 'All of it is on record.'
          : `${done} of ${every.length} are on record. The switch stays fitted until all are.`}
      </p>
      {faultsFound.length > 0 && (
        <p>
          <b>Repair these first:</b> a look has found a fault, and a fault there explains an open switch.
        </p>
      )}
      <ol className={styles.ticks}>
        {every.map((requirement) => (
          <li key={requirement}>
            <b>{stateOf(requirement, missing, faultsFound)}</b> {requirementText[requirement]}
          </li>
        ))}
      </ol>
      {advised && orderPart !== undefined && (
        <p>
          Replace it with the exact factory part: <AsPrinted text={orderPart} />
          {through !== undefined && through.length > 1 && ` (${through.join(', then ')})`}.{' '}
          {setting === 'changed' &&
            'It works at another setting: record its own rating before anybody compares a reading with it. '}
          Then take the same readings again: a new switch that “fixes” it with little margin has hidden the
          cause.
        </p>
      )}
    </>
  )
}

const stateOf = (
  requirement: Requirement,
  missing: readonly Requirement[],
  faults: readonly Requirement[],
): string =>
  faults.includes(requirement) ? 'Fault found.' : missing.includes(requirement) ? 'Missing.' : 'On record.'
