import type { Role } from './roles'

/**
 * How often setpoints are looked up. It is nothing that a person says, so it is no record and not in the log: a device
 * counts a position once a day under a random mark, and the server keeps marks without who or where.
 */

/** How many days back look-ups are counted; older ones are let go of. */
export const lookUpDays = 90

/** Who may see how often the team looks things up: those who choose the calls. */
export const maySeeLookUps: Role[] = ['dispatcher', 'manager']

/** The most look-ups that are sent at a time. */
export const mostLookUps = 500

/** A position whose setpoint was opened on a day. @param day YYYY-MM-DD  @param mark UUID, version 4 */
export type LookUpMark = { mark: string; positionId: string; day: string }

/** What the server answers to whoever may see it: positions that were looked up in the last `lookUpDays` days. */
export type LookUpTotal = { positionId: string; times: number }

/** A day so many days before another, both YYYY-MM-DD. */
export const daysBefore = (day: string, days: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - days * 86_400_000).toISOString().slice(0, 10)
