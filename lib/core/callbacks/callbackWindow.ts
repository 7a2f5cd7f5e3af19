import type { CallbackCase } from './cases'
import {
  afterHeatingSeasonDays,
  dayMs,
  type HeatingSeason,
  heatingSeasonDays,
  usualHeatingSeason,
} from './heatingSeason'

/** What counts as a callback. It is shown beside every figure. */
export type CallbackWindow = {
  /** Above 0; the last day included. */
  days: number
  /** Both about the proving circuit; otherwise any case on the same furnace counts. */
  sameCircuit: boolean
  /** What a day is. In heating-season days a summer takes none. */
  calendar: 'calendar days' | 'heating-season days'
  season: HeatingSeason
}

/** 30 days, the proving circuit, by the calendar: common practice, no published source. */
export const usualCallbackWindow: CallbackWindow = {
  days: 30,
  sameCircuit: true,
  calendar: 'calendar days',
  season: usualHeatingSeason,
}

/** Days from one moment to a later one, as the window counts them. */
export function daysBetween(from: number, to: number, { calendar, season }: CallbackWindow): number {
  return calendar === 'calendar days' ? (to - from) / dayMs : heatingSeasonDays(from, to, season)
}

/** The last moment at which a callback of a job ended `from` can be opened. */
export function windowEnd(from: number, { days, calendar, season }: CallbackWindow): number {
  if (!(days > 0 && days < Infinity)) throw new RangeError('A callback window has a number of days above 0')
  return calendar === 'calendar days' ? from + days * dayMs : afterHeatingSeasonDays(from, days, season)
}

/** Whether a case is one of those the window is about, as a job or as its callback. */
export const countsIn = (one: CallbackCase, { sameCircuit }: CallbackWindow): boolean =>
  !sameCircuit || one.circuit === 'proving circuit'
