import { fromPascals, ucumCode } from '@/lib/core/pressure'
import { type Ask, dependsOnFurnace, type FurnaceRating, type RatingStanding } from '@/lib/core/rating'
import type { Action, Level, LimitKind, Sense, SourceKind } from '@/lib/core/vocabulary'
import type { Entry } from '../fold/entry'
import { counting, type TeamFile } from '../fold/teamFile'
import type { ReportBody } from '../kinds/report'
import { coverWords } from './coverWords'
import { disputedFor } from './disputedFor'
import { ratingAt, ratingSettings } from './setpoint'
import { sourceWords } from './sourceWords'
import { saidAtOf } from './standingReports'

/** A source of a value, what it holds for, and its date: without them no number goes out. */
type DatedSource = {
  reportId: string
  source: SourceKind
  /** What it rests on, as on a setpoint card. */
  words: string
  saidAt: string
  holdsFor: string
}

type About = {
  positionId: string
  maker: string
  range: string
  models: string[]
  position: string
  action: Action
  /** For what it is in dispute, in words: furnaces on file, elevations, serials, parts. Empty where for none. */
  inDisputeFor: string[]
}

/** A rating with its number: never without its level, its sources and their dates. */
export type ShownRating = About & {
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

/** One rating as it may leave the program. Where the number depends on the furnace, what it needs is in its place. */
export type RatingOnFile = ShownRating | (About & { needs: Ask[] })

/**
 * Every rating of a team file with its standing, range by range. The standing is that of a furnace of which nothing
 * more is known: what holds for certain revisions, serials or elevations only is a lead there, or what the rating needs.
 * @param now the time, ISO 8601
 */
export function ratingsOnFile(file: TeamFile, now: string): RatingOnFile[] {
  const settings = ratingSettings(file, now)
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
    const rating = ratingAt(file, position, {}, settings)
    const disputed = disputedFor(file, position, settings)
    return [
      ...outgoing({ ...about, action: 'closes', inDisputeFor: disputed.closes }, rating, 'closes', file),
      ...outgoing({ ...about, action: 'opens', inDisputeFor: disputed.opens }, rating, 'opens', file),
      ...outgoing(
        { ...about, action: 'not stated', inDisputeFor: disputed.unstated },
        rating,
        'unstated',
        file,
      ),
    ]
  })
}

function outgoing(
  about: About,
  rating: FurnaceRating,
  answer: 'closes' | 'opens' | 'unstated',
  file: TeamFile,
): RatingOnFile[] {
  if (dependsOnFurnace(rating, answer)) return [{ ...about, needs: rating.asks }]
  const standing = rating[answer]
  return standing.level === 'Not on file' ? [] : [shown(about, standing, file)]
}

function shown(
  about: About,
  standing: Exclude<RatingStanding, { level: 'Not on file' }>,
  file: TeamFile,
): ShownRating {
  const { level, pascals, limit, toleranceAbove, toleranceBelow, sense, between, stage } = standing
  const named = <Named extends { reportId: string }>(some: readonly Named[]) =>
    some.flatMap((one) => {
      const report = file.reports.get(one.reportId)
      return report === undefined ? [] : [{ one, source: datedSource(report, file) }]
    })
  return {
    ...about,
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
    sources: named(standing.sources).map(({ one: { proof }, source }) => ({
      ...source,
      ...(proof === undefined ? {} : { proof }),
    })),
    leads: named(standing.leads).map(({ one: { agrees }, source }) => ({ ...source, agrees })),
    rivals: standing.rivals.map((rival) => ({
      pascals: rival.pascals,
      sources: named(rival.reportIds.map((reportId) => ({ reportId }))).map(({ source }) => source),
      ...(rival.slip === undefined ? {} : { slip: rival.slip }),
    })),
  }
}

const datedSource = (report: Entry<ReportBody>, file: TeamFile): DatedSource => ({
  reportId: report.id,
  source: report.body.source,
  words: sourceWords(report, file),
  saidAt: saidAtOf(report),
  holdsFor: coverWords(report.body),
})
