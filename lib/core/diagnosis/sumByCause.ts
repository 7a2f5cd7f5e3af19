import type { Tallies } from './tallies'

/** What the groups of a tally give to the sums of each cause, nothings left out. */
export type Contributions = {
  group: Int32Array
  /** The place in the sums: cause × width + column. */
  target: Int32Array
  amount: Float64Array
  /** The length of the sums. */
  places: number
}

/** Splits every group's sums between its main and its contributing cause. */
export function splitByCause(tallies: Tallies, causes: number, contributingShare: number): Contributions {
  const { sums, width, main, contributing } = tallies
  const group: number[] = []
  const target: number[] = []
  const amount: number[] = []
  const give = (from: number, cause: number, share: number) => {
    for (let column = 0; column < width; column++) {
      const sum = sums[from * width + column]!
      if (sum === 0) continue
      group.push(from)
      target.push(cause * width + column)
      amount.push(share * sum)
    }
  }
  for (let from = 0; from < main.length; from++) {
    const other = contributing[from]!
    give(from, main[from]!, other < 0 ? 1 : 1 - contributingShare)
    if (other >= 0) give(from, other, contributingShare)
  }
  return {
    group: Int32Array.from(group),
    target: Int32Array.from(target),
    amount: Float64Array.from(amount),
    places: causes * width,
  }
}

/**
 * Sums over the cases by cause, laid out as in Tallies: weight, then checked and agreeing for each observed finding.
 *
 * @param factors multiplies each group's part; 1 if left out
 */
export function sumByCause(
  contributions: Contributions,
  factors?: Float64Array,
  into = new Float64Array(contributions.places),
): Float64Array {
  const { group, target, amount } = contributions
  into.fill(0)
  for (let part = 0; part < target.length; part++) {
    into[target[part]!]! += factors === undefined ? amount[part]! : factors[group[part]!]! * amount[part]!
  }
  return into
}
