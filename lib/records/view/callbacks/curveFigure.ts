import { kaplanMeier, type SurvivalStep } from '@/lib/core/callbacks/kaplanMeier'
import { type LogRank, logRank } from '@/lib/core/callbacks/logRank'
import { type MedianTime, medianTime } from '@/lib/core/callbacks/medianTime'
import { type Episode, lifetimesOf } from '@/lib/core/callbacks/timeToCallback'
import { failure, type Result } from '@/lib/core/result'
import type { CaseFacts } from './caseFacts'
import { ofKey } from './ofKey'

/** A first fix of a furnace, and how long it stayed without a callback, in whole days. */
export type WatchedFix = Pick<Episode, 'days' | 'endedBy'> &
  Pick<CaseFacts, 'id' | 'remedy'> & { cause: string }

/** One step of a curve, with the fixes that were called back on that day. */
type CurveStep = SurvivalStep & { fixIds: readonly string[] }

export type Curve = {
  key: string
  steps: readonly CurveStep[]
  median: Result<MedianTime>
  /** For how many days each was watched, shortest first. */
  watchedDays: readonly number[]
  cameBackIds: readonly string[]
  /** Those without a callback, by what ended the watching. */
  censored: Readonly<Record<Exclude<Episode['endedBy'], 'callback'>, readonly string[]>>
}

/** Curves side by side, and whether they differ by more than chance. */
export type CurveFigure = { curves: readonly Curve[]; test: Result<LogRank> }

/** Fixes below which a group makes no curve of its own (common practice, no published source). */
export const fewestForCurve = 10

/** So many curves can be told apart, the one of all others not counted. */
const mostCurves = 4

/** The group of those that are too few, or too many, for curves of their own. */
export const allOthers = 'all others'

/**
 * The time to a callback by group: those with most fixes have a curve each, the others one together. Groups are chosen
 * by their size alone, never by what became of them, so that the test beside them holds.
 * @param onlyLargest false: every group that has a fix has its own curve, because there are only a few
 */
export function curveFigure(
  fixes: readonly WatchedFix[],
  keyOf: (fix: WatchedFix) => string,
  onlyLargest: boolean,
): CurveFigure {
  const groups = new Map<string, WatchedFix[]>()
  for (const fix of fixes) ofKey(groups, keyOf(fix), () => []).push(fix)
  const bySize = [...groups].sort(([a, one], [b, other]) => other.length - one.length || (a < b ? -1 : 1))
  const own = onlyLargest
    ? bySize.filter(([, group]) => group.length >= fewestForCurve).slice(0, mostCurves)
    : bySize
  const others = bySize.slice(own.length).flatMap(([, group]) => group)
  const shown = others.length === 0 ? own : [...own, [allOthers, others] as const]
  return {
    curves: shown.map(([key, group]) => curveOf(key, group)),
    test:
      shown.length < 2
        ? failure('nothing-to-compare', 'There is only one group, so there is nothing to compare it with.')
        : logRank(shown.map(([, group]) => lifetimesOf(group))),
  }
}

function curveOf(key: string, fixes: readonly WatchedFix[]): Curve {
  const { times, events } = lifetimesOf(fixes)
  const called = new Map<number, string[]>()
  const censored: Record<Exclude<Episode['endedBy'], 'callback'>, string[]> = {
    'left off': [],
    'repair declined': [],
    'furnace replaced': [],
    'end of observation': [],
  }
  const cameBackIds: string[] = []
  for (const { id, days, endedBy } of fixes) {
    if (endedBy === 'callback') {
      cameBackIds.push(id)
      ofKey(called, days, () => []).push(id)
    } else censored[endedBy].push(id)
  }
  const steps = kaplanMeier(times, events)
  return {
    key,
    steps: steps.map((step) => ({ ...step, fixIds: called.get(step.time) ?? [] })),
    median: medianTime(steps),
    watchedDays: [...new Float64Array(times).sort()],
    cameBackIds,
    censored,
  }
}

/** How many of a curve are still watched just before a day. */
export function atRiskOn({ watchedDays }: Pick<Curve, 'watchedDays'>, day: number): number {
  const first = watchedDays.findIndex((days) => days >= day)
  return first < 0 ? 0 : watchedDays.length - first
}
