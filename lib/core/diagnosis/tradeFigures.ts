import type { Catalogue } from './catalogue'
import type { Observed } from './readObservations'

/** The trade's base rates as shares of the listed causes, in the catalogue's order. */
export function tradePriors(catalogue: Catalogue): Float64Array {
  const priors = Float64Array.from(catalogue.causes, (cause) => cause.prior)
  const sum = priors.reduce((total, prior) => total + prior, 0)
  return priors.map((prior) => prior / sum)
}

/** The trade's chance of one value of one finding under one cause, all given by their places. */
export function tradeChance(catalogue: Catalogue, cause: number, observed: Observed): number {
  const finding = catalogue.findings[observed.finding]!
  const value = finding.values[observed.value]!
  const chances = catalogue.causes[cause]!.likelihoods?.[finding.id] ?? finding.usual
  return chances?.[value] ?? 1 / finding.values.length
}
