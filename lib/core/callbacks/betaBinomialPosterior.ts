import betaLn from '@stdlib/math-base-special-betaln'

/** Groups of one size with one count, and how many such groups there are. */
type Tally = { count: number; of: number; groups: number }

/** One explanation of all groups: their rates are drawn from Beta(mean · strength, (1 − mean) · strength). */
export type Explanation = { mean: number; strength: number; weight: number }

/** Log-likelihood of all counts under one explanation, up to a constant (beta-binomial). */
export function logLikelihood(tallies: readonly Tally[], mean: number, strength: number): number {
  const [a, b] = [mean * strength, (1 - mean) * strength]
  const without = betaLn(a, b)
  return tallies.reduce(
    (sum, { count, of, groups }) => sum + groups * (betaLn(a + count, b + of - count) - without),
    0,
  )
}

/** Cells along one scale while looking for where the weight is, and of the final grid. */
const looking = 16
const final = { means: 24, shrinkages: 24 }
/** What lies this far below the best (in log-likelihood) carries less than a ten-millionth of its weight. */
const negligible = 18
/** Each look closes in at least threefold, so even a million jobs are found long before this. */
const mostLooks = 20

/**
 * What the counts of all groups together say about the rates of such groups: weighted explanations, one row for each
 * strength, from weak to strong.
 *
 * Beforehand, the mean is as Jeffreys has it, Beta(½, ½), and the shrinkage strength / (strength + n₀) of a typical
 * group is equally likely to be anything between 0 and 1 (uniform shrinkage prior: C. L. Christiansen & C. N. Morris,
 * JASA 92 (1997) 618-632; M. J. Daniels, Can. J. Statist. 27 (1999) 567-578, from memory), n₀ the average group size.
 * On the scales arcsin √mean and shrinkage both are flat, so a cell of the grid weighs as its likelihood times its
 * breadth. For every shrinkage the cells of the mean are laid where that row's weight is (the likelihood has one
 * summit along the mean).
 */
export function betaBinomialPosterior(groups: readonly { count: number; of: number }[]): Explanation[][] {
  const tallies = tally(groups)
  const typicalSize = groups.reduce((sum, { of }) => sum + of, 0) / groups.length
  const strengthOf = (shrinkage: number) => (typicalSize * shrinkage) / (1 - shrinkage)
  const rowWeight = (shrinkage: number) => logSum(row(tallies, strengthOf(shrinkage)))
  const rows = middles(whereWeightIs([0, 1], rowWeight), final.shrinkages).map((shrinkage) =>
    row(tallies, strengthOf(shrinkage)),
  )
  const whole = logSum(rows.flat())
  return rows.map((cells) =>
    cells.map(({ mean, strength, logWeight }) => ({ mean, strength, weight: Math.exp(logWeight - whole) })),
  )
}

/** The explanations of one strength. */
function row(tallies: readonly Tally[], strength: number) {
  const at = (angle: number) => logLikelihood(tallies, Math.sin(angle) ** 2, strength)
  const [from, to] = whereWeightIs([0, Math.PI / 2], at)
  const breadth = Math.log((to - from) / final.means)
  return middles([from, to], final.means).map((angle) => ({
    mean: Math.sin(angle) ** 2,
    strength,
    logWeight: at(angle) + breadth,
  }))
}

type Range = readonly [from: number, to: number]

const middles = ([from, to]: Range, cells: number): number[] =>
  Array.from({ length: cells }, (_, place) => from + ((place + 0.5) / cells) * (to - from))

/** The part of a range outside which nothing is left that counts. */
function whereWeightIs(range: Range, logWeight: (value: number) => number): Range {
  let [from, to] = range
  for (let look = 0; look < mostLooks; look++) {
    const values = middles([from, to], looking)
    const weights = values.map(logWeight)
    const best = Math.max(...weights)
    const kept = values.filter((_, place) => weights[place]! > best - negligible)
    const spare = (1.5 * (to - from)) / looking
    from = Math.max(from, kept[0]! - spare)
    to = Math.min(to, kept.at(-1)! + spare)
    if (kept.length >= looking / 2) break
  }
  return [from, to]
}

/** The logarithm of the sum of the weights. */
function logSum(cells: readonly { logWeight: number }[]): number {
  const best = Math.max(...cells.map(({ logWeight }) => logWeight))
  return best + Math.log(cells.reduce((sum, { logWeight }) => sum + Math.exp(logWeight - best), 0))
}

function tally(groups: readonly { count: number; of: number }[]): Tally[] {
  const tallies = new Map<string, Tally>()
  for (const { count, of } of groups) {
    const key = `${count} of ${of}`
    tallies.set(key, { count, of, groups: (tallies.get(key)?.groups ?? 0) + 1 })
  }
  // In an order of their own, so that the order of the groups does not show in the last digits.
  return [...tallies.values()].toSorted((a, b) => a.of - b.of || a.count - b.count)
}
