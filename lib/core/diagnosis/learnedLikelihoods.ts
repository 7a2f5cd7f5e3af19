import { type Catalogue, type Context, type Observations, type PastCase, unlistedCause } from './catalogue'
import { measureDistances, weighNeighbours } from './neighbourhood'
import { type PackedCases, packedFor } from './packCases'
import { posteriorOf, tradeView } from './posterior'
import { type Observed, readObservations } from './readObservations'
import { completeSettings, type RankingSettings } from './settings'
import { splitByCause, sumByCause } from './sumByCause'
import { tallyNeighbours } from './tallies'

/** Chance of each value of each finding that carries evidence, under each cause and under one outside the list. */
export type LikelihoodTable = Readonly<
  Record<string, Readonly<Record<string, Readonly<Record<string, number>>>>>
>

/**
 * What every finding would look like under every cause, by the trade's figures and the past cases near the present
 * one: the same θ with which rankCauses weighs those that were observed.
 */
export function learnedLikelihoods(asked: {
  catalogue: Catalogue
  cases: PackedCases | readonly PastCase[]
  observed: Observations
  context?: Context
  settings?: Partial<RankingSettings>
}): LikelihoodTable {
  const { catalogue, context = {} } = asked
  const settings = completeSettings(asked.settings)
  const cases = packedFor(catalogue, asked.cases)
  const present = readObservations(cases, asked.observed)
  const every: Observed[] = catalogue.findings.flatMap(({ values, carries }, finding) =>
    carries === 'context only' ? [] : values.map((_, value) => ({ finding, value })),
  )
  const neighbourhood = weighNeighbours(
    cases,
    measureDistances(cases, catalogue, present, context),
    settings.neighbours,
  )
  const tallies = tallyNeighbours(cases, neighbourhood, every, settings)
  const byCause = sumByCause(splitByCause(tallies, catalogue.causes.length, settings.contributingShare))
  const { likelihoods } = posteriorOf(tradeView(catalogue, every), byCause, settings)

  const names = [...catalogue.causes.map((cause) => cause.id), unlistedCause]
  const table: Record<string, Record<string, Record<string, number>>> = {}
  names.forEach((name, row) => {
    const ofCause: Record<string, Record<string, number>> = {}
    every.forEach(({ finding, value }, column) => {
      const { id, values } = catalogue.findings[finding]!
      ofCause[id] ??= {}
      ofCause[id][values[value]!] = likelihoods[row * every.length + column]!
    })
    table[name] = ofCause
  })
  return table
}
