import { asksBeforeShown } from './dependsOnFurnace'
import { whyLevel } from './explain'
import { sameMagnitude } from './resolution'
import { checkReports } from './sortReports'
import { standingsFor } from './standingsFor'
import type {
  Ask,
  FurnaceForRating,
  FurnaceRating,
  RatingReport,
  RatingSettings,
  RatingStanding,
} from './types'
import { whatIfs } from './whatIfs'

const askOrder: readonly Ask[] = ['elevation', 'revision', 'serial', 'part number']

const answers = ['closes', 'opens', 'unstated'] as const

const sameOutcome = (one: RatingStanding, other: RatingStanding): boolean =>
  one.level === other.level &&
  one.limit === other.limit &&
  (['pascals', 'toleranceAbove', 'toleranceBelow'] as const).every((number) =>
    one[number] === undefined || other[number] === undefined
      ? one[number] === other[number]
      : sameMagnitude(one[number], other[number]),
  )

/** While it isn't known whether a report against it covers the furnace, a rating is not relied on. */
const withDoubt = (standing: RatingStanding, others: readonly RatingStanding[]): RatingStanding =>
  (standing.level === 'Verified' || standing.level === 'Supported') &&
  others.some(({ level }) => level === 'In dispute')
    ? { ...standing, level: 'Unverified', reasons: [...standing.reasons, whyLevel.mayBeDisputed()] }
    : standing

/**
 * The rating of one switch position for one furnace: picks the reports that cover it by revision, serial, elevation
 * and part number, and weighs those that say "closes", those that say "opens", and those that say neither, apart.
 * A report that would cover the furnace if something unrecorded were known is a lead until it is; `asks` names what
 * to ask, only where the answer depends on it or nothing else names a number, and a rating that the answer might dispute is held at Unverified.
 *
 * @param reports of one position
 * @param furnace what is known of the furnace
 * @param settings its `now` is the time
 * @param sisters reports of the sister position on the same furnace (low fire beside high fire): known values, by
 *   which swapped switches show up. They are never evidence for this position.
 * @throws RangeError if ids repeat, positions differ, or a number, date or setting is impossible
 * @example ratingFor(reports, { id: 'f1', elevationMetres: 200 }, { now: '2026-01-12' }).closes.level
 */
export function ratingFor(
  reports: readonly RatingReport[],
  furnace: FurnaceForRating,
  settings: RatingSettings,
  sisters: readonly RatingReport[] = [],
): FurnaceRating {
  checkReports(reports)
  checkReports(sisters)
  if (furnace.elevationMetres !== undefined && !Number.isFinite(furnace.elevationMetres))
    throw new RangeError(`ratingFor requires a finite elevation, not ${furnace.elevationMetres}`)
  const standings = standingsFor(reports, furnace, settings, sisters)
  const trials = whatIfs(reports, furnace, settings, sisters)
  const asks = [
    ...answers.flatMap((answer) => asksBeforeShown(standings[answer])),
    ...trials
      .filter((trial) => answers.some((answer) => !sameOutcome(standings[answer], trial.standings[answer])))
      .flatMap((trial) => trial.asks),
  ]
  const doubted = (answer: (typeof answers)[number]) =>
    withDoubt(
      standings[answer],
      trials.map((trial) => trial.standings[answer]),
    )
  return {
    closes: doubted('closes'),
    opens: doubted('opens'),
    unstated: doubted('unstated'),
    asks: askOrder.filter((ask) => asks.includes(ask)),
  }
}
