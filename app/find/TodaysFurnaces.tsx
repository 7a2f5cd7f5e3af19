'use client'

import { useMemo, useState } from 'react'
import { useDeviceState } from '../device/deviceContext'
import { dayOf } from '../equipment/form/today'
import { DateWords } from '../ui/words/DateWords'
import styles from './find.module.css'
import { todaysFurnaces } from './todaysFurnaces'

/** The furnaces somebody is at today or has to go back to: their case and their setpoints, one tap away. */
export function TodaysFurnaces() {
  const { file } = useDeviceState()
  const [today] = useState(() => dayOf(new Date()))
  const furnaces = useMemo(() => todaysFurnaces(file, today), [file, today])
  if (furnaces.length === 0) return null
  return (
    <nav aria-label="Today’s furnaces, and those still open">
      <h2>Today’s furnaces, and those still open</h2>
      <ul className={styles.results}>
        {furnaces.map(({ furnace, open, standing, visitOn }) => (
          <li key={furnace.id} className={styles.today}>
            <p>
              <b>{furnace.body.siteLabel}</b> <span translate="no">{furnace.body.model}</span>
            </p>
            <a className={styles.result} href={`/case?id=${open.id}`}>
              <span className={styles.title}>Case: {open.body.complaint}</span>
              <span>
                {standing}
                {visitOn === undefined ? (
                  ', nobody has been there yet'
                ) : (
                  <>, visit {visitOn === today ? 'today' : <DateWords at={visitOn} />}</>
                )}
              </span>
            </a>
            <a
              className={styles.result}
              href={`/furnace?id=${furnace.id}`}
              aria-label={`Setpoints, ${furnace.body.siteLabel}`}
            >
              <span className={styles.title}>Setpoints</span>
            </a>
          </li>
        ))}
      </ul>
    </nav>
  )
}
