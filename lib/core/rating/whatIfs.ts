import { coverageOf } from './coverage'
import { partNumbersOf } from './partNumbers'
import { sortReports } from './sortReports'
import { type Standings, standingsFor } from './standingsFor'
import type { Ask, FurnaceForRating, RatingReport, RatingSettings } from './types'

/** What the standings would be if something unrecorded turned out one way, and what to ask to know it. */
type WhatIf = { asks: readonly Ask[]; standings: Standings }

/**
 * What is not recorded of the furnace, tried out: each bundle of reports that waits for it is weighed as if it
 * covered the furnace, and all of them together; each part number that is named is tried as the furnace's.
 *
 * @returns none when no report waits for anything
 */
export function whatIfs(
  reports: readonly RatingReport[],
  furnace: FurnaceForRating,
  settings: RatingSettings,
  sisters: readonly RatingReport[],
): WhatIf[] {
  const bundles = new Map<string, { ids: string[]; asks: Ask[] }>()
  for (const report of sortReports(reports).evidence) {
    const coverage = coverageOf(report, furnace, settings)
    if (coverage.covers !== 'pending') continue
    const { revisionRange, serialRange, elevationBand } = report
    const key = JSON.stringify([revisionRange, serialRange, elevationBand])
    const ids = bundles.get(key)?.ids ?? []
    bundles.set(key, { ids: [...ids, report.id], asks: coverage.asks })
  }
  const waiting = [...bundles.values()]
  const together = { ids: waiting.flatMap(({ ids }) => ids), asks: waiting.flatMap(({ asks }) => asks) }
  const covered = (waiting.length > 1 ? [...waiting, together] : waiting).map(({ ids, asks }) => ({
    asks,
    standings: standingsFor(reports, furnace, settings, sisters, new Set(ids)),
  }))
  const partNumbers = furnace.partNumber === undefined ? partNumbersOf(reports) : []
  const fitted = (partNumbers.length > 1 ? partNumbers : []).map((partNumber) => ({
    asks: ['part number'] as const,
    standings: standingsFor(reports, { ...furnace, partNumber }, settings, sisters),
  }))
  return [...covered, ...fitted]
}
