'use client'

import { Button } from '../../ui/form/Button'
import { Check } from '../../ui/form/Check'
import { Row } from '../../ui/paper/Stack'

/** A record on file whose name is near the one that is typed. */
export type Near = { id: string; words: string }

const keyOf = (near: readonly Near[]): string => near.map(({ id }) => id).join(' ')

/** Whether names near it are on file and nobody has said that it is another. Another set of them is another question. */
export const isNearOpen = (answer: string, near: readonly Near[]): boolean =>
  near.length > 0 && answer !== keyOf(near)

export const nearGap = (what: string): string =>
  `Use the one on file, or tick that it is another ${what}. A name spelt two ways hides half of what is on file.`

type Props = {
  /** What it is a record of, for instance `maker`. */
  what: string
  near: readonly Near[]
  answer: string
  onAnswer: (answer: string) => void
  /** One of them is meant: nothing new is added. */
  onUse: (id: string) => void
  error?: string
}

/** Asks, before a new name is added, whether one on file that is spelt nearly so is meant. */
export function NearQuestion({ what, near, answer, onAnswer, onUse, error }: Props) {
  if (near.length === 0) return null
  return (
    <div>
      <p role="status">Did you mean {near.map(({ words }) => words).join(' or ')}?</p>
      <Row>
        {near.map(({ id, words }) => (
          <Button key={id} onClick={() => onUse(id)}>
            Use {words}
          </Button>
        ))}
      </Row>
      <Check
        name="another"
        label={`It is another ${what}`}
        checked={!isNearOpen(answer, near)}
        onChange={(event) => onAnswer(event.target.checked ? keyOf(near) : '')}
        error={error}
      />
    </div>
  )
}
