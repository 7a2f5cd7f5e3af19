import { formatPressure } from '@/lib/core/pressure'
import { sayDate } from '@/lib/core/sayDate'
import { gaugeHalfWidth } from './instrumentUncertainty'
import { limitInterval } from './limitInterval'
import type { Instrument, Judgement, OpenPoint, RatingForComparison, Reading, ReadingSettings } from './types'

const inWords = (pascals: number): string =>
  `${formatPressure(pascals, 'inH2O')} (${formatPressure(pascals, 'Pa', 1)})`

const openPointSentence: Record<OpenPoint, (reading: Reading) => string> = {
  between: (reading) =>
    `The rating does not say between which points it holds; taken as ${reading.between}, as it was read.`,
  tap: (reading) =>
    `The rating does not say where the hose ends; taken as ${reading.tap === 'not stated' ? 'the place that was read' : reading.tap}.`,
  stage: (reading) =>
    `The rating does not say for which stage it holds; taken as ${reading.stage === 'not stated' ? 'the stage that was read' : reading.stage}.`,
  sense: (reading) =>
    `The rating does not say suction or pressure; taken as ${reading.sense === 'not stated' ? 'the sense that was read' : reading.sense}.`,
}

const day = 24 * 60 * 60 * 1000

/**
 * Whether the moment lies after the last day of a calibration, that day counted to its end in every time zone.
 * @throws RangeError if either is no date
 */
export function isCalibrationPast(calibrationDue: string | undefined, now: string | number): boolean {
  if (calibrationDue === undefined) return false
  const due = /^\d{4}-\d{2}-\d{2}$/.test(calibrationDue) ? Date.parse(calibrationDue) : Number.NaN
  const moment = new Date(now).getTime()
  if (Number.isNaN(due))
    throw new RangeError(`A calibration is due on a day, YYYY-MM-DD, not ${calibrationDue}`)
  if (Number.isNaN(moment)) throw new RangeError(`settings.now requires a moment, not ${now}`)
  // A day ends last twelve hours west of Greenwich.
  return moment >= due + day + day / 2
}

/** Everything that a comparison takes for granted, each with where it comes from. */
export function assumptions(
  reading: Reading,
  instrument: Instrument,
  rating: RatingForComparison,
  judgements: readonly Judgement[],
  openPoints: readonly OpenPoint[],
  higherThanExpected: boolean | undefined,
  settings: ReadingSettings,
): string[] {
  const said: string[] = openPoints.map((point) => openPointSentence[point](reading))
  if (rating.between === 'not stated' && !openPoints.includes('between'))
    said.push('The rating does not say between which points it holds; a two-port switch works across both.')
  const assumedTolerance = judgements.some(
    ({ limit }) =>
      limitInterval(limit, settings.assumedTolerancePascals).toleranceAssumed ||
      limit.candidates?.some(
        (rival) => limitInterval(rival, settings.assumedTolerancePascals).toleranceAssumed,
      ),
  )
  if (assumedTolerance)
    said.push(
      `The tolerance is not stated; ± ${inWords(settings.assumedTolerancePascals)} was taken (common practice, from memory).`,
    )
  if (reading.samples.length === 1)
    said.push(
      `One sample shows no scatter; a standard deviation of ${inWords(settings.usualScatterPascals)} was taken (common practice, no published source).`,
    )
  if (gaugeHalfWidth(instrument, 0).assumed)
    said.push('The gauge’s accuracy is not stated; half a digit was taken, and resolution is no accuracy.')
  if (Math.max(...reading.samples) > instrument.spanPascals)
    said.push('The reading lies beyond the gauge’s range; its accuracy there was taken to be as printed.')
  if (instrument.calibrationDue === undefined)
    said.push('No calibration date of the gauge is on file; it was taken to read as its maker states.')
  else if (isCalibrationPast(instrument.calibrationDue, settings.now))
    said.push(
      `The gauge’s calibration ran out on ${sayDate(instrument.calibrationDue)}; it was taken to read as its maker states, so this reading counts for less.`,
    )
  if (higherThanExpected === undefined)
    said.push(
      'Neither a baseline of this furnace nor a reported running range is on file, so whether the reading is too high can’t be judged.',
    )
  return said
}
