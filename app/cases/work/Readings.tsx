'use client'

import { useMemo } from 'react'
import { readingSituations } from '@/lib/catalogue/fromReadings/situations'
import { verdictWords } from '@/lib/core/reading'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseView } from '@/lib/records/view/case/caseView'
import { furnaceOfCase } from '@/lib/records/view/case/furnaceSeen'
import { positionsOf } from '@/lib/records/view/case/positionsToProve'
import { ratingSettings, type Setpoint, setpointOf } from '@/lib/records/view/setpoint'
import { setpointHref } from '../../setpoint/setpointAddress'
import { Fold } from '../../ui/paper/Fold'
import { Sheet } from '../../ui/paper/Sheet'
import { Stack } from '../../ui/paper/Stack'
import { Quiet } from '../../ui/words/Quiet'
import { sayMoment } from '../../ui/words/sayDate'
import { AddReading } from './AddReading'
import { StandingLine } from './StandingLine'
import styles from './work.module.css'

type Props = { view: CaseView; file: TeamFile; now: string; visitId: string | undefined }

/** Every switch of the furnace with its standing, the readings of this case held against it, and a place for one more. */
export function Readings({ view, file, now, visitId }: Props) {
  const { furnace, entry } = view.file
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const positions = positionsOf(file, view.file)
  return (
    <Sheet
      title="Measure"
      sub="Gauge zeroed, teed in at the switch with the furnace off, door as in service. Contact by voltage, at the same moment."
    >
      <Stack>
        {positions.length === 0 && (
          <p>
            Nobody has recorded which switches this furnace has, because its model range is not on record.{' '}
            <a href={`/furnace/add?again=${furnace.id}`}>Record the furnace again with its range</a>, and its
            switches appear here.
          </p>
        )}
        {positions.map((position) => {
          const setpoint = setpointOf(file, position.id, furnaceOfCase(view.file), settings)
          return (
            setpoint && (
              <section key={position.id} aria-labelledby={`read-${position.id}`} className={styles.cause}>
                <h3 id={`read-${position.id}`}>{position.body.name}</h3>
                <StandingLine setpoint={setpoint} furnaceId={furnace.id} />
                <p>
                  <a href={setpointHref({ positionId: position.id, furnaceId: furnace.id })}>
                    The setpoint with its sources
                  </a>
                </p>
                <Taken view={view} setpoint={setpoint} />
                {visitId !== undefined && (
                  <Fold summary={`Add a reading at ${position.body.name}`}>
                    {() => (
                      <AddReading
                        {...{ setpoint, now, visitId }}
                        caseId={entry.id}
                        furnaceId={furnace.id}
                        repaired={view.file.repairs.length > 0}
                      />
                    )}
                  </Fold>
                )}
              </section>
            )
          )
        })}
      </Stack>
    </Sheet>
  )
}

function Taken({ view, setpoint }: { view: CaseView; setpoint: Setpoint }) {
  const taken = view.judged.filter(({ entry }) => entry.body.positionId === setpoint.position.id)
  if (taken.length === 0) return <Quiet>No reading on this case yet.</Quiet>
  return (
    <ul>
      {taken.map(({ entry, comparison }) => (
        <li key={entry.id}>
          <b>{verdictWords(comparison).join('. ') || 'At rest'}</b>:{' '}
          <a href={`/record?id=${entry.id}`}>{entry.body.asTyped}</a>, {entry.body.phase}, {entry.body.stage},
          contact {entry.body.contacts}, {entry.body.when}
          {entry.body.situation !== 'as found' &&
            `, ${readingSituations[entry.body.situation].words.toLowerCase()}`}
          , {sayMoment(entry.at)}. {!comparison.ok && comparison.problem.message}
        </li>
      ))}
    </ul>
  )
}
