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
        {reminders.map(({ call, questions, due, at }) => (
          <li key={call.id}>
            <a
              href={`/call?${new URLSearchParams([
                ...questions.map(({ lead }) => ['request', lead.id]),
                ['organisation', call.body.organisationId],
              ])}`}
            >
              {organisationName(file, call.body.organisationId)}, {sayMoment(call.body.ringBackAt!)}
            </a>
            {due && <b> {dueWords(at, now)}</b>}{' '}
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

/** That it is time to ring, and how long it has been where that is an hour or more. */
function dueWords(at: string, now: string): string {
  const hours = Math.floor((Date.parse(now) - Date.parse(at)) / 3_600_000)
  if (hours < 1) return 'Due now.'
  const [count, unit] = hours < 24 ? [hours, 'hour'] : [Math.floor(hours / 24), 'day']
  return `Due now, ${count} ${unit}${count === 1 ? '' : 's'} late.`
}
