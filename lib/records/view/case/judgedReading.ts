import {
  type Comparison,
  compareReading,
  type Limit,
  type RatingForComparison,
  type Reading,
  type ReadingSettings,
} from '@/lib/core/reading'
import type { Result } from '@/lib/core/result'
import type { Action } from '@/lib/core/vocabulary'
import type { Entry } from '@/lib/records/fold/entry'
import type { TeamFile } from '@/lib/records/fold/teamFile'
import type { PositionBody } from '@/lib/records/kinds/position'
import type { ReadingBody } from '@/lib/records/kinds/reading'
import { expectedAt } from './expectedAt'
import { gaugeThen } from './gaugeThen'
import { instrumentOf } from './instrument'

/** A reading of a case with what it amounted to; a sentence where it could be held against nothing. */
export type JudgedReading = {
  entry: Entry<ReadingBody>
  comparison: Result<Comparison>
  /** The switch position that it was taken at, joined positions followed. */
  positionId?: string
  /** The mean of this furnace's baselines in the same phase, stage and points, in pascals, where there are any. */
  expectedPascals?: number
}

/**
 * Holds a recorded reading against a rating, with the gauge that it was taken with and this furnace's baselines.
 * @param rating the standing of today, or `ratingThen` for what stood when it was taken
 * @param until baselines on record by this moment say what to expect (ISO 8601, UTC); left out: all of them
 */
export function judgeReading(
  file: TeamFile,
  entry: Entry<ReadingBody>,
  rating: RatingForComparison | undefined,
  settings: Omit<ReadingSettings, 'now'>,
  until?: string,
): JudgedReading {
  const { furnaceId, positionId } = entry.body
  const expected = expectedAt(file, furnaceId, entry.body, until)
  return {
    entry,
    comparison: compare(file, entry, rating, expected, settings),
    ...(positionId === undefined ? {} : { positionId: file.keptId(positionId) }),
    ...(expected === undefined ? {} : { expectedPascals: meanOf(expected.pascals) }),
  }
}

const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length

function compare(
  file: TeamFile,
  { body, at }: Entry<ReadingBody>,
  rating: RatingForComparison | undefined,
  expected: ReturnType<typeof expectedAt>,
  settings: Omit<ReadingSettings, 'now'>,
): Result<Comparison> {
  const gauge = gaugeThen(file, body.gaugeId, at)
  if (gauge === undefined)
    return cannot('The gauge is not on record, so its accuracy is not known. It is held against nothing.')
  const reading = readingOf(body)
  // At rest nothing is held against a limit, and what the contact shows matters with no rating on file.
  const against = rating ?? (body.phase === 'rest' ? pointsOf(reading) : undefined)
  if (against === undefined)
    return cannot('No rating was on file for this switch. It is held against nothing.')
  return compareReading({
    reading,
    instrument: instrumentOf(gauge.body, body.zeroed),
    rating: against,
    ...(expected === undefined ? {} : { expected }),
    // Whether the calibration had run out is a question of the day of the reading.
    settings: { ...settings, now: at },
  })
}

const pointsOf = ({ kind, between, tap, stage, sense }: Reading): RatingForComparison => ({
  kind,
  between,
  tap,
  stage,
  sense,
})

const cannot = (message: string): Result<Comparison> => ({
  ok: false,
  problem: { code: 'cannot-be-compared', message },
})

/** The core's reading in a recorded one. */
export const readingOf = (body: ReadingBody): Reading => ({
  samples: body.samples,
  sense: body.sense,
  kind: body.kind,
  between: body.between,
  tap: body.tap,
  stage: body.stage,
  door: body.door,
  phase: body.phase,
  contacts: body.contacts,
  ...(body.lowest === undefined ? {} : { lowest: body.lowest }),
  ...(body.highest === undefined ? {} : { highest: body.highest }),
  ...(body.secondsWatched === undefined ? {} : { secondsWatched: body.secondsWatched }),
  ...(body.averaging === undefined ? {} : { averaging: body.averaging }),
  ...(body.separateStarts === undefined ? {} : { separateStarts: body.separateStarts }),
})

/**
 * The rating as it stood when the reading was taken, by what was written down with it; undefined where nothing was.
 * @param position what its sources left open about the points is taken from the record of the switch position
 */
export function ratingThen(
  { against, kind }: ReadingBody,
  position?: PositionBody,
): RatingForComparison | undefined {
  const [best] = against ?? []
  if (against === undefined || best === undefined) return undefined
  const limit = (action: Action): Limit | undefined => {
    const said = against.find((each) => each.action === action)
    return said && limitOf(said)
  }
  const stated = <Word extends string>(word: Word | undefined, otherwise: Word | undefined): Word =>
    word === undefined || word === 'not stated' ? (otherwise ?? ('not stated' as Word)) : word
  return {
    closes: limit('closes'),
    opens: limit('opens'),
    unstated: limit('not stated'),
    kind: best.kind ?? position?.kind ?? kind,
    between: stated(best.between, position?.between),
    tap: stated(best.tap, position?.tap),
    stage: stated(best.stage, position?.stage),
    sense: stated(best.sense, position?.sense),
  }
}

type LimitThen = NonNullable<ReadingBody['against']>[number]

function limitOf(said: LimitThen): Limit {
  const valued = (value: NonNullable<LimitThen['rivals']>[number]): Limit => ({
    pascals: value.pascals,
    kind: value.limit,
    standing: said.level,
    ...(value.toleranceAbove === undefined ? {} : { toleranceAbove: value.toleranceAbove }),
    ...(value.toleranceBelow === undefined ? {} : { toleranceBelow: value.toleranceBelow }),
  })
  const limit = valued(said)
  return said.rivals === undefined ? limit : { ...limit, candidates: [limit, ...said.rivals.map(valued)] }
}
