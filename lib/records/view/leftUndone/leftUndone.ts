import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { Question } from '../desk/questions'
import { type WorthVerifying, worthVerifying } from '../desk/worthVerifying'
import { type Dispute, disputesIn } from '../disputes'
import { ratingSettings } from '../setpoint'
import { type UnsuitableFitted, unsuitableStill } from '../swaps/unsuitableStill'
import { type FurnaceLeftOff, furnacesLeftOff } from './furnacesLeftOff'
import { type GaugeDue, gaugesDue } from './gaugesDue'
import { type OftenBack, oftenBack } from './oftenBack'
import { oldRequests } from './oldRequests'
import { type RepairNotProven, repairsNotProven } from './repairsNotProven'
import { type VisitNotEnded, visitsNotEnded } from './visitsNotEnded'

/** What waits for somebody, in the order of need: what can hurt people first, then what comes back, then numbers. */
export type LeftUndone = {
  unsuitable: readonly UnsuitableFitted[]
  leftOff: readonly FurnaceLeftOff[]
  notEnded: readonly VisitNotEnded[]
  notProven: readonly RepairNotProven[]
  oftenBack: readonly OftenBack[]
  disputes: readonly Dispute[]
  requests: readonly Question[]
  worthVerifying: readonly WorthVerifying[]
  gauges: readonly GaugeDue[]
}

/** Everything left undone in a team file as it stands now. @param now ISO 8601 */
export const leftUndone = (file: TeamFile, now: string): LeftUndone => ({
  unsuitable: unsuitableStill(file),
  leftOff: furnacesLeftOff(file),
  notEnded: visitsNotEnded(file, now),
  notProven: repairsNotProven(file, now),
  oftenBack: oftenBack(file, now),
  disputes: disputesIn(file, now),
  requests: oldRequests(file, now),
  worthVerifying: worthVerifying(file, ratingSettings(file, now)),
  gauges: gaugesDue(file, now),
})
