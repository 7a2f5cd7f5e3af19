import { failure, type Result, success } from '@/lib/core/result'
import type { Between, SwitchKind } from '@/lib/core/vocabulary'
import type { OpenPoint, RatingForComparison, Reading } from './types'

const cannot = (message: string) => failure('cannot-be-compared', message)

const points: Record<Between, string> = {
  'port and room': 'between the port and the room',
  'port and cabinet': 'between the port and the cabinet, door on',
  'two ports': 'across both ports, gauge + to switch +, gauge − to switch −',
  'not stated': 'between the rated points',
}

/** Kinds that share the shape and the string but are no air switch with a make point. */
export function notAnAirSwitch(kind: SwitchKind): Result<true> {
  if (kind === 'gas pressure')
    return cannot(
      'This can’t be compared: a gas-pressure switch is no air switch. Measure gas pressure at its own port, and compare that with the gas rating.',
    )
  if (kind === 'sensor')
    return cannot(
      'This can’t be compared: a pressure sensor has no make point. Measure at its hose, and compare with the maker’s table of targets and fault limits.',
    )
  return success(true)
}

/** Between which points the rating holds; a two-port switch leaves no doubt. */
const ratedBetween = (rating: RatingForComparison): Between =>
  rating.between === 'not stated' && rating.kind === 'two-port' ? 'two ports' : rating.between

function betweenProblem(reading: Reading, rating: RatingForComparison): Result<true> {
  const rated = ratedBetween(rating)
  if (reading.between === 'not stated')
    return cannot(
      `This can’t be compared: the reading does not say between which points it was taken. Measure ${points[rated]}, with a tee at the switch, and record it.`,
    )
  if (rated === 'not stated' && reading.between === 'two ports')
    return cannot(
      'This can’t be compared: the reading is across two ports and the rating does not say that it is. Measure between the port and the space that the switch’s vent hole sees, or ask what the rating holds for.',
    )
  if (rated !== 'not stated' && rated !== reading.between)
    return cannot(
      `This can’t be compared: the reading is ${points[reading.between]}, the rating ${points[rated]}. Measure ${points[rated]}, with a tee at the switch.`,
    )
  return success(true)
}

/**
 * Whether a reading and a rating speak of the same thing: kind, points, tap, stage and sense, with the door as in
 * service. What the rating states the reading has to state too; what the rating leaves open is taken from the
 * reading and named in the answer. The refusal says what to measure instead.
 * @returns the points that the rating leaves open
 */
export function comparable(reading: Reading, rating: RatingForComparison): Result<OpenPoint[]> {
  if (reading.kind !== rating.kind)
    return cannot(
      `This can’t be compared: the reading is of a ${reading.kind} switch, the rating of a ${rating.kind} one. Find the rating of the switch that was measured.`,
    )
  if (reading.door === 'off')
    return cannot(
      'This can’t be compared: the door was off, and the space that the switch is referred to changes with it. Fit the door as in service and measure again.',
    )
  const between = betweenProblem(reading, rating)
  if (!between.ok) return between
  if (rating.tap !== 'not stated' && rating.tap !== reading.tap)
    return cannot(
      reading.tap === 'not stated'
        ? `This can’t be compared: the reading does not say where the hose ends. Follow the hose; the rating holds for the ${rating.tap}.`
        : `This can’t be compared: the reading was taken at the ${reading.tap}, the rating holds for the ${rating.tap}. Measure at the switch, with a tee in the hose from the ${rating.tap}.`,
    )
  const oneStage = rating.stage === 'single stage' && reading.stage === 'not stated'
  if (rating.stage !== 'not stated' && rating.stage !== reading.stage && !oneStage)
    return cannot(
      `This can’t be compared: the reading was taken on ${reading.stage === 'not stated' ? 'a stage that was not recorded' : reading.stage}, the rating is for ${rating.stage}. Measure on ${rating.stage}, or look up the switch of the other stage.`,
    )
  if (rating.sense !== 'not stated' && rating.sense !== reading.sense)
    return cannot(
      `This can’t be compared: the reading ${reading.sense === 'not stated' ? 'does not say whether it was suction or pressure' : `was ${reading.sense}`}, the rating is ${rating.sense}. Check which hose went to which port of the gauge, and record the sign as it was displayed.`,
    )
  const open: OpenPoint[] = []
  if (ratedBetween(rating) === 'not stated') open.push('between')
  if (rating.tap === 'not stated') open.push('tap')
  if (rating.stage === 'not stated') open.push('stage')
  if (rating.sense === 'not stated') open.push('sense')
  return success(open)
}
