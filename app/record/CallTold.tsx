'use client'

import type { Entry } from '@/lib/records/fold/entry'
import { counting } from '@/lib/records/fold/teamFile'
import type { CallAttemptBody } from '@/lib/records/kinds/callAttempt'
import { questionOf } from '@/lib/records/view/desk/questions'
import { savedTogether } from '@/lib/records/view/savedTogether'
import { useDeviceState } from '../device/deviceContext'
import { callLine } from '../phoneDesk/callWords'
import { questionTitle } from '../phoneDesk/questionWords'
import { sourceLine } from '../setpoint/sourceLines'
import { Stack } from '../ui/paper/Stack'

/** A call as the desk would say it: whom, what became of it, for which questions, and what was answered in it. */
export function CallTold({ call }: { call: Entry<CallAttemptBody> }) {
  const { file, names } = useDeviceState()
  const { requestIds, reference, note } = call.body
  const questions = [...new Set(requestIds.flatMap((id) => questionOf(file, id) ?? []))]
  const answers = counting(file.reports).filter(
    (report) =>
      savedTogether(report, call) &&
      report.body.requestId !== undefined &&
      questions.some(({ answers: given }) =>
        given.some(({ body: { requestId } }) => requestId === report.body.requestId),
      ),
  )
  return (
    <Stack>
      <p>
        {callLine(file, names, call)}
        {reference !== undefined && ` Their reference: ${reference}.`}
      </p>
      {note !== undefined && <p>{note}</p>}
      <ul>
        {questions.map((question) => (
          <li key={question.lead.id}>
            For the question: <a href={`/record?id=${question.lead.id}`}>{questionTitle(file, question)}</a>
          </li>
        ))}
        {answers.map((answer) => {
          const { words, href } = sourceLine(answer, file, names)
          return (
            <li key={answer.id}>
              Answered:{' '}
              <a href={href}>
                {file.positions.get(file.keptId(answer.body.positionId))?.body.name}, {words}
              </a>
            </li>
          )
        })}
      </ul>
    </Stack>
  )
}
