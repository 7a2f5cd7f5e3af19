import type { CaseTable } from './caseTable'
import { type Catalogue, type Context, type NamedCause, type Observations, unlistedCause } from './catalogue'
import { measureDistances, weighNeighbours } from './neighbourhood'
import { posteriorOf, tradeView } from './posterior'
import { readObservations } from './readObservations'
import { completeSettings, type RankingSettings } from './settings'
import { splitByCause, sumByCause } from './sumByCause'
import { tallyNeighbours } from './tallies'

/** The settings that a replay chooses. */
export type TunedSettings = Pick<RankingSettings, 'neighbours' | 'priorStrength' | 'findingStrength'>

/** Every combination of the values to be tried, those of one k together. Throws RangeError when there is none. */
export function tunings(values: { [Name in keyof TunedSettings]: readonly number[] }): TunedSettings[] {
  const all = values.neighbours.flatMap((neighbours) =>
    values.priorStrength.flatMap((priorStrength) =>
      values.findingStrength.map((findingStrength) => ({ neighbours, priorStrength, findingStrength })),
    ),
  )
  if (all.length === 0) throw new RangeError('A replay requires at least one value of k, A and m')
  return all
}

/** Forecasts one case from the table as it stands, under every tuning at once. Probabilities come in the order of `names`. */
export function replayForecaster(
  catalogue: Catalogue,
  table: CaseTable,
  ranking: Partial<RankingSettings>,
  tried: readonly TunedSettings[],
) {
  const settings = tried.map((tuning) => completeSettings({ ...ranking, ...tuning }))
  const listed = catalogue.causes.map((cause) => cause.id)
  // The order in which rankCauses breaks ties, so that a hit here is a hit on the screen.
  const names = [...listed, unlistedCause].sort()
  const placeOf = new Map([...listed, unlistedCause].map((name, place) => [name, place]))
  const byName = (probabilities: Float64Array) => names.map((name) => probabilities[placeOf.get(name)!]!)
  const truthName = ({ main }: NamedCause) => (placeOf.has(main) ? main : unlistedCause)

  const countCases = (
    at: number,
    observations: Observations,
    context: Context,
    neighbours: readonly number[],
  ) => {
    const observed = readObservations(table, observations)
    const distances = measureDistances(table, catalogue, observed, context)
    return neighbours.map((k) => {
      const near = weighNeighbours(table, distances, k, at)
      const tallies = tallyNeighbours(table, near, observed, settings[0]!, at)
      return sumByCause(splitByCause(tallies, listed.length, settings[0]!.contributingShare))
    })
  }

  return {
    names,
    truthName,
    checklist: checklistForecast(catalogue, names, settings[0]!.unlistedPrior),
    /** @param at the case's own place in the table, which is left out */
    forecast(at: number, observations: Observations, context: Context) {
      const ks = [...new Set(tried.map((tuning) => tuning.neighbours))]
      const counted = countCases(at, observations, context, ks)
      const trade = tradeView(catalogue, readObservations(table, observations))
      const probabilities = settings.map(
        (setting) => posteriorOf(trade, counted[ks.indexOf(setting.neighbours)]!, setting).probabilities,
      )
      return {
        chanceOf: (name: string) => probabilities.map((one) => one[placeOf.get(name)!]!),
        helper: (tuning: number) => byName(probabilities[tuning]!),
        baseRates(tuning: TunedSettings) {
          const [counts] = countCases(at, {}, {}, [Infinity])
          const setting = completeSettings({ ...ranking, ...tuning })
          return byName(posteriorOf(tradeView(catalogue, []), counts!, setting).probabilities)
        },
      }
    },
  }
}

/** Zipf's shares down the list: the i-th cause in proportion to 1/i, causes that the list leaves out after it. */
function checklistForecast(catalogue: Catalogue, names: readonly string[], unlistedPrior: number): number[] {
  const listed = catalogue.causes.map((cause) => cause.id)
  const order = [...new Set([...(catalogue.checklist ?? []), ...listed])]
  const sum = order.reduce((total, _, place) => total + 1 / (place + 1), 0)
  return names.map((name) =>
    name === unlistedCause ? unlistedPrior : (1 - unlistedPrior) / (order.indexOf(name) + 1) / sum,
  )
}
