'use client'

import { useState } from 'react'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { type Question, questionsIn } from '@/lib/records/view/desk/questions'
import { sayQuestion } from '../call/readOut'
import { useDeviceState } from '../device/deviceContext'
import { questionTitle } from '../phoneDesk/questionWords'
import { sayMoment } from '../ui/words/sayDate'

type Props = { question: Question; file: TeamFile; me: string }

/** While one's own question waits on the device: the line to read out over a landline, where there is one. */
export function UnsentQuestion({ question, file, me }: Props) {
  const unsent = [...question.requests, ...question.alsoAsked].filter(
    ({ by, waiting }) => by === me && waiting,
  )
  if (unsent.length === 0) return null
  const own = unsent[0]!.body
  const furnace =
    own.furnaceId === undefined ? undefined : file.furnaces.get(file.keptId(own.furnaceId))?.body
  return (
    <div role="status">
      <p>
        <b>Your question waits on this device.</b> It is sent when there is a signal. Over a landline, read
        out:
      </p>
      <p>
        {sayQuestion(
          {
            ...own,
            printed: own.printed ?? question.lead.body.printed,
            model: own.model ?? furnace?.model ?? question.lead.body.model,
            serial: own.serial ?? furnace?.serial,
          },
          questionTitle(file, question),
        )}
      </p>
    </div>
  )
}

/** How long the card says that one's question is answered. Days. */
const daysSaid = 7

/** What one has asked about a switch: that it is answered, or that it still waits on this device. */
export function OwnQuestions({ positionId }: { positionId: string }) {
  const { file, me, names } = useDeviceState()
  const [now] = useState(() => Date.now())
  return questionsIn(file)
    .filter(
      ({ position, answers }) =>
        position?.id === positionId ||
        answers.some(({ body }) => file.keptId(body.positionId) === positionId),
    )
    .map((question) => {
      const asked = question.askers.find(({ personId }) => personId === me.id)
      const answer = question.answers.at(-1)
      if (answer === undefined)
        return <UnsentQuestion key={question.lead.id} question={question} file={file} me={me.id} />
      const isLate = now - Date.parse(answer.at) > daysSaid * 24 * 60 * 60 * 1000
      return asked === undefined || isLate ? null : (
        <p key={question.lead.id} role="status">
          <b>Answered.</b> What you asked on {sayMoment(asked.at)} was answered by{' '}
          {names.get(answer.by) ?? 'somebody'}, {sayMoment(answer.at)}.
        </p>
      )
    })
}
