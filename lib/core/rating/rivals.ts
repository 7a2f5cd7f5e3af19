import { isUsualRating } from '@/lib/core/pressure'
import type { Action } from '@/lib/core/vocabulary'
import { type Candidate, supports } from './candidates'
import { decimalSlip, nameSlip } from './nameSlip'
import { slack } from './resolution'
import { isStrong } from './sources'
import type { KnownValues, RatingReport, Rival } from './types'

/** A rival from here on puts the rating in dispute. Common practice, no published source. */
const disputeProbability = 0.05

/** A rival, with the reports that name it, and whether it is no more than a slipped decimal point. */
export type WeighedRival = Rival & { reports: RatingReport[]; mereSlip: boolean }

/**
 * The reported values other than the best, each with its probability and the slip that would explain it.
 *
 * A rival disputes the rating when it has 0.05 or more, or when a strong source names it and not the best. It does
 * not when it is a slipped decimal point that lies outside 0.10 to 3.0 in. w.c. and has less than 0.05: that is
 * shown as a slip.
 *
 * @param best place of the value shown among the candidates
 * @param reports the reports that are weighed; leads never dispute
 */
export function rivalsOf(
  candidates: readonly Candidate[],
  probabilities: readonly number[],
  best: number,
  reports: readonly RatingReport[],
  action: Action,
  known: KnownValues,
): WeighedRival[] {
  const shown = candidates[best]!
  return candidates
    .map((candidate, at) => {
      const probability = probabilities[at]!
      const naming = reports.filter((report) => supports(report, candidate))
      const against = naming.filter((report) => !supports(report, shown))
      const likely = probability >= disputeProbability - slack
      const mereSlip =
        !isUsualRating(candidate.pascals) && decimalSlip(shown.pascals, candidate) !== undefined
      const { pascals, limit, tolerancesAbove, tolerancesBelow } = candidate
      return {
        pascals,
        limit,
        toleranceAbove: tolerancesAbove[0],
        toleranceBelow: tolerancesBelow[0],
        probability,
        reports: naming,
        reportIds: naming.map(({ id }) => id),
        sources: naming.map(({ source }) => source),
        slip: nameSlip(shown.pascals, candidate, action, known),
        disputes: likely || (against.some(isStrong) && !mereSlip),
        mereSlip,
      }
    })
    .filter((_, at) => at !== best)
    .sort((one, other) => other.probability - one.probability || other.pascals - one.pascals)
}
