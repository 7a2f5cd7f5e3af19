'use client'

import type { TeamFile } from '@/lib/records/fold/teamFile'
import { openQuestions, type Question } from '@/lib/records/view/desk/questions'
import { sayQuestion } from '../call/readOut'
import { useDeviceState } from '../device/deviceContext'
import { questionTitle } from '../phoneDesk/questionWords'

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

/** The same for whatever one has asked about one switch position. */
export function UnsentQuestions({ positionId }: { positionId: string }) {
  const { file, me } = useDeviceState()
  return openQuestions(file)
    .filter(({ position }) => position?.id === positionId)
    .map((question) => <UnsentQuestion key={question.lead.id} question={question} file={file} me={me.id} />)
}
