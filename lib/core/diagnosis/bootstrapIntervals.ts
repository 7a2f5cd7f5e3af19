import { seededRandom } from '../seeded'
import { emptyPosterior, posteriorOf, type TradeView } from './posterior'
import type { RankingSettings } from './settings'
import { type Contributions, sumByCauseWith } from './sumByCause'
import type { Tallies } from './tallies'

/**
 * A 90 % interval for every probability by the Bayesian bootstrap (D. B. Rubin, Annals of Statistics 9 (1981)
 * 130-134): each repetition gives the cases random weights, Dirichlet(1, …, 1) over all cases with weight, and works
 * the probabilities out again; the interval is what lies between the 5th and 95th percentile (linear interpolation).
 *
 * A Dirichlet splits into the totals of its parts and the shares within them, independent of each other: so a
 * stratum of many cases draws its total and shares it out over its groups (see gammaOf); in a small stratum every
 * case is its own group and nothing is approximated.
 *
 * The interval says how far the cases at hand could have fallen otherwise. It does not doubt the trade's own
 * figures: with no case it has no width.
 */
export function bootstrapIntervals(
  trade: TradeView,
  tallies: Pick<Tallies, 'main' | 'strata'>,
  contributions: Contributions,
  settings: RankingSettings,
): (readonly [number, number])[] {
  const causes = trade.priors.length
  const random = seededRandom(settings.seed)
  const factors = new Float64Array(tallies.main.length)
  const byCause = new Float64Array(contributions.first.length - 1)
  const posterior = emptyPosterior(trade)
  const draws = Array.from({ length: causes + 1 }, () => new Float64Array(settings.replicates))
  for (let repetition = 0; repetition < settings.replicates; repetition++) {
    drawFactors(tallies.strata, factors, random)
    sumByCauseWith(factors, contributions, byCause)
    posteriorOf(trade, byCause, settings, posterior)
    for (let place = 0; place <= causes; place++) draws[place]![repetition] = posterior.probabilities[place]!
  }
  return draws.map((drawn) => {
    drawn.sort()
    return [quantileOfSorted(drawn, 0.05), quantileOfSorted(drawn, 0.95)] as const
  })
}

/**
 * The exponential distribution as the middle quantiles of 4,096 equal parts. Drawing one spares its logarithm, and one
 * random number draws two.
 */
const exponentials = Float64Array.from({ length: 4096 }, (_, part) => -Math.log(1 - (part + 0.5) / 4096))

/** Fills in the factor of each group, so that the cases weigh on average what they did. */
function drawFactors(strata: Tallies['strata'], factors: Float64Array, random: () => number): void {
  for (let group = 0; group < factors.length; group += 2) {
    const drawn = Math.floor(random() * 4096 * 4096)
    factors[group] = exponentials[drawn >>> 12]!
    if (group + 1 < factors.length) factors[group + 1] = exponentials[drawn & 4095]!
  }
  let cases = 0
  let total = 0
  for (const { firstGroup, groups, cases: inStratum } of strata) {
    let sum = 0
    for (let group = firstGroup; group < firstGroup + groups; group++) sum += factors[group]!
    if (groups < inStratum) {
      const drawn = gammaOf(inStratum, sum, groups)
      // Each group stands for inStratum / groups cases, and holds that many already: its factor has mean 1.
      const factor = (drawn / sum) * (groups / inStratum)
      for (let group = firstGroup; group < firstGroup + groups; group++) factors[group]! *= factor
      sum = drawn
    }
    cases += inStratum
    total += sum
  }
  for (let group = 0; group < factors.length; group++) factors[group]! *= cases / total
}

/**
 * A gamma variable for the shape wanted, made from one drawn for another shape. The sum of exponentials tells nothing
 * about its own shares, so it can be used up for this. E. B. Wilson & M. M. Hilferty, PNAS 17 (1931) 684-688: the cube
 * root of a gamma variable over its shape n is nearly normal, mean 1 − 1/(9n), variance 1/(9n).
 */
function gammaOf(shape: number, drawn: number, drawnShape: number): number {
  const normal = 3 * Math.sqrt(drawnShape) * (Math.cbrt(drawn / drawnShape) - 1 + 1 / (9 * drawnShape))
  return shape * (1 - 1 / (9 * shape) + normal / (3 * Math.sqrt(shape))) ** 3
}

/** Quantile by linear interpolation between order statistics (R's type 7). */
function quantileOfSorted(sorted: Float64Array, share: number): number {
  const at = (sorted.length - 1) * share
  const below = sorted[Math.floor(at)]!
  const above = sorted[Math.ceil(at)]!
  return below + (above - below) * (at - Math.floor(at))
}
