'use client'

import type { Entry } from '@/lib/records/fold/entry'
import type { AnyRepairBody } from '@/lib/records/kinds/repair'
import type { WarrantyAnswerBody } from '@/lib/records/kinds/warrantyAnswer'
import { answersOfRepair } from '@/lib/records/view/answersOfRepair'
import { mayRecordWarranty } from '@/lib/records/warrantyTerms'
import { useDeviceState } from '../device/deviceContext'
import { leadingBack } from '../equipment/form/returnTo'
import { AsPrinted } from '../ui/words/AsPrinted'
import { sayDate } from '../ui/words/sayDate'
import styles from './warranty.module.css'
import { amountOf, outcomeWords, warrantyHref } from './warrantyForm'

/** Whether a repair fitted a part, so that one came out that may have gone back. */
export const fittedAPart = ({ fittedPart, parts }: AnyRepairBody): boolean =>
  (fittedPart ?? parts) !== undefined

/** What was answered about the parts that came out in a repair, the newest answer of each first; no answer is no line. */
export function WarrantyAnswers({ repairId }: { repairId: string }) {
  const { file } = useDeviceState()
  const parts = answersOfRepair(file, repairId)
  if (parts.length === 0) return null
  return (
    <ul className={styles.answers}>
      {parts.map((answers) => {
        const [newest, ...earlier] = answers.toReversed()
        return (
          <li key={newest!.id}>
            Warranty, part <AsPrinted text={newest!.body.partReturned} />: <AnswerLink answer={newest!} />
            {earlier.length > 0 && '. Before that: '}
            {earlier.map((answer, place) => (
              <span key={answer.id}>
                {place > 0 && '; '}
                <AnswerLink answer={answer} />
              </span>
            ))}
          </li>
        )
      })}
    </ul>
  )
}

/** An answer in a few words, leading to its record. */
function AnswerLink({ answer: { id, body } }: { answer: Entry<WarrantyAnswerBody> }) {
  const amount = amountOf(body)
  return (
    <a href={`/record?id=${id}`}>
      {outcomeWords[body.outcome].toLowerCase()}
      {amount !== undefined && `, ${amount}`}, {sayDate(body.on)}
    </a>
  )
}

/** A repair's answers, and the way to the form for whoever may record one; nothing for a repair that fitted no part. */
export function WarrantyOfRepair({ repair, back }: { repair: Entry<AnyRepairBody>; back: string }) {
  const { me } = useDeviceState()
  if (!fittedAPart(repair.body)) return null
  const offered = mayRecordWarranty.includes(me.role) && repair.withdrawn === undefined
  return (
    <>
      <WarrantyAnswers repairId={repair.id} />
      {offered && (
        <p className={styles.record}>
          <a href={leadingBack(warrantyHref(repair.id), back)}>Record a warranty answer</a>
        </p>
      )}
    </>
  )
}
