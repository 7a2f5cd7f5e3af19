'use client'

import { remindersIn } from '@/lib/records/view/desk/reminders'
import { useDeviceState } from '../device/deviceContext'
import { Sheet } from '../ui/paper/Sheet'
import { Quiet } from '../ui/words/Quiet'
import { sayMoment } from '../ui/words/sayDate'
import { organisationName } from './callWords'
import { questionTitle } from './questionWords'

/** The calls that somebody asked to have repeated, those that are due first. Nothing stands here without one. */
export function RemindersSection({ now }: { now: string }) {
  const { file } = useDeviceState()
  const reminders = remindersIn(file, now)
  if (reminders.length === 0) return null
  return (
    <Sheet title="Ring back">
      <ul>
        {reminders.map(({ call, questions, due }) => (
          <li key={call.id}>
            <a
              href={`/call?${new URLSearchParams([
                ...questions.map(({ lead }) => ['request', lead.id]),
                ['organisation', call.body.organisationId],
              ])}`}
            >
              {organisationName(file, call.body.organisationId)}, {sayMoment(call.body.ringBackAt!)}
            </a>
            {due && <b> Due now.</b>}{' '}
            <Quiet inline>
              {questions.map((question) => questionTitle(file, question)).join('; ')}
              {call.body.person === undefined ? '' : `. Ask for ${call.body.person}`}
            </Quiet>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
