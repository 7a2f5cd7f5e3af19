import { buildFindIndex, find, plainSpelling } from '@/lib/core/find'
import type { FurnaceForRating } from '@/lib/core/rating'
import type { CodeRange, ElevationBand, Stage } from '@/lib/core/vocabulary'
import type { Entry } from '../../fold/entry'
import { counting, type TeamFile } from '../../fold/teamFile'
import type { PositionBody } from '../../kinds/position'
import type { ReportBody } from '../../kinds/report'
import { reportsAt } from '../ratingReports'

/** In what a rating on file is not the one that is asked for. */
export type Difference =
  | { what: 'stage'; there: Stage }
  /** The switch has another name in the same stage. */
  | { what: 'switch'; there: string }
  /** Another range: another size, or another family. */
  | { what: 'size'; there: string }
  | { what: 'revision'; there: CodeRange }
  | { what: 'elevation'; there: ElevationBand }

/** A switch with a rating on file that is near what is asked for. Its number is seen once it is opened. */
export type NearMatch = { position: Entry<PositionBody>; differs: Difference[] }

/** What is asked for, as far as somebody has said. */
export type Wanted = {
  position: Entry<PositionBody> | undefined
  model: string
  positionName: string
  furnace: FurnaceForRating
}

/** How many are worth reading with one hand. */
const listed = 6
/** Below this score, the model is the number itself or fits the pattern; above it, it is only near. */
const fitsBelow = 0.1
/** Above this score a model is no longer near: nothing is listed for it. */
const nearBelow = 0.5

const stageNamed: readonly (readonly [RegExp, Stage])[] = [
  [/\b(low|1st|first)\b/i, 'low fire'],
  [/\b(middle|mid|medium)\b/i, 'middle fire'],
  [/\b(high|2nd|second)\b/i, 'high fire'],
  [/\bsingle\b/i, 'single stage'],
]

/**
 * The switches with a report on file that are nearest to what is asked for, those with the fewest differences first.
 * None of their numbers is the answer: each differs in what is listed. One that differs in nothing is the very switch.
 */
export function nearMatches(file: TeamFile, wanted: Wanted): NearMatch[] {
  const ranges = wanted.position === undefined ? rangesNear(file, wanted.model) : undefined
  const wantedRange = wanted.position && file.ranges.get(file.keptId(wanted.position.body.rangeId))
  const stage =
    wanted.position?.body.stage ?? stageNamed.find(([named]) => named.test(wanted.positionName))?.[1]
  return counting(file.positions)
    .flatMap((position): (NearMatch & { far: number })[] => {
      const range = file.ranges.get(file.keptId(position.body.rangeId))
      const reports = reportsAt(file, position.id)
      if (range === undefined || range.withdrawn !== undefined || reports.length === 0) return []
      const near = ranges?.get(range.id)
      const sameRange = wantedRange === undefined ? (near ?? 1) < fitsBelow : range.id === wantedRange.id
      const sameMaker =
        wantedRange !== undefined && file.keptId(range.body.makerId) === file.keptId(wantedRange.body.makerId)
      if (!sameRange && !sameMaker && (near ?? 1) >= nearBelow) return []
      const itself = wanted.position?.id === position.id
      const differs: Difference[] = [
        ...(sameRange ? [] : [{ what: 'size' as const, there: range.body.name }]),
        ...(stage === undefined || stage === position.body.stage
          ? []
          : [{ what: 'stage' as const, there: position.body.stage }]),
        ...(isSameSwitch(wanted, position, stage)
          ? []
          : [{ what: 'switch' as const, there: position.body.name }]),
        ...coverDifferences(reports, wanted.furnace),
      ]
      // The asked switch is only near where its own reports are for other furnaces.
      if (itself && differs.length === 0) return []
      return [{ position, differs, far: differs.length + (near ?? 0) }]
    })
    .toSorted((one, other) => one.far - other.far || one.position.id.localeCompare(other.position.id))
    .slice(0, listed)
    .map(({ position, differs }) => ({ position, differs }))
}

/** A switch of the same stage can still be another one, for instance a blocked-drain switch. */
function isSameSwitch(wanted: Wanted, position: Entry<PositionBody>, stage: Stage | undefined): boolean {
  const name = wanted.position?.body.name ?? wanted.positionName
  if (wanted.position?.id === position.id || name.trim() === '') return true
  if (stage !== undefined && stage !== position.body.stage) return true
  return plainSpelling(name) === plainSpelling(position.body.name)
}

/** What the reports say they are for, where none of them is for this furnace. */
function coverDifferences(reports: readonly Entry<ReportBody>[], furnace: FurnaceForRating): Difference[] {
  const { elevationMetres, revision } = furnace
  const bands = reports.flatMap(({ body }) => body.elevationBand ?? [])
  const revisions = reports.flatMap(({ body }) => body.revisionRange ?? [])
  const outside = ({ fromMetres, toMetres }: ElevationBand): boolean =>
    elevationMetres !== undefined &&
    ((fromMetres !== undefined && elevationMetres < fromMetres) ||
      (toMetres !== undefined && elevationMetres > toMetres))
  const others = ({ from, to }: CodeRange): boolean =>
    revision !== undefined &&
    from !== undefined &&
    from === to &&
    plainSpelling(from) !== plainSpelling(revision)
  return [
    ...(bands.length > 0 && bands.length === reports.length && bands.every(outside)
      ? [{ what: 'elevation' as const, there: bands[0]! }]
      : []),
    ...(revisions.length > 0 && revisions.length === reports.length && revisions.every(others)
      ? [{ what: 'revision' as const, there: revisions[0]! }]
      : []),
  ]
}

/** The ranges whose model numbers are the typed one or near it, with how far off they are. */
function rangesNear(file: TeamFile, model: string): Map<string, number> {
  if (plainSpelling(model) === '') return new Map()
  const index = buildFindIndex(
    counting(file.ranges).map(({ id, body }) => ({
      key: id,
      texts: body.modelPatterns.map((pattern) => pattern.replaceAll('?', '*')),
    })),
  )
  return new Map(find(index, model, listed).map(({ key, score }) => [key, score]))
}
