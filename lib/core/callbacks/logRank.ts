import regularizedGamma from '@stdlib/math-base-special-gammainc'
import { failure, type Result, success } from '../result'
import { checkLifetimes, eventTimes, type Lifetimes } from './lifetimes'
import { quadraticForm } from './quadraticForm'

export type LogRank = {
  chiSquare: number
  degreesOfFreedom: number
  pValue: number
  /** Events of each group, and those it would have had if all groups were alike; in the order given. */
  observed: number[]
  expected: number[]
}

/**
 * Whether groups differ in their time to the event (N. Mantel, Cancer Chemother. Rep. 50 (1966) 163-170; R. Peto &
 * J. Peto, J. R. Statist. Soc. A 135 (1972) 185-207), with the hypergeometric variance. A group whose members had all
 * left before the first event says nothing and takes no degree of freedom.
 *
 * The p-value holds for groups that were chosen beforehand; of the many pairs one could look at, one in twenty will
 * be below 0.05 by chance.
 *
 * @param groups two or more
 * @returns the test, or the problem 'nothing-to-compare' when no event happened while groups were watched together
 * @throws RangeError with fewer than two groups, or lifetimes that kaplanMeier refuses
 * @example the 6-MP trial: χ² = 16.79 on 1 degree of freedom, p = 0.00004
 */
export function logRank(groups: readonly Lifetimes[]): Result<LogRank> {
  if (groups.length < 2) throw new RangeError('logRank requires at least two groups')
  for (const group of groups) checkLifetimes('logRank', group)
  const observed = groups.map(({ events }) => events.filter((event) => event).length)
  const expected = groups.map(() => 0)
  const covariance = groups.map(() => groups.map(() => 0))

  const all = {
    times: ([] as number[]).concat(...groups.map(({ times }) => times)),
    events: ([] as boolean[]).concat(...groups.map((group) => group.events)),
  }
  const timesSorted = groups.map(({ times }) => new Float64Array(times).sort())
  const gone = groups.map(() => 0)
  for (const { time, atRisk, events } of eventTimes(all)) {
    const shares = timesSorted.map((times, group) => {
      while (times[gone[group]!]! < time) gone[group]!++
      return (times.length - gone[group]!) / atRisk
    })
    const variance = atRisk > 1 ? (events * (atRisk - events)) / (atRisk - 1) : 0
    shares.forEach((share, group) => {
      expected[group]! += events * share
      shares.forEach((other, column) => {
        covariance[group]![column]! += variance * share * ((group === column ? 1 : 0) - other)
      })
    })
  }

  const differences = observed.map((count, group) => count - expected[group]!)
  const { value: chiSquare, rank } = quadraticForm(differences, covariance)
  if (rank === 0)
    return failure(
      'nothing-to-compare',
      'No callback happened while more than one group was watched, so the groups cannot be compared yet.',
    )
  const pValue = regularizedGamma(chiSquare / 2, rank / 2, true, true)
  return success({ chiSquare, degreesOfFreedom: rank, pValue, observed, expected })
}
