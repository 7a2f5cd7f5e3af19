'use client'

import { useState } from 'react'
import { questionsIn } from '@/lib/records/view/desk/questions'
import { reachOf } from '@/lib/records/view/desk/reach'
import { useDeviceState } from '../device/deviceContext'
import { Button } from '../ui/form/Button'
import { Fold } from '../ui/paper/Fold'
import { Stack } from '../ui/paper/Stack'
import { Quiet } from '../ui/words/Quiet'
import { sayMoment } from '../ui/words/sayDate'
import { questionCard, questionTitle } from './questionWords'

/** As many as are read at once. */
const page = 20

/** Every question that was answered, however long ago, the newest answer first: nothing that was asked is lost. */
export function AnsweredSection() {
  const { file, names } = useDeviceState()
  const [shown, setShown] = useState(page)
  const answered = questionsIn(file)
    .flatMap((question) => {
      const answer = question.answers.at(-1)
      return answer === undefined ? [] : [{ question, answer }]
    })
    .toSorted((one, other) => (one.answer.at < other.answer.at ? 1 : -1))
  if (answered.length === 0) return null
  return (
    <section id="answered">
      <Fold summary={`Answered questions (${answered.length})`}>
        {() => (
          <Stack>
            <ul>
              {answered.slice(0, shown).map(({ question, answer }) => {
                const waiting = reachOf(file, question).filter(({ reached }) => !reached)
                return (
                  <li key={question.lead.id}>
                    <a href={questionCard(file, question)}>{questionTitle(file, question)}</a>{' '}
                    <Quiet inline>
                      answered by {names.get(answer.by) ?? 'somebody'}, {sayMoment(answer.at)}.{' '}
                      {waiting.length === 0
                        ? 'Reached everybody who asked.'
                        : `Not seen by ${waiting.map(({ personId }) => names.get(personId) ?? 'somebody').join(', ')}.`}
                    </Quiet>
                  </li>
                )
              })}
            </ul>
            {answered.length > shown && (
              <Button kind="quiet" onClick={() => setShown(shown + page)}>
                Show {Math.min(page, answered.length - shown)} more
              </Button>
            )}
          </Stack>
        )}
      </Fold>
    </section>
  )
}
