import { isUsualRating } from '@/lib/core/pressure'
import { type Candidate, numberOf } from './candidates'
import type { Counted } from './countOnce'
import { slipProbability } from './slipKernel'
import type { KnownValues } from './types'

/** Prior of a value outside 0.10 to 3.0 in. w.c., relative to one inside. Common practice, no published source. */
const unusualPrior = 1 / 20

/** The weight of each of n reports of one source kind: they share errors, so n count as (n + 1)/2. */
const sharedWeight = (n: number): number => (n + 1) / (2 * n)

/**
 * The posterior probability of each candidate, with the slip kernel s(v → x):
 *
 *   P(v | reports) ∝ prior(v) · Π [ r/k if the report supports v, one of k that it supports, else (1 − r) · s(v → x) ]^w
 *
 * One further hypothesis holds the plausible values that nobody reported: prior (M − |C|)/M, never under 1/M, each
 * report having probability (1 − r)/(M − 1). One report alone gives exactly its r. Worked in logs, so that many
 * reports do not vanish into zero.
 *
 * @param counted each origin's reports, counted once; one supporting no candidate is a wrong report under each
 * @param plausibleValues M, whole, at least 2
 * @returns one probability a candidate; they sum to less than one, the rest being the values nobody reported
 * @example posteriorOf(candidates, [photoOfTheLabel], known, 40) // [0.97]
 */
export function posteriorOf(
  candidates: readonly Candidate[],
  counted: readonly Counted[],
  known: KnownValues,
  plausibleValues: number,
): number[] {
  const weights = counted.map(({ report }) =>
    sharedWeight(counted.filter((other) => other.report.source === report.source).length),
  )
  const weighed = (likelihood: (entry: Counted) => number): number =>
    counted.reduce((sum, entry, at) => sum + weights[at]! * Math.log(likelihood(entry)), 0)

  const logs = candidates.map(
    ({ pascals }, at) =>
      Math.log((isUsualRating(pascals) ? 1 : unusualPrior) / plausibleValues) +
      weighed(({ report, reliability, supported }) =>
        supported.includes(at)
          ? reliability / supported.length
          : (1 - reliability) * slipProbability(pascals, numberOf(report), known, plausibleValues),
      ),
  )
  const unreported =
    Math.log(Math.max(1, plausibleValues - candidates.length) / plausibleValues) +
    weighed(({ reliability }) => (1 - reliability) / (plausibleValues - 1))

  const highest = Math.max(unreported, ...logs)
  const total = [unreported, ...logs].reduce((sum, log) => sum + Math.exp(log - highest), 0)
  return logs.map((log) => Math.exp(log - highest) / total)
}
