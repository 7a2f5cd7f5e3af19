import type { Observations } from '@/lib/core/diagnosis'
import type { FindingId, ValueOf } from '../findings'

/**
 * The gravest value that any of the readings showed: a fault that came once is a fault. Nothing where none showed any.
 * @param gravestFirst the finding's values, those that speak of trouble first
 */
export function gravestOf<Id extends FindingId>(
  id: Id,
  shown: readonly ((ValueOf<Id> & string) | undefined)[],
  gravestFirst: readonly (ValueOf<Id> & string)[],
): Observations {
  const value = gravestFirst.find((candidate) => shown.includes(candidate))
  return value === undefined ? {} : { [id]: value }
}

/** What each reading showed; undefined where it says nothing. */
export type SeenOrNot = 'seen' | 'ruled out' | undefined

/** Seen as soon as one reading showed it; ruled out when one did rule it out and none showed it. */
export const seenOnce = <Id extends FindingId>(id: Id, shown: readonly SeenOrNot[]): Observations => {
  if (shown.includes('seen')) return { [id]: 'seen' }
  return shown.includes('ruled out') ? { [id]: 'ruled out' } : {}
}
