import type { Action } from '@/lib/core/vocabulary'
import { type Candidate, candidatesOf, supports } from './candidates'
import { countLeads } from './countLeads'
import { countOnce } from './countOnce'
import { whyLevel } from './explain'
import { levelOf } from './levels'
import { byOrigin } from './origins'
import { posteriorOf } from './posterior'
import { slack } from './resolution'
import { rivalsOf, type WeighedRival } from './rivals'
import { sharedWord } from './sameBundle'
import { weighingSettings } from './settings'
import { withoutOverruled } from './settle'
import type { Sorted, SortedLead } from './sortReports'
import { reliabilityOf } from './sources'
import type { KnownValues, Lead, RatingReport, RatingSettings, RatingStanding } from './types'

const countReports = (reports: readonly RatingReport[], settings: RatingSettings) => {
  const candidates = candidatesOf(reports)
  const counted = countOnce(byOrigin(reports), candidates, (report) => reliabilityOf(report, settings))
  return { candidates, counted }
}

/** The likeliest candidate. Of equally likely ones the greatest magnitude: it asks the most of the furnace. */
function likeliest(candidates: readonly Candidate[], probabilities: readonly number[]): number {
  const highest = Math.max(...probabilities)
  const tied = candidates.map((_, at) => at).filter((at) => probabilities[at]! >= highest * (1 - slack))
  return tied.reduce((best, at) => (candidates[at]!.pascals > candidates[best]!.pascals ? at : best))
}

const leadOf = ({ report, why, asks }: SortedLead, shown: Candidate | undefined): Lead => ({
  reportId: report.id,
  source: report.source,
  pascals: report.pascals,
  limit: report.limit,
  saidAt: report.saidAt,
  agrees: shown !== undefined && supports(report, shown),
  asks,
  why,
})

const publicRival = ({ reports: _reports, mereSlip: _mereSlip, ...rival }: WeighedRival) => rival

/**
 * Weighs sorted reports of one action into a standing. Leads are weighed only when there is nothing else, all of them
 * once, and then the standing is Unverified; beside better reports they are listed.
 */
export function weigh(
  sorted: Sorted,
  action: Action,
  settings: RatingSettings,
  known: KnownValues,
): RatingStanding {
  const { plausibleValues } = weighingSettings(settings)
  const settlements = withoutOverruled(sorted.evidence, settings.settledDisputes ?? [])
  const evidence = settlements.counting
  const leadsOnly = evidence.length === 0
  const reports = leadsOnly ? sorted.leads.map(({ report }) => report) : evidence
  const reasons = [...sorted.reasons, ...settlements.reasons]

  const { candidates, counted } = leadsOnly
    ? countLeads(sorted.leads, settings)
    : countReports(reports, settings)
  if (candidates.length === 0) {
    return {
      level: 'Not on file',
      sense: 'not stated',
      between: 'not stated',
      tap: 'not stated',
      stage: 'not stated',
      probability: 0,
      rivals: [],
      leads: sorted.leads.map((lead) => leadOf(lead, undefined)),
      reasons: [whyLevel.nothing(), ...reasons],
      reportIds: [],
      sources: [],
    }
  }

  const probabilities = posteriorOf(candidates, counted, known, plausibleValues)
  const best = likeliest(candidates, probabilities)
  const shown = candidates[best]!
  const probability = probabilities[best]!
  const agreeing = reports.filter((report) => supports(report, shown))
  const rivals = rivalsOf(candidates, probabilities, best, reports, action, known).map((rival) =>
    leadsOnly ? { ...rival, disputes: false } : rival,
  )
  const judged = leadsOnly
    ? {
        level: 'Unverified' as const,
        reasons: [
          whyLevel.leadsOnly(),
          ...(agreeing.length < reports.length ? [whyLevel.leadsDiffer()] : []),
        ],
      }
    : levelOf(shown.pascals, probability, agreeing, rivals, settings)

  return {
    level: judged.level,
    pascals: shown.pascals,
    toleranceAbove: shown.tolerancesAbove[0],
    toleranceBelow: shown.tolerancesBelow[0],
    limit: shown.limit,
    sense: sharedWord(agreeing, 'sense') ?? 'not stated',
    kind: sharedWord(agreeing, 'kind'),
    between: sharedWord(agreeing, 'between') ?? 'not stated',
    tap: sharedWord(agreeing, 'tap') ?? 'not stated',
    stage: sharedWord(agreeing, 'stage') ?? 'not stated',
    probability,
    rivals: rivals.map(publicRival),
    leads: sorted.leads.map((lead) => leadOf(lead, shown)),
    reasons: [
      whyLevel.agree(agreeing),
      ...judged.reasons,
      ...(shown.tolerancesAbove.length > 1 || shown.tolerancesBelow.length > 1
        ? [whyLevel.tolerancesDiffer()]
        : []),
      ...reasons,
    ],
    reportIds: agreeing.map(({ id }) => id),
    sources: agreeing.map(({ id, source, saidAt, proof }) => ({ reportId: id, source, saidAt, proof })),
    likelySlip: rivals.find(({ slip }) => slip !== undefined)?.slip,
  }
}
