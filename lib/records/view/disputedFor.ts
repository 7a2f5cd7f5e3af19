import type { RatingSettings } from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import type { TeamFile } from '../fold/teamFile'
import type { PositionBody } from '../kinds/position'
import { differ } from './disputes'
import { reportsAt } from './ratingReports'
import { ratingAt } from './setpoint'
import { waysAt } from './waysAt'

type Answer = 'closes' | 'opens' | 'unstated'

/**
 * For what a position's ratings are in dispute: furnaces on file, one for each way in which its reports can cover one,
 * and every elevation, revision, serial and part number at which a report begins to hold, together and each alone.
 *
 * @returns for each answer in words, each once; none where nothing is in dispute
 * @example disputedFor(file, position, settings).closes // ['elevation 4,501 ft (1,372 m)']
 */
export function disputedFor(
  file: TeamFile,
  position: Entry<PositionBody>,
  settings: RatingSettings,
): Readonly<Record<Answer, string[]>> {
  const found: Record<Answer, Set<string>> = { closes: new Set(), opens: new Set(), unstated: new Set() }
  if (differ(reportsAt(file, position.id)))
    for (const { furnace, words } of waysAt(file, position)) {
      const rating = ratingAt(file, position, furnace, settings)
      for (const answer of ['closes', 'opens', 'unstated'] as const)
        if (rating[answer].level === 'In dispute') found[answer].add(words)
    }
  return { closes: [...found.closes], opens: [...found.opens], unstated: [...found.unstated] }
}
