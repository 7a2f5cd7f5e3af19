import type { Remedy } from './remedy'

/** A completed job, and whether it came back: of its facts what the rates are grouped by. */
export type Job = {
  id: string
  endedAt: number
  /** Repaired and proven. */
  isFix: boolean
  cameBack: boolean
  cause: string
  remedy: Remedy
  /** Who ended it. */
  by: string
}

export const cameBack = (job: Job): boolean => job.cameBack

/** The cause of a case of which nobody named one. */
export const notNamed = 'not named'
