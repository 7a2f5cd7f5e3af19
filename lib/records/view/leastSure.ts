import type { RatingSettings, RatingStanding } from '@/lib/core/rating'
import type { Level } from '@/lib/core/vocabulary'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { FurnaceBody } from '../kinds/furnace'
import type { PositionBody } from '../kinds/position'
import { oneOfEachWay } from './disputes'
import { furnaceForRating } from './furnaceForRating'
import { reportsAt } from './ratingReports'
import { ratingAt } from './setpoint'

/** Levels, the least reliable first. */
export const leastReliableFirst: readonly Level[] = [
  'In dispute',
  'Not on file',
  'Unverified',
  'Supported',
  'Verified',
]

/**
 * How the number that proves the draft stands at a position: where the switch closes or, for one that opens on rise,
 * where it opens. A rating can stand differently for furnaces of another elevation or revision, so every way in which
 * the furnaces on file can be covered is looked at, and the least reliable is what counts.
 */
export function leastSure(
  file: TeamFile,
  position: Entry<PositionBody>,
  settings: RatingSettings,
): RatingStanding {
  const action = position.body.kind === 'opens on rise' ? 'opens' : 'closes'
  const ofRange = furnacesByRange(file).get(file.keptId(position.body.rangeId)) ?? []
  const ways = oneOfEachWay(ofRange, reportsAt(file, position.id)).map(furnaceForRating)
  return (ways.length === 0 ? [{}] : ways)
    .map((furnace) => ratingAt(file, position, furnace, settings)[action])
    .toSorted((a, b) => rankOf(a.level) - rankOf(b.level) || a.probability - b.probability)[0]!
}

export const rankOf = (level: Level): number => leastReliableFirst.indexOf(level)

const indexes = new WeakMap<TeamFile, ReadonlyMap<string, Entry<FurnaceBody>[]>>()

function furnacesByRange(file: TeamFile): ReadonlyMap<string, Entry<FurnaceBody>[]> {
  const known = indexes.get(file)
  if (known !== undefined) return known
  const byRange = new Map<string, Entry<FurnaceBody>[]>()
  for (const furnace of counting(file.furnaces)) {
    if (furnace.body.rangeId === undefined) continue
    const rangeId = file.keptId(furnace.body.rangeId)
    const ofRange = byRange.get(rangeId)
    if (ofRange === undefined) byRange.set(rangeId, [furnace])
    else ofRange.push(furnace)
  }
  indexes.set(file, byRange)
  return byRange
}
