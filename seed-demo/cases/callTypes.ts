import type { Technician } from './habits'
import type { House } from './houses'
import type { RatingsThen } from './ratingsThen'
import type { Trouble } from './trouble'
import type { VisitSetting } from './visit'
import type { Day } from './weather'

/** What the demo's cases are told with. */
export type CaseTelling = {
  team: VisitSetting['team']
  random: () => number
  ratings: RatingsThen
  weatherOn: (branch: House['branch'], on: string) => Day
}

/** A furnace stops, and somebody goes there. */
export type Call = {
  house: House
  trouble: Trouble
  by: Technician
  on: string
  /** The furnace was seen to within the last 30 days, and not mended. */
  isRepeat: boolean
}

/** What is left of a case: until when it was worked on, after how many days the trouble is back, or that it stays off. */
export type Aftermath = { until: string; backAfter?: number; staysOff?: true }
