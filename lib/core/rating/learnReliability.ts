import { reliabilityKeyOf, startCounts } from './sources'
import type { RatingReport, ReliabilityCounts, ReliabilityKey, SettledDispute } from './types'

/**
 * The counts of every source after disputes were settled: an overruled report counts one against its source, one
 * that named the settled value all along counts one for it. The report that settled is itself no test of its source
 * and is left out. Give the answer as `settings.reliability`.
 *
 * @param settled each settled dispute, with the reports that named the settled value before (`upheld`)
 * @param reports every report of those disputes, by id
 * @throws RangeError if a dispute names a report that is not there
 * @example learnReliability([{ evidenceReportId: 'c', overruledReportIds: ['b'], upheldReportIds: ['a'] }], reports)
 */
export function learnReliability(
  settled: readonly (SettledDispute & { upheldReportIds: readonly string[] })[],
  reports: ReadonlyMap<string, RatingReport>,
  start: Readonly<Record<ReliabilityKey, ReliabilityCounts>> = startCounts,
): Record<ReliabilityKey, ReliabilityCounts> {
  const counts = { ...start }
  const add = (id: string, right: number, wrong: number) => {
    const report = reports.get(id)
    if (report === undefined) throw new RangeError(`learnReliability requires report ${id}`)
    const key = reliabilityKeyOf(report)
    counts[key] = { right: counts[key].right + right, wrong: counts[key].wrong + wrong }
  }
  for (const { evidenceReportId, overruledReportIds, upheldReportIds } of settled) {
    for (const id of overruledReportIds) add(id, 0, 1)
    for (const id of upheldReportIds) if (id !== evidenceReportId) add(id, 1, 0)
  }
  return counts
}
