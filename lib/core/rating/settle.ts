import { whyNotCounted, whyUnsettled } from './explain'
import type { RatingReport, SettledDispute } from './types'

const dayMs = 24 * 60 * 60 * 1000

/** Whether a report can settle a dispute: factory support with a reference, or the maker's current page. */
const canSettle = ({ source, proof }: RatingReport): boolean =>
  (source === 'factory support' && proof === 'call reference') ||
  (source === 'current literature' && (proof === 'document' || proof === 'photo'))

/** New evidence is no older than what it overrules. A day of grace: one may be a day, the other a moment elsewhere. */
const isNewEvidence = (evidence: RatingReport, overruled: RatingReport): boolean =>
  Date.parse(evidence.saidAt) >= Date.parse(overruled.saidAt) - dayMs

/**
 * Takes the reports that settled disputes overrule out of the weighing. A settlement holds only while its evidence
 * stands among the reports, can settle, and is newer than what it overrules; else the dispute is open again, and
 * the reasons say so. Later evidence goes first, so that it can overrule earlier evidence.
 *
 * @param reports what would be weighed
 * @returns the reports that still count, and a sentence for each one overruled or each settlement that fails
 */
export function withoutOverruled(
  reports: readonly RatingReport[],
  settled: readonly SettledDispute[],
): { counting: RatingReport[]; reasons: string[] } {
  const find = (id: string) => reports.find((report) => report.id === id)
  const saidAtOf = ({ evidenceReportId }: SettledDispute) => Date.parse(find(evidenceReportId)?.saidAt ?? '')
  const inOrder = [...settled].sort(
    (one, other) =>
      (saidAtOf(other) || 0) - (saidAtOf(one) || 0) ||
      (one.evidenceReportId < other.evidenceReportId ? -1 : 1),
  )
  const overruled = new Set<string>()
  const reasons: string[] = []
  for (const { evidenceReportId, overruledReportIds } of inOrder) {
    const against = overruledReportIds
      .map(find)
      .filter((report) => report !== undefined)
      .filter(({ id }) => id !== evidenceReportId && !overruled.has(id))
    if (against.length === 0) continue
    const evidence = find(evidenceReportId)
    if (evidence === undefined || overruled.has(evidenceReportId)) {
      reasons.push(whyUnsettled.evidenceGone())
    } else if (!canSettle(evidence)) {
      reasons.push(whyUnsettled.notEnough(evidence))
    } else {
      for (const report of against) {
        if (isNewEvidence(evidence, report)) {
          overruled.add(report.id)
          reasons.push(whyNotCounted.overruled(report, evidence))
        } else reasons.push(whyUnsettled.older(evidence, report))
      }
    }
  }
  return { counting: reports.filter(({ id }) => !overruled.has(id)), reasons }
}
