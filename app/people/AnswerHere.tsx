'use client'

import { useEffect, useRef } from 'react'
import { Problem } from '../ui/answers/Problem'
import { Stack } from '../ui/paper/Stack'
import { OneTimeLink } from './OneTimeLink'
import styles from './people.module.css'

/** What came of something that a manager did: a refusal, that it is done, or a link that is shown once. */
export type Answer = { problem: string } | { done: string } | { words: string; link: string }

/** The answer, where it was asked for: a page of many people is long, so whoever pressed is led to it. Drawn anew for each. */
export function AnswerHere({ answer }: { answer: Answer }) {
  const here = useRef<HTMLDivElement>(null)
  useEffect(() => here.current?.focus(), [])
  return (
    <div ref={here} tabIndex={-1} className={styles.answer}>
      <Stack>
        {'problem' in answer && <Problem>{answer.problem}</Problem>}
        {'done' in answer && <p role="status">Done: {answer.done}.</p>}
        {'link' in answer && <OneTimeLink {...answer} />}
      </Stack>
    </div>
  )
}
