'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { WarrantyAnswerBody } from '@/lib/records/kinds/warrantyAnswer'
import { answersOfRepair } from '@/lib/records/view/answersOfRepair'
import { useDeviceState } from '../device/deviceContext'
import { amountOf, outcomeWords } from './warrantyForm'

/** An answer as its record tells it: its amount in words, and the later answer that counts in its place. */
export function WarrantyTold({ answer }: { answer: Entry<WarrantyAnswerBody> }) {
  const { file } = useDeviceState()
  const amount = amountOf(answer.body)
  const ofPart = answersOfRepair(file, answer.body.repairId).find((answers) =>
    answers.some(({ id }) => id === answer.id),
  )
  const newest = ofPart?.at(-1)
  return (
    <p>
      <b>{outcomeWords[answer.body.outcome]}:</b> {amount ?? 'no amount on record'}.
      {newest !== undefined && newest.id !== answer.id && (
        <>
          {' '}
          <a href={`/record?id=${newest.id}`}>A later answer about this part counts</a>
        </>
      )}
    </p>
  )
}
