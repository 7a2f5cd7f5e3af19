import type { SurvivalStep } from './kaplanMeier'

/**
 * The share without event at a time: that of the last step up to it, 1 before the first.
 * @param steps as kaplanMeier gives them, in order
 * @example survivalAt(kaplanMeier([10, 40], [true, false]), 30) // 0.5
 */
export function survivalAt(steps: readonly SurvivalStep[], time: number): number {
  return steps.findLast((step) => step.time <= time)?.survival ?? 1
}
