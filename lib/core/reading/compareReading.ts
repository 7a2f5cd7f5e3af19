import { failure, type Result, success } from '@/lib/core/result'
import { advise, type ClosesAgain, leading, outcomeOf } from './advise'
import { assumptions, isCalibrationPast } from './assumed'
import { atRest, notZeroed } from './atRest'
import { checkReading } from './checkReading'
import { comparable, notAnAirSwitch } from './comparable'
import { atLeast } from './decide'
import { isHigherThanExpected } from './expected'
import { movementOf } from './flutter'
import { gaugeHalfWidth } from './instrumentUncertainty'
import { judgeDisputed } from './judgeDisputed'
import { isHot } from './phases'
import { meanOf } from './repeatability'
import type {
  Comparison,
  Expected,
  Instrument,
  Judgement,
  RatingForComparison,
  Reading,
  ReadingSettings,
} from './types'
import { testFor } from './whichLimit'

export type ComparisonInput = {
  reading: Reading
  instrument: Instrument
  rating: RatingForComparison
  expected?: Expected
  settings: ReadingSettings
}

/** Above a number of unstated action nothing can be said; below it, it is too low to close whichever it is. */
function aboveUnstated(judgement: Judgement): Result<true> {
  if (judgement.against !== 'not stated' || judgement.verdict === 'too low') return success(true)
  return failure(
    'cannot-be-compared',
    'This can’t be compared: nobody has said whether the number on file is where it closes or where it opens, and the reading is not clearly below it. Ask which it is before judging this reading.',
  )
}

function closesAgainAt(input: ComparisonInput): ClosesAgain {
  const { reading, instrument, rating, settings } = input
  if (rating.closes === undefined) return 'not on file'
  const judged = judgeDisputed(reading, instrument, rating.closes, 'closes', settings)
  return judged.ok ? outcomeOf(judged.value, reading.kind) : 'unclear'
}

function goodMargin(
  comparison: Omit<Comparison, 'goodMargin' | 'advice' | 'assumed'>,
  settings: ReadingSettings,
): boolean {
  const judgement = leading(comparison)
  if (judgement === undefined || !isHot(comparison.phase) || comparison.contacts === 'open') return false
  return (
    outcomeOf(judgement, comparison.kind) === 'closed' &&
    atLeast(Math.abs(judgement.marginPascals), settings.thinGuideline.pascals) &&
    comparison.higherThanExpected !== true &&
    !comparison.flutter
  )
}

/**
 * Holds a reading against the rating of the same switch position and says what that means and what to do.
 * @param input magnitudes in pascals; `expected` is for the reading's own phase and stage
 * @returns a comparison, or one of the problems 'cannot-be-compared', 'zero-first', 'settle-rating-first'
 * @throws RangeError for a caller's mistake: no sample, signed samples, a limit that is not on file
 * @example 0.80 in. w.c. cold, contact open, against closes at 0.94: too low to close it, so the open contact agrees
 *   with the reading and the switch stays fitted
 */
export function compareReading(input: ComparisonInput): Result<Comparison> {
  const { reading, instrument, rating, settings } = input
  checkReading(reading, instrument, settings)
  for (const kind of [reading.kind, rating.kind]) {
    const airSwitch = notAnAirSwitch(kind)
    if (!airSwitch.ok) return airSwitch
  }
  if (reading.phase === 'rest') return atRest(reading, instrument, settings)
  if (!instrument.zeroed) return failure('zero-first', notZeroed)
  const points = comparable(reading, rating)
  if (!points.ok) return points
  const test = testFor(reading, rating)
  if (test === undefined)
    return failure(
      'cannot-be-compared',
      'This can’t be compared: no rating is on file for this switch position. Start a rating request, and do meanwhile what needs no rating: terminals, vent, drain, hose and port.',
    )
  const judged = judgeDisputed(reading, instrument, test.limit, test.against, settings)
  if (!judged.ok) return judged
  const judgement = judged.value
  const stated = aboveUnstated(judgement)
  if (!stated.ok) return stated
  const mean = meanOf(reading.samples)
  const higherThanExpected = isHigherThanExpected(
    mean,
    gaugeHalfWidth(instrument, mean).pascals,
    input.expected,
    settings.weatherShare,
  )
  const { flutter, steady } = movementOf(reading, [judgement.limit], settings)
  const found = {
    kind: reading.kind,
    phase: reading.phase,
    contacts: reading.contacts,
    ...(test.question === 'start' ? { start: judgement } : { run: judgement }),
    standing: judgement.limit.standing,
    ...(higherThanExpected !== undefined && { higherThanExpected }),
    flutter,
    steady,
    openPoints: points.value,
  }
  return success({
    ...found,
    goodMargin: goodMargin(found, settings),
    assumed: assumptions(
      reading,
      instrument,
      rating,
      [judgement],
      points.value,
      higherThanExpected,
      settings,
    ),
    advice: advise({
      reading,
      rating,
      comparison: found,
      closesAgain: closesAgainAt(input),
      calibrationPast: isCalibrationPast(instrument.calibrationDue, settings.now),
    }),
  })
}
