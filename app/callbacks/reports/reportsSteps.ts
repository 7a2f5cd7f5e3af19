import { usualCallbackWindow } from '@/lib/core/callbacks/callbackWindow'
import { monthBegins, monthNumber } from '@/lib/core/callbacks/month'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import { gatherFacts } from '@/lib/records/view/callbacks/caseFacts'
import { openQuestions, type Question } from '@/lib/records/view/desk/questions'
import { type GaugeDue, gaugesDue } from '@/lib/records/view/leftUndone/gaugesDue'
import { askedAt } from '@/lib/records/view/leftUndone/oldRequests'
import { type CausesOverturned, causesOverturned } from '@/lib/records/view/reports/causesOverturned'
import { completeness, type MonthMeasured } from '@/lib/records/view/reports/completeness'
import { everythingUntil, isIn, type Period } from '@/lib/records/view/reports/period'
import { type FamilyHealth, ratingHealth } from '@/lib/records/view/reports/ratingHealth'
import { type SafetyEvent, safetyEvents } from '@/lib/records/view/reports/safetyEvents'
import { type Seasons, seasons } from '@/lib/records/view/reports/seasons'
import { type WarrantyReport, warrantyReport } from '@/lib/records/view/reports/warrantyReport'
import { gatherSwaps } from '@/lib/records/view/swaps/switchSwaps'
import { type SwapsShown, unjustifiedSwapsIn } from '@/lib/records/view/swaps/unjustifiedSwaps'
import type { Progress } from '../useWorked'

/** What a person can ask the reports about: the last so many months, the present one included. */
export const spans = ['12', '24', 'all'] as const
export type Span = (typeof spans)[number]

export type Reports = {
  swaps: SwapsShown
  causes: CausesOverturned
  requests: readonly Question[]
  health: readonly FamilyHealth[]
  seasons: Seasons
  measured: readonly MonthMeasured[]
  gauges: readonly GaugeDue[]
  events: readonly SafetyEvent[]
  warranty: WarrantyReport
}

export function periodOf(span: Span, now: string): Period {
  const until = everythingUntil(now)
  return span === 'all'
    ? until
    : { ...until, from: monthBegins(monthNumber(Date.parse(now)) - Number(span) + 1) }
}

/** Works out the reports: case by case and replacement by replacement first, then each of them. */
export function* reportsSteps(file: TeamFile, span: Span, now: string): Generator<Progress, Reports> {
  yield* gatherFacts(file)
  yield* gatherSwaps(file)
  const period = periodOf(span, now)
  const health = ratingHealth(file, now)
  yield { through: 1, of: 1 }
  return {
    swaps: swapsIn(file, period, now),
    causes: causesOverturned(file, usualCallbackWindow, period),
    requests: openQuestions(file).toSorted((a, b) => (askedAt(a) < askedAt(b) ? -1 : 1)),
    health,
    seasons: seasons(file, period),
    measured: completeness(file, period),
    gauges: gaugesDue(file, now),
    events: safetyEvents(file, period),
    warranty: warrantyReport(file, period),
  }
}

/** The replacements of a period, by the day that the repair names. */
function swapsIn(file: TeamFile, period: Period, now: string): SwapsShown {
  const { all, flagged, outsideCases } = unjustifiedSwapsIn(file, usualCallbackWindow, now)
  const isOf = ({ repair }: SwapsShown['all'][number]) => isIn(period, Date.parse(repair.body.on))
  return {
    all: all.filter(isOf),
    flagged: flagged.filter(({ swaps }) => swaps.some(isOf)),
    outsideCases: outsideCases.filter(isOf),
  }
}
