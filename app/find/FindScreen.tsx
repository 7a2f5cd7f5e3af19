'use client'

import { useSearchParams } from 'next/navigation'
import { useDeferredValue, useEffect, useMemo, useState } from 'react'
import { find, type Match } from '@/lib/core/find'
import type { RatingSettings } from '@/lib/core/rating'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { AskedByMe } from '../ask/AskedByMe'
import { useDeviceState } from '../device/deviceContext'
import { Empty } from '../ui/answers/Empty'
import { ButtonLink } from '../ui/form/Button'
import { letterForLetter } from '../ui/form/letterForLetter'
import { FindResult } from './FindResult'
import styles from './find.module.css'
import { LaterFurnaces } from './LaterFurnaces'
import { nearFrom, resultWords } from './resultWords'
import { TagTyped } from './TagTyped'
import { useIdleTurns } from './useIdleTurns'
import { hasNothingToFind, type LookUp, useLookUp } from './useLookUp'
import { useRecentLookUps } from './useRecentLookUps'

/** Below this score a text on file is what was typed; see lib/core/find. */
const sameBelow = 0.02

/** How many results are listed. Whoever needs more types one character more. */
const listed = 12

/** One field that is ready to type: part number, model, maker, position or site, in whole or in part. */
export function FindScreen() {
  const { file } = useDeviceState()
  const query = useSearchParams()
  const [typed, setTyped] = useState(() => query.get('q') ?? '')
  const looked = useDeferredValue(typed)
  const [now] = useState(() => new Date().toISOString())
  const asked = looked.trim() !== ''
  // With the first key, or before it where there is time.
  const idleTurns = useIdleTurns(2)
  const lookUp = useLookUp(file, asked || idleTurns >= 1)
  const matches = useMemo(
    () => (lookUp === undefined ? [] : find(lookUp.index, looked, listed + 1)),
    [lookUp, looked],
  )
  const inSight = matches.slice(0, listed)
  const found = inSight.filter(({ score }) => score < nearFrom)
  const near = inSight.filter(({ score }) => score >= nearFrom)
  const weighs = matches.length > 0 || idleTurns >= 2
  const settings = useMemo(() => (weighs ? ratingSettings(file, now) : undefined), [file, now, weighs])

  useEffect(() => {
    // The address keeps what was typed, so that reload, back and a shared link lead here again.
    const address = looked === '' ? '/' : `/?q=${encodeURIComponent(looked)}`
    window.history.replaceState(window.history.state, '', address)
  }, [looked])

  return (
    <div className={styles.find}>
      <h1 className={styles.hidden}>Find a setpoint</h1>
      <form action="/" method="get" onSubmit={(event) => event.preventDefault()}>
        <label htmlFor="find">Part number, model, maker, switch or site</label>
        <input
          {...letterForLetter}
          id="find"
          name="q"
          type="search"
          // The field is what the page is for; a technician types at once.
          ref={(field) => {
            if (field !== null && document.activeElement === document.body) field.focus()
          }}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          className={styles.field}
        />
      </form>
      {/* Once something is typed, the next stop of the Tab key is the first result. */}
      {!asked && (
        <ButtonLink kind="quiet" href="/scan">
          Scan a code
        </ButtonLink>
      )}
      <p role="status" className={styles.count}>
        {asked && resultWords(matches, listed)}
      </p>
      {!asked && <BeforeTyping empty={hasNothingToFind(file)} />}
      {asked && <TagTyped typed={looked} isNumber={(matches[0]?.score ?? 1) < sameBelow} file={file} />}
      {asked && matches.length === 0 && (
        <Empty
          what={`Nothing on file matches “${looked.trim()}”`}
          why="Not as a part number, superseded ones included, nor as a model, maker, switch or site."
          todo={
            <ul>
              <li>
                <a href={`/ask?model=${encodeURIComponent(looked.trim())}`}>Ask for this rating</a>
              </li>
              <li>
                <a href="/equipment">Add the furnace range and its switches</a>
              </li>
            </ul>
          }
        />
      )}
      {lookUp !== undefined && settings !== undefined && (
        <>
          {found.length > 0 && <Results name="Results" matches={found} {...{ lookUp, file, settings }} />}
          {near.length > 0 && (
            <>
              <h2>Something else, near it</h2>
              <Results
                name={found.length > 0 ? 'Something else, near it' : 'Results'}
                matches={near}
                {...{ lookUp, file, settings }}
              />
            </>
          )}
        </>
      )}
      {(matches[0]?.score ?? 0) >= nearFrom && (
        <p>
          None of these is yours?{' '}
          <a href={`/ask?model=${encodeURIComponent(looked.trim())}`}>Ask for this rating</a>
        </p>
      )}
    </div>
  )
}

type ResultsProps = {
  name: string
  matches: readonly Match[]
  lookUp: LookUp
  file: TeamFile
  settings: RatingSettings
}

const Results = ({ name, matches, lookUp, file, settings }: ResultsProps) => (
  <ul className={styles.results} aria-label={name}>
    {matches.map((match) => (
      <li key={match.key}>
        <FindResult entry={lookUp.entryOf.get(match.key)!} {...{ match, file, settings }} />
      </li>
    ))}
  </ul>
)

function BeforeTyping({ empty }: { empty: boolean }) {
  const { recent } = useRecentLookUps()
  if (empty) {
    return (
      <Empty
        what="No equipment on file yet"
        why="Inchwater knows only what your team records."
        todo={<a href="/equipment">Add a maker, a furnace range and its switches</a>}
      />
    )
  }
  return (
    <>
      <LaterFurnaces />
      <AskedByMe />
      {recent.length === 0 ? (
        <p>
          Type any part of it: dashes and blanks don’t matter, and 0 and O, 1 and I, 5 and S are taken for
          each other.
        </p>
      ) : (
        <nav aria-label="Looked up lately">
          <h2>Looked up lately</h2>
          <ul className={styles.results}>
            {recent.map((look) => (
              <li key={look.key}>
                <a className={styles.result} href={look.href}>
                  <span className={styles.title}>{look.words}</span>
                </a>
              </li>
            ))}
          </ul>
        </nav>
      )}
    </>
  )
}
