'use client'

import { useEffect, useRef, useState } from 'react'
import { type LogVerification, verifyLog } from '@/lib/device/verification'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import styles from './log.module.css'

type Work =
  | { at: 'rest' }
  | { at: 'walking'; done: number; of: number }
  | { at: 'end'; found: LogVerification }
  | { at: 'end'; problem: string }

/** Has the server hold every entry of the log to the one before it, and says how far it is and what it found. */
export function VerifySheet() {
  const [work, setWork] = useState<Work>({ at: 'rest' })
  const leaving = useRef<AbortController>(undefined)
  useEffect(() => () => leaving.current?.abort(), [])

  async function check() {
    leaving.current?.abort()
    const here = new AbortController()
    leaving.current = here
    setWork({ at: 'walking', done: 0, of: 1 })
    const walked = await verifyLog((done, of) => setWork({ at: 'walking', done, of }), here.signal)
    if (here.signal.aborted) return
    setWork(walked.ok ? { at: 'end', found: walked.value } : { at: 'end', problem: walked.problem.message })
  }

  return (
    <Sheet
      title="Is the log as it was written?"
      sub="Each entry’s hash covers the one before it, so whoever changes one has to change all that follow."
      foot={
        <Button onClick={() => void check()} busy={work.at === 'walking' ? 'Checking …' : undefined}>
          Check every entry
        </Button>
      }
    >
      {work.at === 'walking' && (
        <div className={styles.walking}>
          <progress aria-label="How far the check is" value={work.done} max={work.of} />
          {work.done > 0 && (
            <Quiet>
              {work.done} of {work.of} entries fit so far
            </Quiet>
          )}
        </div>
      )}
      <div role="status">{work.at === 'end' && 'found' in work && <Found found={work.found} />}</div>
      {work.at === 'end' && 'problem' in work && <Problem>{work.problem}</Problem>}
    </Sheet>
  )
}

function Found({ found: { entries, headHash, withheld, trouble } }: { found: LogVerification }) {
  return (
    <div className={styles.found}>
      {trouble === undefined ? (
        <p>
          <b>The log is whole.</b>{' '}
          {entries === 0 ? 'It has no entry yet.' : `${entries} entries fit, from the first to the last.`}
        </p>
      ) : (
        <p>
          <b>{trouble.sentence}</b> {entries === 0 ? 'No entry' : `The first ${entries} entries`} before it
          fit. Stop the server, keep a copy of the data folder as it is, and restore the newest back-up that
          fits.
        </p>
      )}
      {withheld.length > 0 && (
        <ul aria-label="Withheld">
          {withheld.map(({ seq, id, bySeq }) => (
            <li key={seq}>
              <a href={`/record?id=${id}`}>Entry {seq}</a>: withheld by record {bySeq}
            </li>
          ))}
        </ul>
      )}
      {entries > 0 && (
        <>
          <p>
            Hash of {trouble === undefined ? 'the newest entry' : `entry ${entries}`}:{' '}
            <code translate="no">{headHash}</code>
          </p>
          <Quiet>
            Note it somewhere else, with the number {entries}. A log that somebody wrote anew from the first
            entry would fit together too, but it would have another hash there.
          </Quiet>
        </>
      )}
    </div>
  )
}
