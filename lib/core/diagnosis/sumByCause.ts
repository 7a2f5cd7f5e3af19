import type { Tallies } from './tallies'

/**
 * What the groups of a tally give to the sums of each cause, nothings left out. The parts of sum s are those from
 * first[s] to before first[s + 1], where s is cause × width + column.
 */
export type Contributions = {
  first: Int32Array
  group: Int32Array
  amount: Float64Array
}

/** Splits every group's sums between its main and its contributing cause. */
export function splitByCause(tallies: Tallies, causes: number, contributingShare: number): Contributions {
  const { sums, width, main, contributing } = tallies
  const first = new Int32Array(causes * width + 1)
  const eachPart = (take: (place: number, group: number, amount: number) => void) => {
    for (let group = 0; group < main.length; group++) {
      const other = contributing[group]!
      for (let column = 0; column < width; column++) {
        const sum = sums[group * width + column]!
        if (sum === 0) continue
        take(main[group]! * width + column, group, other < 0 ? sum : (1 - contributingShare) * sum)
        if (other >= 0) take(other * width + column, group, contributingShare * sum)
      }
    }
  }
  eachPart((place) => {
    first[place + 1]!++
  })
  for (let place = 1; place < first.length; place++) first[place]! += first[place - 1]!
  const next = first.slice()
  const group = new Int32Array(first.at(-1)!)
  const amount = new Float64Array(first.at(-1)!)
  eachPart((place, from, given) => {
    const part = next[place]!++
    group[part] = from
    amount[part] = given
  })
  return { first, group, amount }
}

/** Sums over the cases by cause, laid out as in Tallies: weight, then checked and agreeing for each observed finding. */
export function sumByCause({ first, amount }: Contributions): Float64Array {
  const sums = new Float64Array(first.length - 1)
  for (let place = 0; place < sums.length; place++) {
    for (let part = first[place]!; part < first[place + 1]!; part++) sums[place]! += amount[part]!
  }
  return sums
}

/** The same sums with the part of every group multiplied by its factor. */
export function sumByCauseWith(
  factors: Float64Array,
  { first, group, amount }: Contributions,
  into: Float64Array,
): void {
  for (let place = 0; place < into.length; place++) {
    const end = first[place + 1]!
    let sum = 0
    for (let part = first[place]!; part < end; part++) sum += factors[group[part]!]! * amount[part]!
    into[place] = sum
  }
}
