import {
  coverageOf,
  type FurnaceForRating,
  type FurnaceRating,
  learnReliability,
  type RatingReport,
  type RatingSettings,
  ratingFor,
} from '@/lib/core/rating'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { EquipmentRangeBody } from '../kinds/equipmentRange'
import type { FoundFittedBody } from '../kinds/foundFitted'
import type { MakerBody } from '../kinds/maker'
import type { PositionBody } from '../kinds/position'
import type { RatingRequestBody } from '../kinds/ratingRequest'
import type { ReportBody } from '../kinds/report'
import type { SettlementBody } from '../kinds/settlement'
import { openQuestions } from './desk/questions'
import { partsByPosition } from './findEntries'
import { groupedOnce } from './grouped'
import { isSuperseded, type PartLink, partChain } from './partChain'
import { ratingReportOf, reportsAt } from './ratingReports'
import { settledDisputes } from './settledDisputes'

/** Everything a setpoint card shows of one switch position, for one furnace as far as it is known. */
export type Setpoint = {
  position: Entry<PositionBody>
  range: Entry<EquipmentRangeBody>
  maker: Entry<MakerBody> | undefined
  rating: FurnaceRating
  /** Each line of factory part numbers for this position, oldest first. */
  partLines: PartLink[][]
  /** Every report that counts, by id. */
  reports: ReadonlyMap<string, Entry<ReportBody>>
  /** Those of them that are for another furnace than this one, by its height, revision, serial or part. */
  elsewhere: Entry<ReportBody>[]
  withdrawn: Entry<ReportBody>[]
  settlements: Entry<SettlementBody>[]
  openRequests: Entry<RatingRequestBody>[]
  /** Switches that were found here although they should not be. */
  foundFitted: Entry<FoundFittedBody>[]
  /** The other positions of the same range. */
  others: Entry<PositionBody>[]
}

/**
 * Gathers what is on file about a position; undefined when the position is not on file.
 * @param settings from `ratingSettings`, made once for a whole list
 */
export function setpointOf(
  file: TeamFile,
  positionId: string,
  furnace: FurnaceForRating,
  settings: RatingSettings,
): Setpoint | undefined {
  const position = file.positions.get(file.keptId(positionId))
  const range = position && file.ranges.get(file.keptId(position.body.rangeId))
  if (position === undefined || range === undefined) return undefined
  const at = (id: string | undefined) => id !== undefined && file.keptId(id) === position.id
  const reports = reportsAt(file, position.id)
  const others = otherPositions(file, position)
  return {
    position,
    range,
    maker: file.makers.get(file.keptId(range.body.makerId)),
    rating: ratingAt(file, position, furnace, settings),
    partLines: partLinesAt(file, position.id),
    reports: new Map(reports.map((report) => [report.id, report])),
    elsewhere: reports.filter((report) => {
      const weighed = ratingReportOf(report, file)
      return weighed.partClass !== 'general-purpose' && coverageOf(weighed, furnace, settings).covers === 'no'
    }),
    withdrawn: [...file.reports.values()].filter(
      (report) => report.withdrawn !== undefined && at(report.body.positionId),
    ),
    settlements: counting(file.settlements).filter((settlement) => at(settlement.body.positionId)),
    openRequests: openRequests(file).filter((request) => at(request.body.positionId)),
    foundFitted: counting(file.foundFitted).filter(
      ({ body }) =>
        at(body.positionId) &&
        (furnace.id === undefined ||
          body.furnaceId === undefined ||
          file.keptId(body.furnaceId) === furnace.id),
    ),
    others,
  }
}

/**
 * The rating at a position, for one furnace as far as it is known.
 * @param further reports that are not in the log yet, to see what they would change
 */
export function ratingAt(
  file: TeamFile,
  position: Entry<PositionBody>,
  furnace: FurnaceForRating,
  settings: RatingSettings,
  further: readonly Entry<ReportBody>[] = [],
): FurnaceRating {
  return ratingFor(
    [...reportsAt(file, position.id), ...further].map((report) => ratingReportOf(report, file)),
    furnace,
    settings,
    sisterReports(file, position),
  )
}

/** The other positions of the same range. */
const otherPositions = (file: TeamFile, position: Entry<PositionBody>): Entry<PositionBody>[] =>
  (byRange(file, file.positions).get(file.keptId(position.body.rangeId)) ?? []).filter(
    ({ id }) => id !== position.id,
  )

const byRange = groupedOnce<PositionBody>(({ rangeId }) => [rangeId])

/** Rating requests that no report has answered yet; an answer to one answers those that ask the same. */
export const openRequests = (file: TeamFile): Entry<RatingRequestBody>[] =>
  openQuestions(file).flatMap(({ requests }) => requests)

/** The weighing's settings, with what the team's log adds to them: settled disputes and what they taught. */
export function ratingSettings(file: TeamFile, now: string): RatingSettings {
  const settled = settledDisputes(file)
  const reports = new Map(counting(file.reports).map((report) => [report.id, ratingReportOf(report, file)]))
  const superseded = counting(file.parts)
    .filter((part) => isSuperseded(file, part.id))
    .map((part) => part.body.partNumber)
  return {
    now,
    settledDisputes: settled,
    reliability: learnReliability(settled, reports),
    supersededPartNumbers: superseded,
  }
}

/** The switch that this one is most easily taken for: the sister that either of the two names. */
export function sisterOf(file: TeamFile, position: Entry<PositionBody>): Entry<PositionBody> | undefined {
  const names = (one: Entry<PositionBody>, other: Entry<PositionBody>) =>
    one.body.sisterId !== undefined && file.keptId(one.body.sisterId) === other.id
  return otherPositions(file, position).find((other) => names(position, other) || names(other, position))
}

function sisterReports(file: TeamFile, position: Entry<PositionBody>): RatingReport[] {
  const sister = sisterOf(file, position)
  return sister === undefined ? [] : reportsAt(file, sister.id).map((report) => ratingReportOf(report, file))
}

function partLinesAt(file: TeamFile, positionId: string): PartLink[][] {
  const lines = (partsByPosition(file).get(positionId) ?? [])
    .filter((part) => part.body.class === 'factory')
    .map((part) => partChain(file, part.id))
  const firstOf = new Map(lines.map((line) => [line.map(({ part }) => part.id).join(' '), line]))
  return [...firstOf.values()]
}
