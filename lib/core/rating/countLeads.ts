import { type Candidate, candidatesOf, supports } from './candidates'
import type { Counted } from './countOnce'
import { slack } from './resolution'
import type { SortedLead } from './sortReports'
import { reliabilityOf, weakestReliability } from './sources'
import type { RatingSettings } from './types'

/** A report made for elsewhere is trusted like a label of unknown origin. */
const reliabilityAsLead = ({ report, elsewhere }: SortedLead, settings: RatingSettings): number => {
  const own = reliabilityOf(report, settings)
  return elsewhere
    ? Math.min(own, reliabilityOf({ ...report, source: 'unknown switch label' }, settings))
    : own
}

/**
 * Counts leads that have nothing better beside them: all of them once, as one report, at the highest reliability
 * among those that support a value. Where the most reliable ones name different values, that report is of them all;
 * values that only weaker leads name are not weighed.
 *
 * The reliability is held at or below that of the weakest report that is no lead (0.75 at the start), else a better
 * report that agrees with a bench check (0.85) would lower the probability.
 *
 * @returns the values that are weighed, and the one report; none when the leads are bench checks, which propose none
 * @example countLeads([listing060, benchCheck061], settings) // 0.60, at 0.75
 */
export function countLeads(
  leads: readonly SortedLead[],
  settings: RatingSettings,
): { candidates: Candidate[]; counted: Counted[] } {
  const all = candidatesOf(leads.map(({ report }) => report))
  const usable = leads.filter(({ report }) => all.some((candidate) => supports(report, candidate)))
  const highest = Math.max(...usable.map((lead) => reliabilityAsLead(lead, settings)))
  const top = usable.filter((lead) => reliabilityAsLead(lead, settings) >= highest - slack)
  const spokesman = top[0]
  if (spokesman === undefined) return { candidates: [], counted: [] }

  const candidates = all.filter((candidate) => top.some(({ report }) => supports(report, candidate)))
  const reliability = Math.min(highest, weakestReliability(settings))
  const supported = candidates.map((_, at) => at)
  return { candidates, counted: [{ report: spokesman.report, reliability, supported }] }
}
