import type { Catalogue } from './catalogue'
import type { Observed } from './readObservations'
import type { RankingSettings } from './settings'
import { tradeChance, tradePriors } from './tradeFigures'

/** What the trade says before any case: base rates, and for each observed finding the chance of what was observed. */
export type TradeView = {
  priors: Float64Array
  /** Cause by cause, for each observed finding. */
  chances: Float64Array
  /** For each observed finding: how many times findingStrength its chances are worth. */
  strengths: Float64Array
}

export function tradeView(catalogue: Catalogue, observed: readonly Observed[]): TradeView {
  const chances = catalogue.causes.flatMap((_, cause) =>
    observed.map((one) => tradeChance(catalogue, cause, one)),
  )
  return {
    priors: tradePriors(catalogue),
    chances: Float64Array.from(chances),
    strengths: Float64Array.from(observed, ({ finding }) => catalogue.findings[finding]!.strength ?? 1),
  }
}

/** Probabilities of the listed causes, in the catalogue's order, and last that of a cause outside the list. */
export type Posterior = {
  probabilities: Float64Array
  /** θ: chance of what was observed, row by row as the probabilities, for each observed finding. */
  likelihoods: Float64Array
}

/**
 * Naive Bayes on trade pseudo-counts plus weighed cases:
 *
 *   π(c) = (A·α_c + n_c) / (A + n)      θ(f|c) = (m_f·p(f|c) + n_c[f agrees]) / (m_f + n_c[f checked])
 *   P(c | findings) ∝ (1 − u) · π(c) · Π θ(f|c),      worked in logarithms
 *
 * Findings that were not checked have no factor. A cause outside the list has the prior u, and each of its
 * likelihoods is the listed causes' own, pooled by the trade's base rates: Σ α_c·θ(f|c). Pooling by fixed rates
 * means that no new case of a listed cause can raise the unlisted one by more than that cause itself.
 */
export function posteriorOf(
  trade: TradeView,
  byCause: Float64Array,
  settings: Pick<RankingSettings, 'priorStrength' | 'findingStrength' | 'unlistedPrior'>,
  into: Posterior = emptyPosterior(trade),
): Posterior {
  const { priors, chances, strengths } = trade
  const { probabilities, likelihoods } = into
  const causes = priors.length
  const findings = strengths.length
  const width = 1 + 2 * findings
  let cases = 0
  for (let cause = 0; cause < causes; cause++) cases += byCause[cause * width]!
  const pooledRow = causes * findings
  likelihoods.fill(0, pooledRow)

  for (let cause = 0; cause < causes; cause++) {
    const row = cause * width
    const prior = (settings.priorStrength * priors[cause]! + byCause[row]!) / (settings.priorStrength + cases)
    for (let f = 0; f < findings; f++) {
      const strength = settings.findingStrength * strengths[f]!
      const agreeing = strength * chances[cause * findings + f]! + byCause[row + 2 + 2 * f]!
      const likelihood = agreeing / (strength + byCause[row + 1 + 2 * f]!)
      likelihoods[cause * findings + f] = likelihood
      likelihoods[pooledRow + f]! += priors[cause]! * likelihood
    }
    const start = (1 - settings.unlistedPrior) * prior
    probabilities[cause] = logOfProduct(start, likelihoods, cause * findings, findings)
  }
  probabilities[causes] = logOfProduct(settings.unlistedPrior, likelihoods, pooledRow, findings)
  fromLogScores(probabilities)
  return into
}

/** ln of `start` times a run of positive numbers, taking few logarithms and never letting a product underflow. */
function logOfProduct(start: number, numbers: Float64Array, from: number, howMany: number): number {
  let logs = 0
  let product = start
  for (let place = from; place < from + howMany; place++) {
    const number = numbers[place]!
    if (number < smallFactor) {
      logs += Math.log(number)
      continue
    }
    product *= number
    if (product < smallFactor) {
      logs += Math.log(product)
      product = 1
    }
  }
  return logs + Math.log(product)
}

const smallFactor = 1e-100

export function emptyPosterior({ priors, strengths }: TradeView): Posterior {
  return {
    probabilities: new Float64Array(priors.length + 1),
    likelihoods: new Float64Array((priors.length + 1) * strengths.length),
  }
}

/** Turns logarithms of unnormalised probabilities into probabilities, in place, without underflow (log-sum-exp). */
function fromLogScores(scores: Float64Array): void {
  let most = -Infinity
  for (let place = 0; place < scores.length; place++) most = Math.max(most, scores[place]!)
  let sum = 0
  for (let place = 0; place < scores.length; place++) {
    scores[place] = Math.exp(scores[place]! - most)
    sum += scores[place]!
  }
  for (let place = 0; place < scores.length; place++) scores[place]! /= sum
}
