'use client'

import { useMemo } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { CaseFile } from '@/lib/records/view/case/caseFile'
import { useDeviceState } from '../../device/deviceContext'
import { usePreference } from '../../device/usePreference'
import { sayDate } from '../../ui/words/sayDate'
import { FindingsTold } from './FindingsTold'
import styles from './history.module.css'
import { LineTold } from './LineTold'
import { timelineOf } from './timeline'
import type { Told } from './told'
import { WhatTold } from './WhatTold'

type Props = { told: readonly Told[]; file: TeamFile; ofCase: CaseFile }

/** Everything said in a case, day by day in its order. */
export function Timeline({ told, file, ofCase }: Props) {
  const { names } = useDeviceState()
  const { unit } = usePreference()
  const days = useMemo(() => timelineOf(told), [told])
  const visits = useMemo(
    () => told.flatMap(({ kind, entry }) => (kind === 'visit' ? [entry.id] : [])),
    [told],
  )
  const who = (person: string) => names.get(person) ?? 'somebody whose name is not on this device'
  return days.map(({ day, zone, lines }) => (
    <section key={`${day} ${zone}`} aria-labelledby={`day-${day}`} className={styles.day}>
      <h2 id={`day-${day}`}>
        {sayDate(day)} <small>{zone}</small>
      </h2>
      <ol className={styles.lines}>
        {lines.map((line) =>
          line.kind === 'findings' ? (
            <FindingsTold key={line.entries[0]!.id} entries={line.entries} who={who} />
          ) : (
            <LineTold
              key={line.entry.id}
              entry={line.entry}
              on={'on' in line.entry.body ? line.entry.body.on : undefined}
              who={who}
            >
              <WhatTold
                line={line}
                number={visits.indexOf(line.entry.id) + 1}
                {...{ file, ofCase, names, unit }}
              />
            </LineTold>
          ),
        )}
      </ol>
    </section>
  ))
}
