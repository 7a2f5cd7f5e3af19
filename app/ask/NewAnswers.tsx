'use client'

import { newAnswersFor } from '@/lib/records/view/desk/reach'
import { useDeviceState } from '../device/deviceContext'
import { questionTitle } from '../phoneDesk/questionWords'
import { setpointHref } from '../setpoint/setpointAddress'
import styles from './newAnswers.module.css'

/** What one asked for and is answered, on every page until its card was opened. The number stands on the card. */
export function NewAnswers() {
  const { file, me } = useDeviceState()
  const questions = newAnswersFor(file, me.id)
  return (
    <div role="status" aria-label="Answers to your questions">
      {questions.map((question) => {
        const { lead, requests, alsoAsked, answers } = question
        const own = [...requests, ...alsoAsked].find(({ by }) => by === me.id)
        const furnaceId = own?.body.furnaceId
        const positionIds = [...new Set(answers.map(({ body }) => file.keptId(body.positionId)))]
        return (
          <p key={lead.id} className={styles.answered}>
            <b>Answered:</b>{' '}
            {positionIds.map((positionId) => (
              <a
                key={positionId}
                href={setpointHref({ positionId, ...(furnaceId === undefined ? {} : { furnaceId }) })}
              >
                {file.positions.get(positionId)?.body.name ?? 'The switch'}: {questionTitle(file, question)}
              </a>
            ))}
          </p>
        )
      })}
    </div>
  )
}
