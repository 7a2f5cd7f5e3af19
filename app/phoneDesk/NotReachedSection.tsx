'use client'

import { useMemo } from 'react'
import type { Role } from '@/lib/records/envelope'
import type { Question } from '@/lib/records/view/desk/questions'
import { notReachedIn, reachOf } from '@/lib/records/view/desk/reach'
import { ratingSettings } from '@/lib/records/view/setpoint'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { Button } from '../ui/form/Button'
import { Sheet } from '../ui/paper/Sheet'
import { Row, Stack } from '../ui/paper/Stack'
import { answerLines } from './answerLines'
import { questionTitle } from './questionWords'
import { ReachLine } from './ReachLine'
import { type Holding, useHolding } from './useHolding'

/** An answer that nobody has opened for this long is listed among all that were answered. Days. */
const daysListed = 14

/** Who rings, and is told what lies on whose device. */
const mayAsk: readonly Role[] = ['manager', 'dispatcher']

/** Answers that have not reached everybody who asked: whom to ring, and the line to read out. */
export function NotReachedSection({ now }: { now: string }) {
  const { file, me } = useDeviceState()
  const since = new Date(Date.parse(now) - daysListed * 24 * 60 * 60 * 1000).toISOString()
  const all = notReachedIn(file)
  const questions = all.filter(({ answers }) => (answers.at(-1)?.at ?? '') >= since)
  const holding = useHolding(
    mayAsk.includes(me.role) ? questions.flatMap(({ answers }) => answers.map(({ id }) => id)) : [],
  )
  if (questions.length === 0) return null
  return (
    <section aria-labelledby="not-reached">
      <Stack>
        <h2 id="not-reached">Answered, and not reached yet</h2>
        {questions.map((question) => (
          <NotReached key={question.lead.id} {...{ question, now, holding }} />
        ))}
        {all.length > questions.length && (
          <p>
            Answers that are older than {daysListed} days stand below, under{' '}
            <a href="#answered">Answered questions</a>.
          </p>
        )}
      </Stack>
    </section>
  )
}

type NotReachedProps = { question: Question; now: string; holding: Holding | undefined }

function NotReached({ question, now, holding }: NotReachedProps) {
  const { file, names } = useDeviceState()
  const { add } = useAdd()
  const settings = useMemo(() => ratingSettings(file, now), [file, now])
  const lines = answerLines(file, question, settings)
  const reach = reachOf(file, question)
  const nameOf = (id: string) => names.get(id) ?? 'Somebody'
  const readOut = (personId: string) =>
    add([
      {
        kind: 'answer seen',
        body: {
          requestId: question.lead.id,
          reportIds: question.answers.map(({ id }) => id),
          personId,
          how: 'read out over the telephone',
        },
      },
    ])
  return (
    <Sheet heading={3} title={questionTitle(file, question)}>
      <Stack>
        <ul>
          {reach.map((each) => (
            <li key={each.personId}>
              <ReachLine reach={each} answerIds={question.answers.map(({ id }) => id)} holding={holding} />
            </li>
          ))}
        </ul>
        <div>
          <h4>Read out</h4>
          {lines.map(({ id, line }) => (
            <p key={id}>
              <a href={`/record?id=${id}`}>{line}</a>
            </p>
          ))}
        </div>
        <Row>
          {reach
            .filter(({ reached }) => !reached)
            .map(({ personId }) => (
              <Button key={personId} onClick={() => void readOut(personId)}>
                I have read it out to {nameOf(personId)}
              </Button>
            ))}
        </Row>
      </Stack>
    </Sheet>
  )
}
