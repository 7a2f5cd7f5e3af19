'use client'

import { needsOf } from '@/lib/records/view/desk/need'
import type { Question } from '@/lib/records/view/desk/questions'
import { useDeviceState } from '../device/deviceContext'
import { questionTitle } from '../phoneDesk/questionWords'
import { Check } from '../ui/form/Check'
import { Sheet } from '../ui/paper/Sheet'

type Props = {
  others: readonly Question[]
  taken: readonly string[]
  onTake: (question: Question, isTaken: boolean) => void
}

/** The other open questions that the same call can answer. */
export function OtherQuestions({ others, taken, onTake }: Props) {
  const { file } = useDeviceState()
  if (others.length === 0) return null
  return (
    <Sheet
      title="In the same call"
      sub="Other open questions for this maker or organisation. One call answers several."
    >
      {others.map((question) => {
        const needs = needsOf(file, question)
        return (
          <Check
            key={question.lead.id}
            name={`take-${question.lead.id}`}
            label={questionTitle(file, question)}
            hint={needs.length === 0 ? undefined : needs.join(' · ')}
            checked={taken.includes(question.lead.id)}
            onChange={(event) => onTake(question, event.target.checked)}
          />
        )
      })}
    </Sheet>
  )
}
