'use client'

import { useState } from 'react'
import { questionsIn } from '@/lib/records/view/desk/questions'
import { useDeviceState } from '../device/deviceContext'
import { questionCard, questionTitle } from '../phoneDesk/questionWords'
import { Quiet } from '../ui/words/Quiet'
import { sayMoment } from '../ui/words/sayDate'

/** For how long an answered question stays among one's own. Days. */
const daysKept = 30

/** What one has asked and still waits for, and what was answered lately, the newest first. */
export function AskedByMe() {
  const { file, me, names } = useDeviceState()
  const [now] = useState(() => Date.now())
  const own = questionsIn(file).flatMap((question) => {
    const asked = question.askers.find(({ personId }) => personId === me.id)
    const answer = question.answers.at(-1)
    const isOld = answer !== undefined && now - Date.parse(answer.at) > daysKept * 24 * 60 * 60 * 1000
    return asked === undefined || isOld ? [] : [{ question, asked, answer }]
  })
  if (own.length === 0) return null
  return (
    <nav aria-label="What you asked">
      <h2>What you asked</h2>
      <ul>
        {own
          .toSorted((one, other) => (one.asked.at < other.asked.at ? 1 : -1))
          .map(({ question, asked, answer }) => (
            <li key={question.lead.id}>
              <a href={questionCard(file, question)}>{questionTitle(file, question)}</a>{' '}
              <Quiet inline>
                asked {sayMoment(asked.at)};{' '}
                {answer !== undefined
                  ? `answered by ${names.get(answer.by) ?? 'somebody'}, ${sayMoment(answer.at)}`
                  : asked.waiting
                    ? 'waits on this device for a signal'
                    : question.calls.length === 0
                      ? 'not answered yet'
                      : `not answered yet, ${question.calls.length === 1 ? '1 call' : `${question.calls.length} calls`} made`}
              </Quiet>
            </li>
          ))}
      </ul>
    </nav>
  )
}
