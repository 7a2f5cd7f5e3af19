import type { CallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import { type Repeat, repeatsOf } from '@/lib/core/callbacks/repeatsOf'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { casesOfTeam } from '../callbacks/caseFacts'
import { isIn, type Period } from './period'

/** What callbacks said of the cause that was named first. */
export type CausesOverturned = {
  /** Another cause was named later, the newest first. */
  overturned: readonly Repeat[]
  /** The same one again: it was not put right, or it came anew. */
  sameAgain: readonly Repeat[]
  /** One of the two was not named. */
  notKnown: readonly Repeat[]
}

/** Callbacks opened in a period, by whether the cause that was named first still stands. */
export function causesOverturned(file: TeamFile, window: CallbackWindow, period: Period): CausesOverturned {
  const cases = casesOfTeam(file)
  const openedAt = new Map(cases.map((one) => [one.id, one.openedAt]))
  const repeats = repeatsOf(cases, window)
    .filter(({ laterId }) => isIn(period, openedAt.get(laterId)!))
    .toReversed()
  const where = (causes: Repeat['causes']) => repeats.filter((repeat) => repeat.causes === causes)
  return { overturned: where('another cause'), sameAgain: where('same cause'), notKnown: where('not known') }
}
