import type { RatingStanding } from '@/lib/core/rating'
import { actions } from '@/lib/core/vocabulary'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { FurnaceBody } from '../kinds/furnace'
import type { PositionBody } from '../kinds/position'
import type { ReportBody } from '../kinds/report'
import { furnaceForRating } from './furnaceForRating'
import { reportsAt } from './ratingReports'
import { ratingAt, ratingSettings } from './setpoint'

type Disputed = RatingStanding & { level: 'In dispute' }

/** A number that is in dispute: of which position, for which furnace where only there, and since when. */
export type Dispute = {
  position: Entry<PositionBody>
  action: 'closes' | 'opens'
  standing: Disputed
  /** The furnace whose reports disagree; undefined where the dispute is about every furnace. */
  furnace: Entry<FurnaceBody> | undefined
  /** When the first report that disagreed was recorded, ISO 8601. */
  since: string
}

/**
 * Every make and break point in dispute, the longest in dispute first. A dispute can be about the furnaces of one
 * elevation or about a single one, so a position is also looked at for each furnace of its range; what is in dispute
 * for any furnace is listed once.
 */
export function disputesIn(file: TeamFile, now: string): Dispute[] {
  const settings = ratingSettings(file, now)
  const furnaces = counting(file.furnaces)
  return counting(file.positions)
    .flatMap((position) => {
      const reports = reportsAt(file, position.id)
      if (reports.length < 2 || !differ(reports)) return []
      const ofRange = furnaces.filter(
        ({ body }) =>
          body.rangeId !== undefined && file.keptId(body.rangeId) === file.keptId(position.body.rangeId),
      )
      const found = new Map<string, Dispute>()
      for (const furnace of [undefined, ...oneOfEachWay(ofRange, reports)]) {
        const rating = ratingAt(
          file,
          position,
          furnace === undefined ? {} : furnaceForRating(furnace),
          settings,
        )
        for (const action of ['closes', 'opens'] as const) {
          const standing = rating[action]
          if (!isDisputed(standing)) continue
          const sides = sidesOf(standing)
          const values = [standing, ...standing.rivals.filter((rival) => rival.disputes)]
          const key = [action, ...values.map(({ pascals }) => pascals).toSorted()].join(' ')
          const since = beginning(sides, new Map(reports.map(({ id, at }) => [id, at])))
          if (!found.has(key)) found.set(key, { position, action, standing, furnace, since })
        }
      }
      return [...found.values()].filter(
        (dispute) =>
          dispute.furnace === undefined ||
          ![...found.values()].some(
            (other) => other.furnace === undefined && other.action === dispute.action,
          ),
      )
    })
    .toSorted((one, other) => (one.since < other.since ? -1 : one.since > other.since ? 1 : 0))
}

const isDisputed = (standing: RatingStanding): standing is Disputed => standing.level === 'In dispute'

/** Everything of a report that another can contradict. Reports that differ in none of it cannot be in dispute. */
const contradictable = [
  'pascals',
  'limit',
  'toleranceAbove',
  'toleranceBelow',
  'kind',
  'between',
  'tap',
  'stage',
  'sense',
] as const
export const differ = (reports: readonly Entry<ReportBody>[]): boolean =>
  actions.some((action) => {
    const said = reports.filter(({ body }) => body.action === action)
    return said.some(({ body }) => contradictable.some((field) => body[field] !== said[0]?.body[field]))
  })

/** One furnace for each way in which the reports can cover one: by what any of them says of the furnaces it is for. */
export function oneOfEachWay(
  furnaces: readonly Entry<FurnaceBody>[],
  reports: readonly Entry<ReportBody>[],
): Entry<FurnaceBody>[] {
  const has = (ends: object | undefined) => ends !== undefined && Object.keys(ends).length > 0
  const byElevation = reports.some(({ body }) => has(body.elevationBand))
  const byRevision = reports.some(({ body }) => has(body.revisionRange))
  const bySerial = reports.some(({ body }) => has(body.serialRange))
  const madeOn = new Set(reports.map(({ body }) => body.furnaceId))
  const firstOf = new Map<string, Entry<FurnaceBody>>()
  for (const furnace of furnaces) {
    const { elevationMetres, revision, serial } = furnace.body
    const way = JSON.stringify([
      byElevation ? elevationMetres : undefined,
      byRevision ? revision : undefined,
      bySerial ? serial : undefined,
      madeOn.has(furnace.id) ? furnace.id : undefined,
    ])
    if (!firstOf.has(way)) firstOf.set(way, furnace)
  }
  return [...firstOf.values()]
}

/** The reports of the value shown, then those of each value that stands against it. */
const sidesOf = ({ reportIds, rivals }: Disputed): string[][] => [
  reportIds,
  ...rivals.filter((rival) => rival.disputes).map((rival) => rival.reportIds),
]

/** When there first were two sides; where reports of one value contradict each other, when the last of them came. */
function beginning([shown = [], ...against]: string[][], saidAt: ReadonlyMap<string, string>): string {
  const times = (ids: readonly string[]) => ids.flatMap((id) => saidAt.get(id) ?? []).toSorted()
  const first = (ids: readonly string[]) => times(ids)[0] ?? ''
  if (against.length === 0) return times(shown).at(-1) ?? ''
  const opened = against.flatMap((side) => [first(shown), first(side)].toSorted()[1] ?? [])
  return opened.toSorted()[0] ?? ''
}
