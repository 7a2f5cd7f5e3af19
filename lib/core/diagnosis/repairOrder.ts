import { unlistedCause } from './catalogue'
import type { RankedCause } from './rankCauses'

/**
 * The order in which to confirm causes, for the least expected time: by probability over cost, most first, dangers
 * before all others whatever they cost (and among themselves by the same rule), ties in the order of ids. The cost
 * is the confirming test alone, because the true cause's repair is paid in any order; where only the repair
 * confirms, it is the test.
 *
 * Least for one fault and perfect tests: J. Kalagnanam & M. Henrion, "A comparison of decision analysis and expert
 * rules for sequential diagnosis", UAI 1988; D. Heckerman, J. S. Breese & K. Rommelse, "Decision-theoretic
 * troubleshooting", CACM 38(3) (1995) 49-57. A test is paid when none before it found the cause:
 * Σ_i (1 − Σ_{j before i} p_j) · C_i. A cause outside the list has no test; where it has a probability, that part
 * of the time is spent on all of them.
 *
 * @param asked.costs minutes of each listed cause's confirming test, 0 or more, by cause id
 * @throws RangeError when a ranked cause has no cost
 * @example repairOrder({ ranked: [{ cause: 'a', probability: 0.7, danger: false }, { cause: 'b', probability: 0.3,
 *   danger: false }], costs: { a: 30, b: 5 } }) // { order: ['b', 'a'], expectedMinutes: 5 + 0.7 · 30 = 26 }
 */
export function repairOrder(asked: {
  ranked: readonly Pick<RankedCause, 'cause' | 'probability' | 'danger'>[]
  costs: Readonly<Record<string, number>>
}): { order: string[]; expectedMinutes: number } {
  const steps = asked.ranked
    .filter(({ cause }) => cause !== unlistedCause)
    .map(({ cause, probability, danger }) => {
      const minutes = asked.costs[cause]
      if (minutes === undefined || !(minutes >= 0 && minutes < Infinity)) {
        throw new RangeError(`Cause ${cause} needs the minutes of its confirming test, 0 or more`)
      }
      return { cause, probability, danger, minutes, worth: minutes === 0 ? Infinity : probability / minutes }
    })
    .sort((a, b) => {
      if (a.danger !== b.danger) return a.danger ? -1 : 1
      if (a.worth !== b.worth) return a.worth > b.worth ? -1 : 1
      return a.cause < b.cause ? -1 : 1
    })
  let expectedMinutes = 0
  let notFound = 1
  for (const { probability, minutes } of steps) {
    expectedMinutes += Math.max(0, notFound) * minutes
    notFound -= probability
  }
  return { order: steps.map((step) => step.cause), expectedMinutes }
}
