import type { Action } from '@/lib/core/vocabulary'
import { candidatesOf } from './candidates'
import { coverageOf } from './coverage'
import { sharedWord } from './sameBundle'
import { withoutOverruled } from './settle'
import { type Sorted, sortReports } from './sortReports'
import type { FurnaceForRating, FurnaceRating, RatingReport, RatingSettings, RatingStanding } from './types'
import { withUsualOrder } from './usualOrder'
import { weigh } from './weigh'

export type Standings = Omit<FurnaceRating, 'asks'>

/** Sorts reports for one furnace: what covers it is weighed, what might is a lead, what does not is left out. */
function sortFor(
  reports: readonly RatingReport[],
  furnace: FurnaceForRating,
  settings: RatingSettings,
  asIfCovered: ReadonlySet<string>,
): Sorted {
  const sorted = sortReports(reports)
  const here: Sorted = { evidence: [], leads: [], reasons: [...sorted.reasons] }
  for (const report of sorted.evidence) {
    const coverage = coverageOf(report, furnace, settings)
    if (coverage.covers === 'no') here.reasons.push(coverage.why)
    else if (coverage.covers === 'yes') here.evidence.push(report)
    else if (coverage.covers === 'pending' && asIfCovered.has(report.id)) here.evidence.push(report)
    else here.leads.push({ report, why: coverage.why, elsewhere: true, asks: coverage.asks })
  }
  for (const lead of sorted.leads) {
    const coverage = coverageOf(lead.report, furnace, settings)
    if (coverage.covers === 'no') here.reasons.push(coverage.why)
    else if (coverage.covers === 'yes') here.leads.push(lead)
    else here.leads.push({ ...lead, elsewhere: true, asks: coverage.asks })
  }
  return here
}

const ofAction = (reports: readonly RatingReport[], action: Action): RatingReport[] =>
  reports.filter((report) => report.action === action)

/** The values that reports name, each once, at the finest resolution stated. */
const valuesOf = (reports: readonly RatingReport[], action: Action): number[] =>
  candidatesOf(ofAction(reports, action)).map(({ pascals }) => pascals)

/**
 * The three standings of one position for one furnace, with the values known before weighing, so that nothing is
 * circular.
 *
 * @param sisters reports of the sister position; the furnace's part number is not theirs
 * @param asIfCovered ids of pending reports to be weighed as if they covered the furnace: what if it were so?
 */
export function standingsFor(
  reports: readonly RatingReport[],
  furnace: FurnaceForRating,
  settings: RatingSettings,
  sisters: readonly RatingReport[],
  asIfCovered: ReadonlySet<string> = new Set(),
): Standings {
  const countingOf = (some: readonly RatingReport[], where: FurnaceForRating) =>
    withoutOverruled(sortFor(some, where, settings, asIfCovered).evidence, settings.settledDisputes ?? [])
      .counting
  const own = countingOf(reports, furnace)
  const sister = countingOf(sisters, { ...furnace, partNumber: undefined })
  const standing = (action: Action, others: Action[], sisterActions: Action[]): RatingStanding =>
    weigh(sortFor(ofAction(reports, action), furnace, settings, asIfCovered), action, settings, {
      otherAction: others.flatMap((other) => valuesOf(own, other)),
      sister: sisterActions.flatMap((sisterAction) => valuesOf(sister, sisterAction)),
    })
  return withUsualOrder(
    {
      closes: standing('closes', ['opens'], ['closes', 'not stated']),
      opens: standing('opens', ['closes'], ['opens', 'not stated']),
      // A number without its word may be either point, so naming the other one is no slip.
      unstated: standing('not stated', [], ['closes', 'opens', 'not stated']),
    },
    {
      closes: valuesOf(sister, 'closes'),
      opens: valuesOf(sister, 'opens'),
      stage: sharedWord(sister, 'stage') ?? 'not stated',
    },
  )
}
