import { fromPascals, ucumCode } from '@/lib/core/pressure'
import type { RatingStanding } from '@/lib/core/rating'
import type { Action, Level, LimitKind, Sense } from '@/lib/core/vocabulary'
import { counting, type TeamFile } from '../fold/teamFile'
import { openRatings } from './openRatings'
import { type DatedSource, datedSource, reportsNamed } from './standingReports'

/** One rating as it may leave the program: never a number without its level, its sources and their dates. */
export type RatingOnFile = {
  positionId: string
  maker: string
  range: string
  models: string[]
  position: string
  action: Action
  level: Exclude<Level, 'Not on file'>
  pascals: number
  /** The UCUM code of what `pascals` and the tolerances are given in. */
  unit: string
  inchesOfWater: number
  inchesOfWaterUnit: string
  limit: LimitKind
  toleranceAbovePascals?: number
  toleranceBelowPascals?: number
  sense: Sense
  between: string
  stage: string
  probability: number
  sources: (DatedSource & { proof?: string })[]
  /** Reports that are listed beside it and lend it no weight. */
  leads: (DatedSource & { agrees: boolean })[]
  /** Other values that are reported, each with who says so and since when. */
  rivals: { pascals: number; sources: DatedSource[]; slip?: string }[]
}

/**
 * Every rating of a team file with its standing, range by range. The standing is that of a furnace of which nothing
 * more is known: what holds for certain revisions, serials or elevations only is a lead there.
 * @param now the time, ISO 8601
 */
export function ratingsOnFile(file: TeamFile, now: string): RatingOnFile[] {
  const ratings = openRatings(file, now)
  return counting(file.positions).flatMap((position) => {
    const range = file.ranges.get(file.keptId(position.body.rangeId))
    const maker = range && file.makers.get(file.keptId(range.body.makerId))
    const about = {
      positionId: position.id,
      maker: maker?.body.name ?? '',
      range: range?.body.name ?? '',
      models: range?.body.modelPatterns ?? [],
      position: position.body.name,
    }
    const { closes, opens, unstated } = ratings.at(position)
    return [
      ...stated(about, 'closes', closes, file),
      ...stated(about, 'opens', opens, file),
      ...stated(about, 'not stated', unstated, file),
    ]
  })
}

type About = Pick<RatingOnFile, 'positionId' | 'maker' | 'range' | 'models' | 'position'>

function stated(about: About, action: Action, standing: RatingStanding, file: TeamFile): RatingOnFile[] {
  if (standing.level === 'Not on file') return []
  const { level, pascals, limit, toleranceAbove, toleranceBelow, sense, between, stage } = standing
  return [
    {
      ...about,
      action,
      level,
      pascals,
      unit: ucumCode.Pa,
      inchesOfWater: fromPascals(pascals, 'inH2O'),
      inchesOfWaterUnit: ucumCode.inH2O,
      limit,
      ...(toleranceAbove === undefined ? {} : { toleranceAbovePascals: toleranceAbove }),
      ...(toleranceBelow === undefined ? {} : { toleranceBelowPascals: toleranceBelow }),
      sense,
      between,
      stage,
      probability: standing.probability,
      sources: standing.sources.map(({ reportId, source, saidAt, proof }) => ({
        reportId,
        source,
        saidAt,
        ...(proof === undefined ? {} : { proof }),
      })),
      leads: standing.leads.map(({ reportId, source, saidAt, agrees }) => ({
        reportId,
        source,
        saidAt,
        agrees,
      })),
      rivals: standing.rivals.map((rival) => ({
        pascals: rival.pascals,
        sources: reportsNamed(rival.reportIds, file.reports).map(datedSource),
        ...(rival.slip === undefined ? {} : { slip: rival.slip }),
      })),
    },
  ]
}
