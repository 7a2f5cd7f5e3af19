import { breakBeyondMake } from '@/lib/core/rating'
import type { Action, SwitchKind } from '@/lib/core/vocabulary'

/** What is said, and asked back, of two numbers of which the break is beyond the make. */
export const turnedRound = {
  words:
    'it would open beyond where it closes. A switch opens at less than it closes at: the two may have been swapped.',
  askBack: 'Which of the two is where it closes, and which where it opens?',
} as const

/** Whether numbers that one source states together have their make and break the wrong way round. */
export const looksTurnedRound = (
  values: readonly { action?: Action | undefined; pascals: number }[],
  kind: SwitchKind,
): boolean =>
  values.some(
    (closes) =>
      closes.action === 'closes' &&
      values.some(
        (opens) =>
          opens.action === 'opens' &&
          breakBeyondMake({ pascals: closes.pascals, kind }, { pascals: opens.pascals, kind }),
      ),
  )
