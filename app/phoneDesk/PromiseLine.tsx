'use client'

import { promiseMinutes } from '@/lib/records/kinds/promise'
import { promisesOn } from '@/lib/records/view/desk/promises'
import type { Question } from '@/lib/records/view/desk/questions'
import { useDeviceState } from '../device/deviceContext'
import { useAdd } from '../device/useAdd'
import { Problem } from '../ui/answers/Problem'
import { Button } from '../ui/form/Button'
import { Row } from '../ui/paper/Stack'
import { sayMoment } from '../ui/words/sayDate'

type Props = { question: Question; now: string }

/** Who has promised to ring, so that nobody rings twice; and one's own promise to give, renew or put back. */
export function PromiseLine({ question, now }: Props) {
  const { file, names, me } = useDeviceState()
  const { add, trouble } = useAdd()
  const promises = promisesOn(file, question, now)
  const own = promises.find(({ personId }) => personId === me.id)
  const promise = () =>
    add([{ kind: 'promise', body: { requestId: question.lead.id, minutes: promiseMinutes } }])
  const putBack = (record: string) => add([{ kind: 'withdrawal', body: { record, reason: 'Put back.' } }])
  return (
    <div>
      <div role="status">
        {promises.map(({ entry, personId, until }) => (
          <p key={entry.id}>
            {personId === me.id ? (
              <b>You have promised to ring.</b>
            ) : (
              <b>{names.get(personId) ?? 'Somebody'} has promised to ring.</b>
            )}{' '}
            It lapses by itself at <time dateTime={until}>{clockTime(until)}</time>.
          </p>
        ))}
      </div>
      <Problem>{trouble?.refusal?.sentence}</Problem>
      <Row>
        <Button onClick={() => void promise()}>{own === undefined ? 'I’ll ring' : 'I’ll ring: renew'}</Button>
        {own !== undefined && (
          <Button kind="quiet" onClick={() => void putBack(own.entry.id)}>
            Put back
          </Button>
        )}
      </Row>
    </div>
  )
}

/** The time of day on this device's clock, for a moment of today; else its date as well. */
export function clockTime(moment: string): string {
  const local = new Date(moment)
  const time = `${String(local.getHours()).padStart(2, '0')}:${String(local.getMinutes()).padStart(2, '0')}`
  return local.toDateString() === new Date().toDateString()
    ? time
    : `${time}, ${sayMoment(moment).split(',')[0]}`
}
