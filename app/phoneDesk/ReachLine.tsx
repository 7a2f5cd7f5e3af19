'use client'

import type { Reach } from '@/lib/records/view/desk/reach'
import { useDeviceState } from '../device/deviceContext'
import { sayMoment } from '../ui/words/sayDate'
import type { Holding } from './useHolding'

type Props = {
  reach: Reach
  answerIds: readonly string[]
  /** Undefined where the server has not said, or may not be asked. */
  holding: Holding | undefined
}

/**
 * Whether the answer has reached somebody who asked. That it lies on a device is no more than that: until it was seen
 * or read out, the house has to be rung.
 */
export function ReachLine({ reach, answerIds, holding }: Props) {
  const { names } = useDeviceState()
  const nameOf = (id: string) => names.get(id) ?? 'Somebody'
  const who = nameOf(reach.personId)
  if (reach.reached)
    return (
      <>
        {who}: {reach.how === 'shown on the screen' && 'on their device, seen at '}
        {reach.how === 'gave it'
          ? 'gave the answer'
          : reach.how === 'shown on the screen'
            ? sayMoment(reach.at)
            : `read out by ${nameOf(reach.by)}, ${sayMoment(reach.at)}`}
      </>
    )
  return (
    <>
      <b>{who}: not reached. Ring the house.</b>
      {holding !== undefined && ` ${deviceWords(reach.personId, answerIds, holding)}`}
    </>
  )
}

function deviceWords(personId: string, answerIds: readonly string[], holding: Holding): string {
  const there = answerIds.filter((id) => holding.get(id)?.has(personId))
  if (there.length === answerIds.length) return 'It is on their device, and they have not opened it.'
  return there.length === 0 ? 'It is not on their device yet.' : 'A part of it is on their device.'
}
